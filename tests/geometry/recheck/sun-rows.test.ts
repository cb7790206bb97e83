import { expect, it } from 'vitest';
import type { XY } from '../../../geometry/plan/model.ts';
import { recheck } from '../../../geometry/recheck/recheck.ts';
import { exposureOf } from '../../../geometry/recheck/sun-rays.ts';
import { altitude, azimuth, HEIGHTS, houseOf, INCH } from '../../helpers/sun-room.ts';

/** How far light under the window's head, 84 in up, extends from the wall of 200 mm: from the lower edge of the disc, radius 0.267°. */
const far = (84 * INCH - HEIGHTS.base) / Math.tan(((altitude - 0.267) * Math.PI) / 180) - 200;

it('a rule without a distance bars the sun itself: Ill. Adm. Code 422.130', () => {
  const plan = houseOf({ site: { north: -azimuth } });
  const verdictAt = (at: XY) => {
    const levels = plan.levels.map((level) => ({
      ...level,
      detectors: [{ id: 'd', label: '', at, base: HEIGHTS.base, radius: 50, tall: HEIGHTS.tall, pair: null }],
    }));
    const opinion = recheck({ ...plan, levels, protocol: { profile: 'illinois-422-130', overrides: [] } });
    if (!opinion.ok) throw new Error(opinion.cause);
    return opinion.levels[0]?.detectors[0]?.checks.find(({ rule }) => rule === 'direct-sun')?.verdict;
  };
  expect(verdictAt([2500, far / 2])).toBe('blocked');
  expect(verdictAt([2500, far + 40])).toBe('blocked');
  expect(verdictAt([2500, far + 60])).toBe('tight');
});

it('direct sun is not followed while the place or a time of the visit is missing', () => {
  const plan = houseOf({ site: { north: -azimuth } });
  expect(exposureOf(plan)).not.toBeNull();
  for (const key of ['latitude', 'longitude'] as const)
    expect(exposureOf({ ...plan, site: { ...plan.site, [key]: null } })).toBeNull();
  for (const key of ['start', 'end'] as const)
    expect(exposureOf({ ...plan, visit: { ...plan.visit, [key]: null } })).toBeNull();
});
