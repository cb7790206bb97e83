import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Fixture, Level, Plan, PlanObject, XY } from '../../../geometry/plan/model.ts';
import { levelRegion } from '../../../geometry/region/level-region.ts';
import type { Probe } from '../../../geometry/region/types.ts';
import { PROFILES } from '../../../geometry/rules/profiles.ts';
import { bestSpots } from '../../../geometry/search/best-spots.ts';
import { areaBounds, bestBounds } from '../../helpers/certified-bounds.ts';
import { drawn, loop, planOf, rectangle, wall } from '../../helpers/drawn.ts';
import { howMany } from '../../helpers/how-many.ts';
import { randomPlan } from '../../helpers/random-level.ts';

const PROBE: Probe = { base: 762, radius: 50, tall: 25 };
/** How far the axis keeps from a body, minus the 0.1 mm that a check tolerates: wall 12 in, air 36, heat 48, object 4. */
const [WALL, AIR, HEAT, OBJECT] = [304.8, 914.4, 1219.2, 101.6].map((limit) => limit - 0.1 + PROBE.radius) as [
  number,
  number,
  number,
  number,
];

function den(width: number, depth: number, rest: Partial<Level> = {}): Level {
  const walls = loop('a', rectangle(-100, -100, width + 200, depth + 200));
  return drawn(walls, { rooms: [{ id: 'r', name: '', use: 'den', at: [5, 5] }], ceiling: 3000, ...rest });
}

let ids = 0;
function fixture(kind: Fixture['kind'], center: XY, radius: number): Fixture {
  return { id: `f${ids++}`, kind, name: '', shape: { circle: { center, radius } }, bottom: 0, top: 0, stream: null };
}
function box(center: XY, width: number, depth: number, turn = 0): PlanObject {
  return { id: `t${ids++}`, name: '', shape: { box: { center, width, depth, turn } }, bottom: 0, top: 2000 };
}

/** Expects the exact area of every room and the best spot between their bounds. Returns the area and the best margin. */
function expectCertified(plan: Plan, level: Level, probe: Probe, finest: number) {
  const model = buildLevel(level);
  const region = levelRegion(plan, model, probe);
  let total = 0;
  for (const { room, area, barred } of region.rooms) {
    if (barred) continue;
    const { least, most } = areaBounds(plan, model, probe, room, finest);
    // Tolerance for rounding: 1 mm² and nine digits.
    const rounding = 1 + 1e-9 * most;
    expect(area).toBeGreaterThanOrEqual(least - rounding);
    expect(area).toBeLessThanOrEqual(most + rounding);
    total += area;
  }
  const [spot] = bestSpots(plan, model, probe);
  if (region.rooms.every(({ barred }) => barred)) expect(spot).toBeUndefined();
  else expectBest(spot, bestBounds(plan, model, probe, 4, 0.5));
  return { area: total, margin: spot?.margin ?? null };
}

function expectBest(spot: { margin: number; bound: number } | undefined, bounds: { least: number; most: number }) {
  if (!spot) {
    expect(bounds.least).toBe(Number.NEGATIVE_INFINITY);
    return;
  }
  expect(spot.margin).toBeLessThanOrEqual(bounds.most + 1e-9);
  expect(spot.margin).toBeGreaterThanOrEqual(bounds.least - 1.6);
  expect(spot.bound).toBeGreaterThanOrEqual(bounds.least - 1e-9);
}

