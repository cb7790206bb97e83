import { beforeEach, describe, expect, it } from 'vitest';
import type { Detector, PlanObject, Wall, XY } from '../../../geometry/plan/model.ts';
import { shapeMiddle } from '../../../geometry/plane/body.ts';
import { emptyLevel, emptyPlan } from '../../../geometry/planfile/empty.ts';
import { followHint } from '../../../src/commands/go-to.ts';
import { selectLevel } from '../../../src/state/selectors.ts';
import { useAppStore } from '../../../src/state/store.ts';

const store = useAppStore.getState;
const level = () => selectLevel(store());
const wall = (id: string, from: XY, to: XY, thickness = 200): Wall => ({ id, from, to, thickness, side: 'auto' });
/** A room of 5800 × 3800, a partition of 4 1/2 in (114.3) at x = 3000. */
const walls = [
  wall('w1', [0, 0], [6000, 0]),
  wall('w2', [6000, 0], [6000, 4000]),
  wall('w3', [6000, 4000], [0, 4000]),
  wall('w4', [0, 4000], [0, 0]),
  wall('w5', [3000, 0], [3000, 4000], 114.3),
];
const desk: PlanObject = {
  id: 't1',
  name: 'Desk',
  shape: { box: { center: [1500, 1500], width: 1200, depth: 600, turn: 0 } },
  bottom: 0,
  top: 762,
};
const detector = (id: string, at: XY): Detector => ({
  id,
  label: id.toUpperCase(),
  at,
  base: 762,
  radius: 50.8,
  tall: 25.4,
  pair: 'A',
});
const steps = () => useAppStore.temporal.getState().pastStates.length;

beforeEach(() => {
  const detectors = [detector('d1', [1400, 1500]), detector('d2', [1627, 1500])];
  store().openPlan({ ...emptyPlan(), levels: [{ ...emptyLevel('L1'), walls, objects: [desk], detectors }] });
});

describe('what stands on furniture', () => {
  it('goes with it by the arrow keys, by typed numbers and by one undo comes back', () => {
    store().select(['t1']);
    store().nudge(100, 50);
    expect(level().detectors.map(({ at }) => at)).toEqual([
      [1500, 1550],
      [1727, 1550],
    ]);
    store().updateItem('t1', { top: 800, bottom: 0 });
    expect(level().detectors.map(({ base }) => base)).toEqual([800, 800]);
    expect(steps()).toBe(2);
    store().undo();
    store().undo();
    expect(level().detectors.map(({ at, base }) => [at, base])).toEqual([
      [[1400, 1500], 762],
      [[1627, 1500], 762],
    ]);
  });

  it('is told that nothing carries it, when it is set off it, when it is deleted, when it is made too small', () => {
    store().updateItem('d1', { at: [1400, 2500] });
    expect(store().message).toContain('Nothing carries D1 now.');
    store().undo();
    expect(store().message).toBe('');
    store().updateItem('t1', { shape: { box: { center: [1500, 1500], width: 260, depth: 600, turn: 0 } } });
    expect(store().message).toContain('Nothing carries D1 and D2 now.');
    store().undo();
    store().select(['t1']);
    store().deleteSelection();
    expect(store().message).toContain('Nothing carries D1 and D2 now.');
  });
});

describe('a thing that an edit leaves in a wall', () => {
  it('is told how far, and set at the face by one press', () => {
    store().select(['t1']);
    // The left edge of the partition is at 2942.85, the desk reaches to 2100: 842.85 and 4 1/2 in more.
    store().nudge(842.85 + 114.3, 0);
    expect(store().message).toBe(
      'Desk reaches 4 1/2 in into a wall. Move it to the face of the wall, or move the wall.',
    );
    const { remark } = store();
    expect(remark?.action).toMatchObject({ kind: 'out-of-wall', id: 't1' });
    if (remark?.action) followHint(remark.action);
    expect(shapeMiddle((level().objects[0] as PlanObject).shape)[0]).toBeCloseTo(2942.85 - 600, 3);
    // What stands on it has come along.
    expect(level().detectors[0]?.at[0]).toBeCloseTo(2942.85 - 700, 3);
    expect(store().message).toBe('');
  });

  it('is not answered again while it stands there', () => {
    store().select(['t1']);
    store().nudge(900, 0);
    expect(store().message).toContain('into a wall');
    store().nudge(0, 10);
    expect(store().message).toBe('');
  });
});

describe('a wall laid on another', () => {
  it('is told, and made one of by one press, which one undo takes back', async () => {
    store().addWalls(
      [
        [
          [3000, 500],
          [3000, 3500],
        ],
      ],
      114.3,
    );
    expect(store().message).toContain('Two walls lie on top of each other');
    const { remark } = store();
    expect(remark?.action?.kind).toBe('one-wall');
    const before = level();
    if (remark?.action) followHint(remark.action);
    await expect.poll(() => level().walls).toEqual(walls);
    store().undo();
    expect(level()).toBe(before);
  });
});
