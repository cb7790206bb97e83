import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TAPED_BY, type TapedBy } from '../../../geometry/dimension/taped-by.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, Mm, XY } from '../../../geometry/plan/model.ts';
import { levelOf } from '../../helpers/level-of.ts';
import { SAMPLE_NAMES, samplePlan } from '../../helpers/sample-files.ts';
import { around, basement, ELL, expectAlike, idsOf, insideLengths, outsideLengths, thick } from './taped-walls.ts';

// Expected values are geometry alone: common practice, a tape measures faces. No published source.

const SAMPLE_LEVELS = SAMPLE_NAMES.flatMap((name) => samplePlan(name).levels).filter(
  ({ walls }) => walls.length > 0 && walls.length < 60,
);

describe('any outline, turned by any angle', () => {
  const square = [basement().map(({ from }) => from), ELL];
  const slanted: readonly (readonly XY[])[] = [
    [
      [0, 0],
      [6000, 900],
      [5200, 4000],
      [-700, 3600],
    ],
    [
      [0, 0],
      [3000, -1500],
      [6000, 0],
      [6000, 4000],
      [0, 4000],
    ],
  ];
  const turnedBy = (degrees: number, [x, y]: XY): XY => {
    const [cos, sin] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
    return [x * cos - y * sin, x * sin + y * cos];
  };
  const drawn = (outlines: readonly (readonly XY[])[]) =>
    fc.record({
      points: fc.constantFrom(...outlines),
      turn: fc.double({ min: 0, max: 360, noNaN: true }),
      /** Which walls are changed (bits), and their new thickness, one change after another. */
      steps: fc.array(fc.record({ which: fc.integer({ min: 1, max: 63 }), mm: fc.integer({ min: 60, max: 500 }) }), {
        minLength: 1,
        maxLength: 4,
      }),
      backwards: fc.boolean(),
    });
  const built = (points: readonly XY[], turn: number, by: TapedBy, backwards: boolean): Level => {
    const walls = around(
      points.map((at) => turnedBy(turn, at)),
      by,
    );
    return levelOf({ walls: backwards ? walls.map((each) => ({ ...each, from: each.to, to: each.from })) : walls });
  };
  const stepped = (level: Level, steps: readonly { which: number; mm: Mm }[], by: TapedBy) =>
    steps.reduce((now, { which, mm }) => {
      const ids = idsOf(now).filter((_, i) => (which >> i) & 1);
      return thick(now, ids, mm, by).level;
    }, level);
  it('taped inside with square corners, the lengths inside are the same', () => {
    fc.assert(
      fc.property(drawn(square), ({ points, turn, steps, backwards }) => {
        const level = built(points, turn, 'inside', backwards);
        expectAlike(insideLengths(stepped(level, steps, 'inside')), insideLengths(level));
      }),
    );
  });
  // At a slanted corner of walls with different thickness, the square end of the thicker one shows, whatever the edit.
  it('with slanted corners too, where all walls are as thick', () => {
    fc.assert(
      fc.property(drawn(slanted), ({ points, turn, steps, backwards }) => {
        const level = built(points, turn, 'inside', backwards);
        const all = steps.map((step) => ({ ...step, which: 63 }));
        expectAlike(insideLengths(stepped(level, all, 'inside')), insideLengths(level));
      }),
    );
  });
  it('of every sample the floors stay, whichever of its walls that can are thicker or thinner', () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...SAMPLE_LEVELS),
        fc.integer({ min: 1, max: 0x7fffffff }),
        fc.integer({ min: 100, max: 300 }),
        (level, which, mm) => {
          const model = buildLevel(level);
          const ids = idsOf(level).filter((_, i) => (which >> (i % 31)) & 1);
          const first = thick(level, ids, mm);
          const kept = level.walls
            .filter(({ id }) => ids.includes(id))
            .filter((_, i) => first.changes[i]?.stays === 'inside')
            .map(({ id }) => id);
          const after = buildLevel(thick(level, kept, mm).level);
          const areas = (rooms: typeof model.rooms) => rooms.map(({ floorArea }) => floorArea).sort((a, b) => a - b);
          const before = areas(model.rooms);
          expect(after.rooms).toHaveLength(before.length);
          areas(after.rooms).forEach((area, i) => {
            expect(Math.abs(area - (before[i] as number))).toBeLessThan(2000.1);
          });
        },
      ),
      { numRuns: 60 },
    );
  });
  it('taped outside, the lengths outside are the same', () => {
    fc.assert(
      fc.property(drawn([...square, ...slanted]), ({ points, turn, steps, backwards }) => {
        const level = built(points, turn, 'outside', backwards);
        expectAlike(outsideLengths(stepped(level, steps, 'outside')), outsideLengths(level));
      }),
    );
  });
  it('every wall is as thick as was entered, whatever stays', () => {
    fc.assert(
      fc.property(
        drawn([...square, ...slanted]),
        fc.constantFrom(...TAPED_BY),
        ({ points, turn, steps, backwards }, by) => {
          const level = built(points, turn, by, backwards);
          const [{ which, mm }] = steps as [{ which: number; mm: Mm }];
          const ids = idsOf(level).filter((_, i) => (which >> i) & 1);
          const after = thick(level, ids, mm, by);
          expect(after.level.walls.map(({ thickness }) => thickness)).toEqual(
            level.walls.map(({ id, thickness }) => (ids.includes(id) ? mm : thickness)),
          );
          expect(after.changes).toHaveLength(ids.length);
        },
      ),
    );
  });
});
