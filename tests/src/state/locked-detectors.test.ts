import { beforeEach, describe, expect, it } from 'vitest';
import type { Detector, Fixture, PlanObject } from '../../../geometry/plan/model.ts';
import { emptyLevel, emptyPlan } from '../../../geometry/planfile/empty.ts';
import { targetOf } from '../../../src/commands/command.ts';
import { COMMANDS } from '../../../src/commands/table.ts';
import { readLength } from '../../../src/editor/lengths/boxes/read-length.ts';
import { dragHandle } from '../../../src/editor/tools/drag-handle.ts';
import { createGripTool } from '../../../src/editor/tools/late/grip-tool.ts';
import { shownHandles } from '../../../src/editor/tools/pick-at.ts';
import { moveToNearest } from '../../../src/state/move-to-nearest.ts';
import { selectLevel } from '../../../src/state/selectors.ts';
import { resizeThing, turnThing } from '../../../src/state/shape-edits.ts';
import { moveToPlace } from '../../../src/state/spots.ts';
import { useAppStore } from '../../../src/state/store.ts';
import { writeInstant } from '../../../src/ui/stages/visit/visit-actions.ts';
import { loop, rectangle } from '../../helpers/drawn.ts';
import { at, press } from '../../helpers/tool-stage.ts';

const store = useAppStore.getState;
const level = () => selectLevel(store());
const desk: PlanObject = {
  id: 't1',
  name: 'Desk',
  shape: { box: { center: [1500, 1500], width: 1200, depth: 600, turn: 0 } },
  bottom: 0,
  top: 762,
};
/** Beside the middle of the desk, so that a turn of it moves this too. */
const detector: Detector = {
  id: 'd1',
  label: 'A1',
  at: [1300, 1500],
  base: 762,
  radius: 50.8,
  tall: 25.4,
  pair: null,
};
/** Nearer to it than it may be: there is a nearest allowed spot elsewhere. */
const pit: Fixture = {
  id: 'f1',
  kind: 'sump-pit',
  name: '',
  shape: { circle: { center: [600, 3200], radius: 200 } },
  bottom: 0,
  top: 0,
  stream: null,
};
const PROBE = { base: 762, radius: 50.8, tall: 25.4 };
const command = (id: string) => {
  const found = COMMANDS.find((each) => each.id === id);
  if (!found) throw new Error(`no command ${id}`);
  return found.run(targetOf(store(), store().selection, null));
};

const turnHandle = () => {
  const handle = shownHandles(level(), ['t1'], store().viewport.scale).find(({ kind }) => kind === 'turn');
  if (!handle) throw new Error('the desk has no handle that turns it');
  return handle;
};
const ASIDE = at(3000, 1500);
function pullTurn(): void {
  const drag = dragHandle(turnHandle());
  drag.move(ASIDE);
  drag.end(ASIDE);
}
function pressTurn(): void {
  const tool = createGripTool('t1');
  const [x, y] = turnHandle().shownAt;
  press(tool, at(x, y));
  if (store().message === 'Press where it goes.') press(tool, ASIDE);
}

const WAYS: readonly (readonly [how: string, selected: string, move: () => unknown])[] = [
  ['by arrows, steps and typed numbers', 'd1', () => store().nudge(100, 50)],
  ['by a number typed for its place', 'd1', () => store().updateItem('d1', { at: [2000, 2000] })],
  ['by a length typed on the plan', 'd1', () => readLength({ of: 'gap', id: 'd1', axis: 0 })?.commit(500, null)],
  ['to the nearest allowed spot', 'd1', () => moveToNearest(store(), 'd1')],
  [
    'to a spot that is offered',
    'd1',
    () =>
      moveToPlace(
        [detector],
        { axes: [[3000, 2000]], base: 762, on: null, margin: 0, limitedBy: null, mutual: false },
        PROBE,
      ),
  ],
  ['with the desk that it stands on', 't1', () => store().nudge(100, 50)],
  ['with the desk that is turned', 't1', () => command('turn')],
  ['with the desk that is turned by a number', 't1', () => turnThing(desk, 30)],
  ['with the desk that is turned by its handle', 't1', pullTurn],
  ['with the desk that is turned by two presses', 't1', pressTurn],
];

