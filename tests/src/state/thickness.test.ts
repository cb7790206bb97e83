import { beforeEach, expect, it } from 'vitest';
import { roomFaces } from '../../../geometry/dimension/room-dimensions.ts';
import type { Wall, XY } from '../../../geometry/plan/model.ts';
import { emptyLevel, emptyPlan } from '../../../geometry/planfile/empty.ts';
import { setThickness } from '../../../src/state/edit-walls.ts';
import { selectLevel, selectModel } from '../../../src/state/selectors.ts';
import { useAppStore } from '../../../src/state/store.ts';
import { FIRST_WALL_SETTINGS } from '../../../src/state/wall-settings.ts';

// Expected values are geometry alone: common practice, no published source.

const store = useAppStore.getState;
const level = () => selectLevel(store());
const INCH = 25.4;
const [LONG, SHORT] = [20 * 12 * INCH, 12 * 12 * INCH];
const assumed = (id: string, from: XY, to: XY): Wall => ({
  id,
  from,
  to,
  thickness: 8 * INCH,
  side: 'auto',
  thicknessAnswered: false,
});
const half = 4 * INCH;
/** A basement taped inside as 20 ft by 12 ft, its walls assumed to be 8 in thick. */
const walls = [
  assumed('w1', [-half, -half], [LONG + half, -half]),
  assumed('w2', [LONG + half, -half], [LONG + half, SHORT + half]),
  assumed('w3', [LONG + half, SHORT + half], [-half, SHORT + half]),
  assumed('w4', [-half, SHORT + half], [-half, -half]),
];
const ids = walls.map(({ id }) => id);
const inside = () => {
  const model = selectModel(store());
  return model.rooms.flatMap((room) => roomFaces(model, room).map(({ length }) => Math.round(length * 100) / 100));
};

beforeEach(() => {
  store().openPlan({ ...emptyPlan(), levels: [{ ...emptyLevel('L1'), walls }] });
  store().setWallSettings(FIRST_WALL_SETTINGS);
});

it('walls measured thicker after they were taped inside leave the room as it was, in one step that undo takes back', () => {
  const before = inside();
  expect(before.toSorted()).toEqual([SHORT, SHORT, LONG, LONG].toSorted());
  expect(setThickness(ids, 12 * INCH)).toBe('');
  expect(level().walls.map(({ thickness }) => thickness)).toEqual(ids.map(() => 12 * INCH));
  expect(inside().toSorted()).toEqual(before.toSorted());
  expect(store().message).toBe('The inside faces stay where they were taped. The outside faces move out by 4 in.');
  expect(useAppStore.temporal.getState().pastStates).toHaveLength(1);
  store().undo();
  expect(level().walls).toEqual(walls);
});

it('taped outside, the room becomes larger where a wall is thinner; between center lines as well, by half', () => {
  for (const [by, more] of [
    ['outside', 2],
    ['center', 1],
  ] as const) {
    store().setWallSettings({ ...FIRST_WALL_SETTINGS, by });
    setThickness(['w2'], 6 * INCH);
    expect(Math.max(...inside())).toBeCloseTo(LONG + more * INCH, 2);
    store().undo();
  }
});

it('the thickness as it was, entered, is no move and says none', () => {
  setThickness(['w1'], 8 * INCH);
  expect(level().walls[0]).not.toHaveProperty('thicknessAnswered');
  expect(level().walls[0]?.from).toBe(walls[0]?.from);
  expect(store().message).toBe('');
});

it('what the edit brings about beside it is said after it', () => {
  const desk = { shape: { box: { center: [600, -half - 200] as XY, width: 400, depth: 180, turn: 0 } } };
  store().addItem('objects', { name: 'Heat pump', bottom: 0, top: 762, ...desk });
  setThickness(['w1'], 16 * INCH);
  expect(store().message).toMatch(
    /^The inside face stays where it was taped\. The outside face moves out by 8 in\. .*wall/,
  );
});
