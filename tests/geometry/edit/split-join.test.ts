import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { withWallSplit, withWallsJoined } from '../../../geometry/edit/split-join.ts';
import type { LevelEdit } from '../../../geometry/edit/wall-edit.ts';
import { wallsRunningOn } from '../../../geometry/edit/walls-running-on.ts';
import { wallLength } from '../../../geometry/plan/items.ts';
import type { Level, Opening, XY } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/plane/point.ts';
import { emptyPlan } from '../../../geometry/planfile/empty.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../geometry/planfile/write.ts';
import { jambs } from '../../../geometry/snap/pick.ts';
import { evenly } from '../../helpers/evenly.ts';
import { boxWalls, levelOf, wall } from '../../helpers/level-of.ts';

const opening = (id: string, on: string, offset: number, width: number): Opening => ({
  id,
  wall: on,
  kind: 'window',
  offset,
  width,
  bottom: 900,
  top: 1500,
});
const done = (edit: LevelEdit): Level => {
  if (!edit.ok) throw new Error(edit.reason);
  return edit.level;
};
const refusal = (edit: LevelEdit) => (edit.ok ? '' : edit.reason);
const level = levelOf({
  walls: boxWalls(0, 0, 5000, 3000),
  openings: [opening('o1', 'w1', 500, 800), opening('o2', 'w1', 3000, 900)],
});

describe('withWallSplit', () => {
  it('the part behind takes the new id and its openings along', () => {
    const split = done(withWallSplit(level, 'w1', 2000, 'w9', 'metric'));
    expect(split.walls.map(({ id }) => id)).toEqual(['w1', 'w9', 'w2', 'w3', 'w4']);
    expect(split.walls[0]?.to).toEqual([2000, 0]);
    expect(split.walls[1]).toEqual({ ...level.walls[0], id: 'w9', from: [2000, 0] });
    expect(split.openings.map(({ wall: on, offset }) => [on, offset])).toEqual([
      ['w1', 500],
      ['w9', 1000],
    ]);
  });

  it.each([
    {
      name: 'in a window',
      at: 3300,
      says: 'The window stands there. Split the wall 30 cm to the side, or move the window first.',
    },
    { name: 'at its very end', at: 5000, says: 'The wall is 5.00 m long. Split it somewhere between its ends.' },
    { name: 'before it', at: -10, says: 'The wall is 5.00 m long. Split it somewhere between its ends.' },
  ])('refused $name', ({ at, says }) => {
    expect(refusal(withWallSplit(level, 'w1', at, 'w9', 'metric'))).toBe(says);
  });

  it('at a jamb it is not in the opening', () => {
    const split = done(withWallSplit(level, 'w1', 1300, 'w9', 'metric'));
    expect(split.openings.map(({ wall: on }) => on)).toEqual(['w1', 'w9']);
  });
});

describe('withWallsJoined', () => {
  it.each([
    { name: 'both drawn the same way', other: wall('b', [4000, 0], [7000, 0]), offset: 4500 },
    { name: 'the second drawn the other way', other: wall('b', [7000, 0], [4000, 0]), offset: 5500 },
  ])('$name: its opening stays on the page', ({ other, offset }) => {
    const two = levelOf({ walls: [wall('a', [0, 0], [4000, 0]), other], openings: [opening('o', 'b', 500, 1000)] });
    const joined = done(withWallsJoined(two, 'a', 'b', 'metric'));
    expect(joined.walls).toEqual([wall('a', [0, 0], [7000, 0])]);
    expect(joined.openings[0]).toMatchObject({ wall: 'a', offset });
  });

  it.each([
    { name: 'apart', other: wall('b', [4300, 0], [7000, 0]), says: /^The walls are 30 cm apart\. Lengthen/ },
    { name: 'in a corner', other: wall('b', [4000, 0], [4000, 2000]), says: /turn where they meet/ },
    { name: 'folded back', other: wall('b', [4000, 0], [1000, 0]), says: /turn where they meet/ },
    {
      name: 'of other thickness',
      other: wall('b', [4000, 0], [7000, 0], 200),
      says: /10 cm and 20 cm thick\. Make them equally thick/,
    },
    {
      name: 'said to be outside',
      other: { ...wall('b', [4000, 0], [7000, 0]), side: 'outside' as const },
      says: /set to different sides/,
    },
  ])('refused $name', ({ other, says }) => {
    const two = levelOf({ walls: [wall('a', [0, 0], [4000, 0]), other] });
    expect(refusal(withWallsJoined(two, 'a', 'b', 'metric'))).toMatch(says);
  });
});

describe('splitting and joining again', () => {
  const place = fc.record({
    from: fc.tuple(fc.integer({ min: -9000, max: 9000 }), fc.integer({ min: -9000, max: 9000 })),
    turn: fc.integer({ min: 0, max: 359 }),
    length: fc.integer({ min: 1500, max: 12_000 }),
    share: evenly(0.05, 0.95),
    other: evenly(0.05, 0.95),
  });
  it('keeps the length, the places of openings, ids single, and a plan that is read back', () => {
    fc.assert(
      fc.property(place, ({ from, turn, length, share, other }) => {
        const angle = (turn * Math.PI) / 180;
        const to: XY = [from[0] + Math.cos(angle) * length, from[1] + Math.sin(angle) * length];
        const one = levelOf({
          walls: [wall('w1', from, to)],
          openings: [opening('o1', 'w1', other * (length - 600), 600)],
        });
        const split = withWallSplit(one, 'w1', share * length, 'w2', 'metric');
        if (!split.ok) {
          expect(split.reason).toMatch(/stands there/);
          return;
        }
        const [a, b] = split.level.walls;
        expect((a && b && wallLength(a) + wallLength(b)) ?? 0).toBeCloseTo(length, 2);
        const [o] = split.level.openings;
        const holder = split.level.walls.find(({ id }) => id === o?.wall);
        expect((o?.offset ?? -1) + (o?.width ?? 0)).toBeLessThanOrEqual((holder ? wallLength(holder) : 0) + 1e-6);
        const written = parsePlan(writePlan({ ...emptyPlan(), levels: [split.level] }));
        expect(written.ok).toBe(true);
        expect(wallsRunningOn(split.level, split.level.walls[0] ?? wall('x', from, to))).toHaveLength(1);
        const joined = done(withWallsJoined(split.level, 'w2', 'w1', 'metric'));
        expect(joined.walls).toHaveLength(1);
        const was = jambs(one, one.openings[0] as Opening);
        const is = jambs(joined, joined.openings[0] as Opening);
        for (const end of [0, 1] as const) {
          expect(distance(was?.[end] ?? from, is?.[end] ?? to)).toBeLessThan(0.01);
        }
      }),
      // 0.1 mm of the opening is before the split, so the opening was moved by that much.
      { examples: [[{ from: [0, 0], turn: 0, length: 1507, share: 0.05, other: 0.08296582138919516 }]] },
    );
  });
});
