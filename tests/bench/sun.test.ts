import { Clipper, FillRule } from 'clipper2-ts';
import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../geometry/level/build-level.ts';
import { sweptArea } from '../../geometry/sun/swept.ts';
import { type SunTimes, sunTimes } from '../../geometry/sun/times.ts';
import { onlyLevel, PROBE } from './plans.ts';
import { SUN_FLOOR, SUN_PANES, sunHouse } from './sun-house.ts';
import { areaOfPaths, pathOf, unionOfMinutes } from './sun-minutes.ts';

describe('the plain union of the light of each minute', () => {
  it('lies within the swept area, which is at most 5 % larger', () => {
    const plan = sunHouse(24);
    const times = sunTimes(plan) as SunTimes;
    const plain = unionOfMinutes(SUN_PANES, SUN_FLOOR, times, PROBE);
    const swept = sweptArea(buildLevel(onlyLevel(plan)), times, PROBE);
    if (swept.state !== 'known') throw new Error(swept.reason);
    const ours = Clipper.union(
      swept.areas.flatMap(({ rings }) => rings.map(pathOf)),
      FillRule.NonZero,
    );
    const [plainArea, area] = [areaOfPaths(plain), areaOfPaths(ours)];
    expect(plainArea).toBeGreaterThan(10e6);
    // Square mm: corners are rounded to 0.01 mm.
    expect(areaOfPaths(Clipper.difference([...plain], ours, FillRule.NonZero))).toBeLessThan(100);
    expect(area).toBeLessThan(1.05 * plainArea);
  });
});