describe('area and best margin lie between their bounds, where things meet exactly', () => {
  const inner = 4000 - 2 * WALL;
  it.each([
    { name: 'an empty square', level: den(4000, 4000), area: inner ** 2 },
    { name: 'a region of one point', level: den(2 * WALL, 2 * WALL), area: 0 },
    { name: 'a sliver a hundredth of a mm wide', level: den(4000, 2 * WALL + 0.01), area: 0.01 * inner },
    {
      name: 'two zones that coincide: heat about a point, air about a disc that is larger by the difference',
      level: den(8000, 8000, {
        fixtures: [fixture('radiator', [4000, 4000], 0), fixture('return-grille', [4000, 4000], HEAT - AIR)],
      }),
      area: (8000 - 2 * WALL) ** 2 - Math.PI * HEAT ** 2,
    },
    {
      name: 'a zone within a zone',
      level: den(8000, 8000, {
        fixtures: [fixture('furnace', [4000, 4000], 300), fixture('portable-fan', [4050, 4000], 50)],
      }),
      area: (8000 - 2 * WALL) ** 2 - Math.PI * (HEAT + 300) ** 2,
    },
    {
      name: 'two zones that touch from outside',
      level: den(8000, 8000, {
        fixtures: [fixture('humidifier', [4000 - AIR, 4000], 0), fixture('air-cleaner', [4000 + AIR, 4000], 0)],
      }),
      area: (8000 - 2 * WALL) ** 2 - 2 * Math.PI * AIR ** 2,
    },
    {
      name: 'a zone that touches the zone of a wall',
      level: den(8000, 8000, { fixtures: [fixture('humidifier', [WALL + AIR, 4000], 0)] }),
      area: (8000 - 2 * WALL) ** 2 - Math.PI * AIR ** 2,
    },
    {
      name: 'two tall boxes whose zones just close the gap between them',
      level: den(8000, 8000, {
        objects: [box([4000 - 300 - OBJECT, 4000], 600, 1000), box([4000 + 300 + OBJECT, 4000], 600, 1000)],
      }),
      area: (8000 - 2 * WALL) ** 2 - 2 * (600 * 1000 + 2 * OBJECT * 1600 + Math.PI * OBJECT ** 2),
    },
    {
      name: 'a box with its back to a wall',
      level: den(8000, 8000, { objects: [box([4000, 300], 1000, 600)] }),
      // The part of its zone beyond the zone of the wall: a rectangle with two rounded corners.
      area: (8000 - 2 * WALL) ** 2 - (1000 + 2 * OBJECT) * (600 - WALL) - 1000 * OBJECT - (Math.PI / 2) * OBJECT ** 2,
    },
    {
      name: 'a hole in a hole: a den within a den, about a stove',
      level: drawn(
        [
          ...loop('a', rectangle(-100, -100, 12200, 12200)),
          ...loop('b', rectangle(3900, 3900, 4200, 4200), { side: 'inside' }),
        ],
        {
          ceiling: 3000,
          rooms: [
            { id: 'outer', name: '', use: 'den', at: [500, 500] },
            { id: 'inner', name: '', use: 'den', at: [4500, 4500] },
          ],
          fixtures: [fixture('wood-stove', [6000, 6000], 0)],
        },
      ),
      area:
        (12000 - 2 * WALL) ** 2 -
        (4400 ** 2 + 4 * 4400 * OBJECT + Math.PI * OBJECT ** 2) +
        (4000 - 2 * OBJECT) ** 2 -
        Math.PI * HEAT ** 2,
    },
    {
      name: 'a fixture within a wall',
      level: den(8000, 8000, { fixtures: [fixture('exhaust-fan', [-100, 4000], 100)] }),
      // The segment of the fan's disc that extends beyond the zone of the wall.
      area: (8000 - 2 * WALL) ** 2 - segment(AIR + 100, WALL + 100),
    },
    {
      name: 'a stub of no thickness into the middle',
      level: den(4000, 4000, {
        walls: [
          ...loop('a', rectangle(-100, -100, 4200, 4200)),
          wall('s', [2000, -100], [2000, 2000], { thickness: 0 }),
        ],
      }),
      // The stub is drawn with a thousandth of a mm on either side; its zone ends in a half circle.
      area: inner ** 2 - 2 * (OBJECT + 0.001) * (2000 - WALL) - (Math.PI / 2) * OBJECT ** 2,
    },
  ])('$name', ({ level, area }) => {
    const found = expectCertified(planOf(level), level, PROBE, 8);
    expect(Math.abs(found.area - area)).toBeLessThan(1e-9 * area + 1);
  });
});

/** Area of a disc's part beyond a line at a distance from its middle. */
function segment(radius: number, distance: number): number {
  return radius ** 2 * Math.acos(distance / radius) - distance * Math.sqrt(radius ** 2 - distance ** 2);
}

describe('area and best margin lie between their bounds, by chance', () => {
  const seeds = (map: (seed: number) => number) => fc.integer({ min: 1, max: 200_000 }).map(map);
  const certified = (seed: number) => {
    const made = randomPlan(seed);
    const profile = PROFILES[seed % (2 * PROFILES.length)];
    const plan = profile ? { ...made, protocol: { profile: profile.id, overrides: [] } } : made;
    expectCertified(plan, plan.levels[0] as Level, { base: 762, radius: 50.8, tall: 25.4 }, 8);
  };

  it('on levels where things meet exactly or almost', () => {
    // Every fifth seed makes such a level.
    fc.assert(
      fc.property(
        seeds((seed) => 5 * seed),
        certified,
      ),
      { numRuns: howMany(15, 40) },
    );
  });

  it('on any levels', () => {
    fc.assert(
      fc.property(
        seeds((seed) => seed),
        certified,
      ),
      { numRuns: howMany(15, 40) },
    );
  });
});
