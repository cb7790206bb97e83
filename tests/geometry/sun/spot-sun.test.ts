import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, Plan, XY } from '../../../geometry/plan/model.ts';
import { sunAtSpot } from '../../../geometry/sun/spot-sun.ts';
import type { SunSpan } from '../../../geometry/sun/sun-hours.ts';
import { sweptArea } from '../../../geometry/sun/swept.ts';
import { type SunTimes, sunTimes } from '../../../geometry/sun/times.ts';
import { howMany } from '../../helpers/how-many.ts';
import { seededRandom } from '../../helpers/seeded-level.ts';
import { HEIGHTS, houseOf } from '../../helpers/sun-room.ts';
import { sunnyHouse, withWing } from '../../helpers/sunny-house.ts';
import type { Point } from '../../oracle/geos.ts';
import { RayHouse, rayTo, sunAt } from '../../oracle/sun-rays.ts';

function spansOf(plan: Plan, spot: XY): readonly SunSpan[] {
  const times = sunTimes(plan) as SunTimes;
  const model = buildLevel(plan.levels[0] as Level);
  const swept = sweptArea(model, times, HEIGHTS);
  return swept.state === 'known' ? sunAtSpot(model, times, HEIGHTS, swept.areas, spot) : [];
}

describe('sunAtSpot', () => {
  it('in front of a window to the south: once a day, around noon', () => {
    const visit = { start: '2003-10-17T06:00:00-07:00', end: '2003-10-19T20:00:00-07:00' };
    const spans = spansOf(houseOf({ visit }), [2500, 1000]);
    const noon = Date.parse('2003-10-17T12:30:30-07:00');
    expect(spans).toHaveLength(3);
    expect(spans[0]?.start).toBeLessThan(noon);
    expect(spans[0]?.end).toBeGreaterThan(noon);
    expect(spansOf(houseOf({ visit }), [5500, 4800])).toEqual([]);
  });

  it.each([
    ['beside a thicker wall that runs along a part of the window', 2800],
    ['where that wall runs', 2200],
  ])('%s', (_, x) => {
    const visit = { start: '2003-10-17T12:20:00-07:00', end: '2003-10-17T12:40:00-07:00' };
    const walls: Level['walls'] = [{ id: 't', from: [-50, -50], to: [2500, -50], thickness: 500, side: 'auto' }];
    const plan = houseOf({ visit, thickness: 100, window: { offset: 2050 }, more: { walls } });
    expect(spansOf(plan, [x, 1000])).toHaveLength(1);
  });

  it('of random houses agrees with single rays of the middle of the sun', () => {
    let lit = 0;
    for (let seed = 1; seed <= howMany(10, 30); seed++) {
      const random = seededRandom(seed);
      const plan = seed % 3 === 0 ? withWing(sunnyHouse(random), random) : sunnyHouse(random);
      const times = sunTimes(plan) as SunTimes;
      const model = buildLevel(plan.levels[0] as Level);
      const swept = sweptArea(model, times, HEIGHTS);
      if (swept.state !== 'known') throw new Error(swept.reason);
      const house = new RayHouse(plan, ({ wall, kind }) => kind === 'window' && Number(wall.slice(1)) < 4);
      const corners = swept.areas.flatMap(({ rings }) => rings.flat());
      for (let n = 0; n < 20 && corners.length > 0; n++) {
        const [p, q] = [0, 1].map(() => corners[Math.floor(random() * corners.length)] as XY) as [XY, XY];
        const spot: Point = [(p[0] + q[0]) / 2, (p[1] + q[1]) / 2];
        const spans = sunAtSpot(model, times, HEIGHTS, swept.areas, spot);
        for (let at = times.start; at < times.end; at += 20 * 60_000) {
          const sun = sunAt(plan, at);
          if (
            !sun ||
            !house.windows.some((window) => house.isLitThrough(window, spot, HEIGHTS.base, rayTo(plan, sun, 0, 0)))
          )
            continue;
          lit++;
          // Accurate to a minute.
          expect(spans.some(({ start, end }) => start <= at + 60_000 && end >= at - 60_000)).toBe(true);
        }
      }
    }
    expect(lit).toBeGreaterThan(100);
  });
});
