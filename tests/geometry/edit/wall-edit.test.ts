import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TAPED_BY } from '../../../geometry/dimension/taped-by.ts';
import { wallLengths } from '../../../geometry/dimension/wall-lengths.ts';
import type { MovingEnd } from '../../../geometry/edit/stretch.ts';
import { correctedWall, shiftedWall } from '../../../geometry/edit/wall-edit.ts';
import { wallsAroundOutline } from '../../../geometry/edit/wall-run.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { wallLength } from '../../../geometry/plan/items.ts';
import type { Detector, Level, Opening, PlanObject, RoomLabel, Wall, XY } from '../../../geometry/plan/model.ts';
import { sineBetween } from '../../../geometry/plane/line.ts';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../geometry/planfile/write.ts';
import { boxWalls, levelOf, wall } from '../../helpers/level-of.ts';

const object = (id: string, center: XY): PlanObject => ({
  id,
  name: 'Desk',
  shape: { box: { center, width: 1000, depth: 600, turn: 0 } },
  bottom: 0,
  top: 700,
});
const label = (at: XY): RoomLabel => ({ id: 'r1', name: 'Den', use: 'den', at });
const detector = (at: XY, base: number): Detector => ({
  id: 'd1',
  label: 'A1',
  at,
  base,
  radius: 50,
  tall: 30,
  pair: null,
});
const window = (on: string, offset: number): Opening => ({
  id: 'o1',
  wall: on,
  kind: 'window',
  offset,
  width: 800,
  bottom: 900,
  top: 1500,
});
const corrected = (level: Level, id: string, length: number, moves: MovingEnd): Level => {
  const edit = correctedWall(buildLevel(level), id, length, moves, 'metric');
  if (!edit.ok) throw new Error(edit.reason);
  return edit.level;
};
const refused = (level: Level, id: string, length: number, moves: MovingEnd) => {
  const edit = correctedWall(buildLevel(level), id, length, moves, 'metric');
  return edit.ok ? '' : edit.reason;
};
const wallIn = ({ walls }: Level, id: string): Wall => {
  const found = walls.find((each) => each.id === id);
  if (!found) throw new Error(`no wall ${id}`);
  return found;
};
const xs = (level: Level, id: string) => {
  const found = level.walls.find((each) => each.id === id);
  return [found?.from[0], found?.to[0]];
};

describe('correctedWall: which end goes', () => {
  const box = levelOf({ walls: boxWalls(0, 0, 4000, 3000), openings: [window('w1', 1000)] });
  it.each([
    { moves: 'to' as const, top: [0, 4600], left: [0, 0], right: [4600, 4600], offset: 1000 },
    { moves: 'from' as const, top: [-600, 4000], left: [-600, -600], right: [4000, 4000], offset: 1600 },
    { moves: 'both' as const, top: [-300, 4300], left: [-300, -300], right: [4300, 4300], offset: 1300 },
  ])('$moves: the room stays square, the window stays on the page', ({ moves, top, left, right, offset }) => {
    const longer = corrected(box, 'w1', 4600, moves);
    expect(xs(longer, 'w1')).toEqual(top);
    expect(xs(longer, 'w4')).toEqual(left);
    expect(xs(longer, 'w2')).toEqual(right);
    expect(longer.openings[0]?.offset).toBe(offset);
  });

  it('a partition takes the wall along that it stands against', () => {
    const level = levelOf({ walls: [...boxWalls(0, 0, 4000, 3000), wall('p', [0, 1500], [4000, 1500])] });
    const longer = corrected(level, 'p', 4200, 'to');
    expect(xs(longer, 'p')).toEqual([0, 4200]);
    expect(xs(longer, 'w2')).toEqual([4200, 4200]);
    expect(buildLevel(longer).rooms).toHaveLength(2);
  });
});

// Common practice, no published source: a tape measures faces, and a wall that was taped wrong is no reason to turn another one.
describe('correctedWall in a room with slanted corners', () => {
  const corners: readonly XY[] = [
    [0, 0],
    [6000, 900],
    [5200, 4000],
    [-700, 3600],
  ];
  const walls = wallsAroundOutline(corners, 200).map((line, i) => wall(`w${i}`, ...line, 200));
  const room = levelOf({ walls, openings: [window('w1', 1000)] });
  const cases = walls.flatMap(({ id }) => (['from', 'to', 'both'] as const).map((moves) => ({ id, moves })));
  it.each(cases)('$id, $moves: comes to the taped length on either face, and turns no wall', ({ id, moves }) => {
    for (const by of TAPED_BY) {
      const taped = (level: Level) => wallLengths(buildLevel(level), wallIn(level, id))[by];
      const longer = corrected(room, id, wallLength(wallIn(room, id)) + 150, moves);
      expect(taped(longer)).toBeCloseTo(taped(room) + 150, 2);
      for (const was of room.walls) {
        expect(sineBetween([was.from, was.to], [wallIn(longer, was.id).from, wallIn(longer, was.id).to])).toBeLessThan(
          1e-6,
        );
      }
    }
  });

  it('a window goes along with the wall that moves, as far from its corner', () => {
    // The right wall goes along the top one; its corner with it does too.
    expect(corrected(room, 'w0', wallLength(wallIn(room, 'w0')) + 150, 'to').openings[0]?.offset).toBe(1000);
  });
});

