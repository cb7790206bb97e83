import { describe, expect, it } from 'vitest';
import { distance } from '../../../geometry/plane/point.ts';
import { levelPicture } from '../../../src/report/level-picture.ts';
import { SAMPLE_NAMES, samplePlan } from '../../helpers/sample-files.ts';

/** The white grounds of the signs: whole circles of two half turns. */
const GROUND = /M([\d.]+) ([\d.]+)A([\d.]+) \3 0 0 1 ([\d.]+) \2A\3 \3 0 0 1 \1 \2Z" fill="#ffffff"/g;

const discsIn = (picture: string) =>
  [...picture.matchAll(GROUND)].map(([, right, y, radius, left]) => ({
    at: [(Number(right) + Number(left)) / 2, Number(y)] as const,
    radius: Number(radius),
  }));

describe('levelPicture', () => {
  it.each(SAMPLE_NAMES)('%s: each detector has a sign of its own, and none lies on another one', (name) => {
    const plan = samplePlan(name);
    for (const { id, detectors } of plan.levels) {
      const discs = discsIn(levelPicture(plan, id));
      expect(discs).toHaveLength(detectors.length);
      for (const [i, one] of discs.entries())
        for (const other of discs.slice(i + 1))
          expect(distance(one.at, other.at) - one.radius - other.radius).toBeGreaterThan(0.3);
    }
  });
});
