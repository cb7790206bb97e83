import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { circleReach } from '../../../geometry/dimension/footprint.ts';
import { moveToGap, SIDES, wallGaps } from '../../../geometry/dimension/wall-gaps.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { gapRefusal } from '../../../geometry/messages/index.ts';
import type { Wall, XY } from '../../../geometry/plan/model.ts';
import { emptyLevel } from '../../../geometry/planfile/empty.ts';

const wall = (id: string, from: XY, to: XY): Wall => ({ id, from, to, thickness: 200, side: 'auto' });
/** Walls of 200 around a floor of 3800 by 2800, its corner at (100, 100). */
const model = buildLevel({
  ...emptyLevel('L1'),
  walls: [
    wall('top', [0, 0], [4000, 0]),
    wall('right', [4000, 0], [4000, 3000]),
    wall('bottom', [4000, 3000], [0, 3000]),
    wall('left', [0, 3000], [0, 0]),
  ],
});

describe('gapRefusal', () => {
  it('says how much room there is, in the unit of the plan, rounded so that what it says fits', () => {
    const gaps = wallGaps(model, [1000, 1000], circleReach(50));
    expect(gapRefusal(gaps, 'left', 9144, 'metric')).toBe(
      'There are only 3.70 m to the right wall. Write less, or drag it past that wall first.',
    );
    expect(gapRefusal(gaps, 'down', 9144, 'feet-inches')).toMatch(
      /^There are only 8 ft 10 1\/4 in to the upper wall\./,
    );
  });

  it('takes as much as there is, and what lies within a touch of it', () => {
    const gaps = wallGaps(model, [1000, 1000], circleReach(50));
    expect(gapRefusal(gaps, 'left', 3700, 'metric')).toBe('');
    expect(gapRefusal(gaps, 'left', 3700.9, 'metric')).toBe('');
    expect(gapRefusal(gaps, 'left', 3702, 'metric')).not.toBe('');
  });

  it('takes any distance where no wall is opposite', () => {
    expect(gapRefusal(wallGaps(model, [9000, 1000], circleReach(50)), 'left', 90_000, 'metric')).toBe('');
  });

  it('takes nothing that puts a thing out of its room', () => {
    const place = fc.tuple(fc.integer({ min: 160, max: 3840 }), fc.integer({ min: 160, max: 2840 }));
    fc.assert(
      fc.property(place, fc.constantFrom(...SIDES), fc.integer({ min: 0, max: 20_000 }), ([x, y], side, wanted) => {
        const gaps = wallGaps(model, [x, y], circleReach(50));
        const [dx, dy] = moveToGap(side, gaps[side] ?? Number.NaN, wanted);
        const isIn = x + dx >= 149 && x + dx <= 3851 && y + dy >= 149 && y + dy <= 2851;
        expect(gapRefusal(gaps, side, wanted, 'metric') === '').toBe(isIn);
      }),
    );
  });
});
