import { describe, expect, it } from 'vitest';
import type { XY } from '../../../geometry/plan/model.ts';
import { convexHull } from '../../../geometry/plane/hull.ts';
import { distance, nearestOnSegment } from '../../../geometry/plane/point.ts';
import { ringContains, signedArea } from '../../../geometry/plane/ring.ts';
import { withFewerCorners } from '../../../geometry/sun/fewer-corners.ts';
import { seededRandom } from '../../helpers/seeded-level.ts';

const NEAREST = 5;

const distanceTo = (ring: readonly XY[], p: XY) =>
  ringContains(ring, p)
    ? 0
    : Math.min(...ring.map((a, i) => distance(p, nearestOnSegment(p, a, ring[(i + 1) % ring.length] as XY))));

describe('withFewerCorners(ring)', () => {
  it.each([1, 0.1, 0.001])('of a ring %d times as narrow as long no corner is farther than it may be', (narrow) => {
    const random = seededRandom(7);
    for (let n = 0; n < 300; n++) {
      const points = Array.from({ length: 12 }, (): XY => [3000 * random(), 3000 * narrow * random()]);
      const ring = convexHull(points);
      const fewer = withFewerCorners(ring, NEAREST);
      expect(Math.abs(signedArea(fewer))).toBeGreaterThanOrEqual(Math.abs(signedArea(ring)) - 1e-6);
      for (const corner of fewer) expect(distanceTo(ring, corner)).toBeLessThanOrEqual(NEAREST + 1e-6);
    }
  });
});