beforeEach(() => {
  const log = [
    {
      detector: 'd1',
      serial: '',
      placedBy: 'Ines',
      fetchedBy: '',
      sealed: null,
      tampering: 'none',
      note: '',
      photos: [],
      custody: [],
    },
  ] as const;
  const rooms = [{ id: 'r1', name: 'Den', use: 'den', at: [3000, 3000] }] as const;
  store().openPlan({
    ...emptyPlan(),
    log,
    levels: [
      {
        ...emptyLevel('L1'),
        walls: loop('a', rectangle(0, 0, 6000, 4000)),
        rooms,
        objects: [desk],
        fixtures: [pit],
        detectors: [detector],
      },
    ],
  });
});

describe('a size that is typed', () => {
  // 1500 mm to its middle, less half of its 1200 mm and half of the 200 mm of the wall.
  it('keeps the distances to the nearer walls, which were taped', () => {
    expect(resizeThing(desk, 'width', 1600)).toBe('');
    expect(readLength({ of: 'gap', id: 't1', axis: 0 })?.value).toBeCloseTo(1500 - 600 - 100, 6);
    expect(level().objects[0]?.shape).toMatchObject({ box: { center: [1700, 1500], width: 1600 } });
  });

  it('is refused where nothing would be left', () => {
    expect(resizeThing(desk, 'depth', 0)).toMatch(/more than 0/);
  });
});

describe('a detector that is placed in the house', () => {
  it.each(WAYS)('is not moved %s, and the message offers to unlock it', (_, selected, move) => {
    store().select([selected]);
    const before = store().plan;
    move();
    expect(store().plan).toBe(before);
    expect(store().message).toBe('A1 is placed in the house, and locked here.');
    expect(store().remark?.action).toMatchObject({ kind: 'unlock', ids: ['d1'] });
  });

  it.each(WAYS)('is moved %s once it is unlocked', (_, selected, move) => {
    store().select([selected]);
    store().unlock(['d1']);
    move();
    expect(level().detectors[0]?.at).not.toEqual(detector.at);
  });

  it('keeps its label and its height open to correction', () => {
    expect(store().updateItem('d1', { label: 'B7' })).toBe('');
    expect(store().updateItem('d1', { base: 900 })).toBe('');
    expect(level().detectors[0]).toMatchObject({ label: 'B7', base: 900 });
  });
});

describe('a start that is written down', () => {
  const isMoved = () => {
    store().nudge(100, 50);
    return level().detectors[0]?.at !== detector.at;
  };
  beforeEach(() => {
    store().openPlan({ ...store().plan, log: [] });
    store().select(['d1']);
  });

  it('at the house locks the detector, with nobody named, until it is undone', () => {
    expect(writeInstant('start', 'Placed', Date.parse('2026-03-07T18:00:00-05:00'))).toBe('');
    expect(isMoved()).toBe(false);
    store().undo();
    expect(isMoved()).toBe(true);
  });

  it('at the house and taken away again locks nothing', () => {
    writeInstant('start', 'Placed', Date.parse('2026-03-07T18:00:00-05:00'));
    store().run((plan) => ({ ...plan, visit: { ...plan.visit, start: null } }));
    expect(isMoved()).toBe(true);
  });

  it('while the visit is planned locks nothing', () => {
    store().run((plan) => ({ ...plan, visit: { ...plan.visit, start: '2026-03-07T18:00:00-05:00' } }));
    expect(isMoved()).toBe(true);
  });

  it('of a pick-up locks nothing', () => {
    writeInstant('end', 'Picked up', Date.parse('2026-03-09T18:00:00-05:00'));
    expect(isMoved()).toBe(true);
  });
});
