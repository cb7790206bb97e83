import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../../geometry/level/build-level.ts';
import { levelExtent } from '../../../../geometry/level/level-extent.ts';
import type { Level, XY } from '../../../../geometry/plan/model.ts';
import type { Extent } from '../../../../geometry/plane/extent.ts';
import { emptyLevel } from '../../../../geometry/planfile/empty.ts';
import type { Probe } from '../../../../geometry/region/types.ts';
import { SINGLE_POINT } from '../../../../geometry/search/field/assess.ts';
import { type MarginField, marginField } from '../../../../geometry/search/field/margin-field.ts';
import type { Square } from '../../../../geometry/search/field/squares.ts';
import { evenly } from '../../../helpers/evenly.ts';
import { planUnder } from '../../../helpers/hall.ts';
import { howMany } from '../../../helpers/how-many.ts';
import { Dice } from '../../../helpers/random-level/dice.ts';
import { expectSame, scene, sceneOf } from './margin-scene.ts';

const PROBE: Probe = { base: 900, radius: 50, tall: 25 };

describe('bounds of the squares of its grid, on levels by chance', () => {
  it('hold in each square, from the largest down to a hair', () => {
    fc.assert(
      fc.property(scene, (one) => {
        const { plan, level, probe, dice } = sceneOf(one);
        const field = marginField(plan, buildLevel(level), probe);
        const extent = levelExtent(level) as Extent;
        for (let k = 0; k < 20; k++) {
          let square = dice.pick(field.squares(extent));
          const middle = field.margin(square.x, square.y);
          const enough = dice.between(-1000, 1000);
          const most = field.upperBound(square, Number.NEGATIVE_INFINITY);
          expect(most).toBeGreaterThanOrEqual(middle - 1e-9);
          // Computed further only above `enough`: still a bound, and the same one if it is greater.
          if (most > enough) expect(field.upperBound(square, enough)).toBe(most);
          else expect(field.upperBound(square, enough)).toBeGreaterThanOrEqual(most);
          expectSame(field.middle(square), middle);
          expect(field.upperBound(square, enough)).toBeGreaterThanOrEqual(middle - 1e-9);
          for (let depth = dice.int(0, 12); depth > 0; depth--) square = dice.pick(field.quarters(square));
          if (square.level >= 0) expectSame(field.middle(square), field.margin(square.x, square.y));
          else expectBounds(field, square, dice);
        }
      }),
      { numRuns: howMany(25, 60) },
    );
  });
});

/**
 * Two posts or two walls on either side of the origin, at nearly the same distance, the second rotated from opposite by up to 60°. Near
 * them lines bend most; halfway between them, where the margin is level, a bound is tight.
 */
const facing = fc.record({
  turn: evenly(0, 2 * Math.PI),
  drift: fc.oneof(fc.constant(0), evenly(-Math.PI / 3, Math.PI / 3)),
  near: evenly(600, 1500),
  farther: evenly(-50, 50),
  chance: fc.integer({ min: 0, max: 1e6 }),
});

describe('bounds between two things on opposite sides', () => {
  const post = (id: string, center: XY): Level['fixtures'][number] => {
    return {
      id,
      kind: 'floor-drain',
      name: '',
      shape: { circle: { center, radius: 0 } },
      bottom: 0,
      top: 0,
      stream: null,
    };
  };
  const screen = (id: string, [x, y]: XY): Level['objects'][number] => {
    const turn = (Math.atan2(y, x) * 180) / Math.PI + 90;
    return { id, name: '', shape: { box: { center: [x, y], width: 9000, depth: 0, turn } }, bottom: 0, top: 2000 };
  };

  it.each([
    { what: 'posts', things: (at: readonly XY[]) => ({ fixtures: at.map((one, k) => post(`f${k}`, one)) }) },
    { what: 'walls', things: (at: readonly XY[]) => ({ objects: at.map((one, k) => screen(`t${k}`, one)) }) },
  ])('$what: no point of a square has more', ({ things }) => {
    fc.assert(
      fc.property(facing, ({ turn, drift, near, farther, chance }) => {
        const back = turn + Math.PI + drift;
        const far = near + farther;
        const level = {
          ...emptyLevel('L'),
          ...things([
            [near * Math.cos(turn), near * Math.sin(turn)],
            [far * Math.cos(back), far * Math.sin(back)],
          ]),
        };
        const dice = new Dice(chance);
        const field = marginField(planUnder('home-short-term', [level]), buildLevel(level), PROBE);
        let square = field.squares({ minX: 0, minY: 0, maxX: 0, maxY: 0 })[0] as Square;
        for (let depth = dice.int(2, 6); depth > 0; depth--) square = nearestTo0(field.quarters(square));
        for (let k = 0; k < 20; k++) expectBounds(field, square, dice);
        const { x, y, half } = square;
        const seen = field.assess(square, x, y, half * Math.SQRT2, SINGLE_POINT, Number.NEGATIVE_INFINITY);
        for (const [sx, sy] of CORNERS) {
          expect(field.margin(x + sx * half, y + sy * half)).toBeLessThanOrEqual(seen.upper + 1e-9);
        }
      }),
      { numRuns: howMany(80, 200) },
    );
  });
});

function nearestTo0(squares: readonly Square[]): Square {
  return squares.reduce((a, b) => (Math.hypot(b.x, b.y) < Math.hypot(a.x, a.y) ? b : a));
}

const CORNERS = [
  [-1, -1],
  [1, -1],
  [1, 1],
  [-1, 1],
] as const;

/** Expects that no point of the square exceeds its bound, and that of two opposite points around one of them the worse does not. */
function expectBounds(field: MarginField, square: Square, dice: Dice): void {
  const { x, y, half } = square;
  const extent = dice.pick([0, 0, 127]);
  const seen = field.assess(square, x, y, half * Math.SQRT2, { extent, width: 0 }, Number.NEGATIVE_INFINITY);
  expectSame(seen.margin, field.margin(x, y));
  for (let k = 0; k < 10; k++) {
    const [mx, my] = [x + dice.between(-half, half), y + dice.between(-half, half)];
    const spin = dice.between(0, 7);
    const [dx, dy] = [extent * Math.cos(spin), extent * Math.sin(spin)];
    const both = Math.min(field.margin(mx + dx, my + dy), field.margin(mx - dx, my - dy));
    expect(both).toBeLessThanOrEqual(seen.upper + 1e-9);
  }
  expectTriangle(field, square, dice);
  const { margin, upper } = field.around(x, y, half, Number.NEGATIVE_INFINITY);
  expectSame(margin, field.margin(x, y));
  const turn = dice.between(0, 7);
  expect(field.margin(x + half * Math.cos(turn), y + half * Math.sin(turn))).toBeLessThanOrEqual(upper + 1e-9);
}

/** Expects that the worst corner of a triangle around a point of the square does not exceed the bound for such a triangle. */
function expectTriangle(field: MarginField, square: Square, dice: Dice): void {
  const { x, y, half } = square;
  const extent = 100;
  const spread = { extent, width: 1.5 * extent };
  const { upper } = field.assess(square, x, y, half * Math.SQRT2, spread, Number.NEGATIVE_INFINITY);
  const [mx, my] = [x + dice.between(-half, half), y + dice.between(-half, half)];
  const spin = dice.between(0, 7);
  const corners = [0, 1, 2].map((k) => {
    const angle = spin + (k * 2 * Math.PI) / 3;
    return field.margin(mx + extent * Math.cos(angle), my + extent * Math.sin(angle));
  });
  expect(Math.min(...corners)).toBeLessThanOrEqual(upper + 1e-9);
}