describe('correctedWall: what hangs on the wall', () => {
  const level = levelOf({
    walls: boxWalls(0, 0, 4000, 3000),
    // Against the right wall's face (3950), in the far corner, and free.
    objects: [object('b1', [3450, 1500]), object('b2', [3450, 2650]), object('b3', [1500, 1500])],
    rooms: [label([3000, 1000])],
    detectors: [detector([3450, 1500], 700)],
  });
  const longer = corrected(level, 'w1', 4400, 'to');
  const middle = (id: string) => {
    const shape = longer.objects.find((each) => each.id === id)?.shape;
    return shape && 'box' in shape ? shape.box.center : null;
  };

  it('things against it keep their distance to it, with the detector on them; free ones stay', () => {
    expect(middle('b1')).toEqual([3850, 1500]);
    expect(middle('b2')).toEqual([3850, 2650]);
    expect(middle('b3')).toEqual([1500, 1500]);
    expect(longer.detectors[0]?.at).toEqual([3850, 1500]);
  });

  it('a room name keeps its place within the room: three quarters across', () => {
    expect(longer.rooms[0]?.at).toEqual([3300, 1000]);
  });
});

describe('shiftedWall', () => {
  const level = levelOf({
    walls: [...boxWalls(0, 0, 4000, 3000), wall('p', [2000, 0], [2000, 3000])],
    openings: [{ ...window('p', 1000), kind: 'door', bottom: 0 }],
    objects: [object('b1', [2550, 1500]), object('b2', [3400, 700])],
    rooms: [label([1000, 1500])],
  });
  it.each([
    { by: 400, x: 2400, desk: 2950, name: 1200 },
    { by: -400, x: 1600, desk: 2150, name: 800 },
  ])(
    'a partition moved by $by mm takes its door and the desk against it along, and the name keeps its place',
    ({ by, x, desk, name }) => {
      const edit = shiftedWall(buildLevel(level), 'p', by, 'metric');
      if (!edit.ok) throw new Error(edit.reason);
      expect(xs(edit.level, 'p')).toEqual([x, x]);
      expect(edit.level.openings).toEqual(level.openings);
      const boxes = edit.level.objects.map(({ shape }) => ('box' in shape ? shape.box.center[0] : 0));
      expect(boxes).toEqual([desk, 3400]);
      expect(edit.level.rooms[0]?.at[0]).toBeCloseTo(name, 3);
      expect(buildLevel(edit.level).rooms).toHaveLength(2);
    },
  );

  it('not onto the wall beside it, where its room would be gone', () => {
    const edit = shiftedWall(buildLevel(level), 'p', 2000, 'metric');
    expect(edit.ok ? '' : edit.reason).toMatch(/^A room would no longer close there/);
  });
});

describe('correctedWall refuses, in words', () => {
  const part = wall('p', [3500, 0], [3500, 3000]);
  const level = levelOf({ walls: [...boxWalls(0, 0, 4000, 3000), part], openings: [window('w1', 1000)] });
  it.each([
    {
      name: 'a window past the end',
      length: 1500,
      moves: 'to' as const,
      says: /^The window would reach 30 cm past the end of its wall/,
    },
    { name: 'a room that opens', length: 3200, moves: 'to' as const, says: /^A room would no longer close there/ },
    { name: 'no length', length: 0, moves: 'to' as const, says: /some length/ },
  ])('$name', ({ length, moves, says }) => {
    expect(refused(level, 'w1', length, moves)).toMatch(says);
  });

  it('a wall that would fold', () => {
    const l = levelOf({
      walls: [
        wall('a', [0, 0], [4000, 0]),
        wall('b', [4000, 0], [4000, 2000]),
        wall('c', [4000, 2000], [3500, 2000]),
        wall('d', [3500, 2000], [3500, 4000]),
      ],
    });
    expect(refused(l, 'a', 3000, 'to')).toMatch(/no length left/);
  });
});

it('a corrected room keeps its walls, ids and openings, has the new length, and is read back', () => {
  const room = fc.record({
    width: fc.integer({ min: 2000, max: 9000 }),
    height: fc.integer({ min: 2000, max: 9000 }),
    length: fc.integer({ min: 500, max: 12_000 }),
    which: fc.constantFrom('w1', 'w2', 'w3', 'w4'),
    moves: fc.constantFrom<MovingEnd>('from', 'to', 'both'),
    offset: fc.integer({ min: 0, max: 1200 }),
  });
  fc.assert(
    fc.property(room, ({ width, height, length, which, moves, offset }) => {
      const level = levelOf({
        walls: boxWalls(0, 0, width, height),
        openings: [window('w2', offset)],
        rooms: [label([1000, 1000])],
      });
      const edit = correctedWall(buildLevel(level), which, length, moves, 'metric');
      if (!edit.ok) {
        expect(edit.reason).toMatch(/window/);
        return;
      }
      const [w, h] = which === 'w1' || which === 'w3' ? [length, height] : [width, length];
      const model = buildLevel(edit.level);
      expect(model.rooms.map(({ floorArea }) => Math.round(floorArea))).toEqual([(w - 100) * (h - 100)]);
      expect(model.rooms[0]?.label?.id).toBe('r1');
      expect(edit.level.walls.map(({ id }) => id)).toEqual(['w1', 'w2', 'w3', 'w4']);
      expect(parsePlan(writePlan({ ...emptyPlan(), levels: [edit.level] })).ok).toBe(true);
    }),
  );
});
