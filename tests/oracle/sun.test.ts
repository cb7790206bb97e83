import { expect, it } from 'vitest';
import { buildLevel } from '../../geometry/level/build-level.ts';
import type { Level, Plan, XY } from '../../geometry/plan/model.ts';
import { bodyDistance, ringBody } from '../../geometry/plane/body.ts';
import { ringContains } from '../../geometry/plane/ring.ts';
import type { Swept } from '../../geometry/sun/sun-floor.ts';
import { sweptArea } from '../../geometry/sun/swept.ts';
import { sunTimes } from '../../geometry/sun/times.ts';
import { howMany } from '../helpers/how-many.ts';
import { seededRandom } from '../helpers/seeded-level.ts';
import { sunnyHouse, withWing } from '../helpers/sunny-house.ts';
import type { Point } from './geos.ts';
import { NearestLight } from './nearest-light.ts';
import { DISC, RayHouse, rayTo, sunAt } from './sun-rays.ts';

/** Number of houses, and the first one. The environment may select others: SUN_ROOMS=1000, SUN_FIRST=5001. */
const ROOMS = Number(process.env.SUN_ROOMS ?? howMany(25, 200));
const FIRST = Number(process.env.SUN_FIRST ?? 1);
/** Greatest number of points per house; fewer if some windows have no sun. */
const LIT = Number(process.env.SUN_LIT ?? 100);
/** Number of houses of which the whole outline is tested, which takes seconds for each. The environment may select more: SUN_EXCESS=100. */
const OUTLINED = Number(process.env.SUN_EXCESS ?? howMany(2, 20));
const HEIGHTS = { base: 762, tall: 25.4 };

const houses = Array.from({ length: Math.max(ROOMS, OUTLINED) }, (_, i) => FIRST + i);

it(`of ${ROOMS} random houses no lit point is outside the swept area`, { timeout: 7_200_000 }, () => {
  let count = 0;
  const outside = houses.slice(0, ROOMS).flatMap((seed) => {
    const { plan, house, swept } = computed(seed);
    const lit = litPoints(plan, house, seededRandom(seed + 1_000_000), LIT);
    count += lit.length;
    return lit.filter(({ at, window }) => distanceTo(swept, at, window) > 0).map((point) => ({ seed, ...point }));
  });
  console.log(`${count} lit points`);
  expect(outside).toEqual([]);
  expect(count).toBeGreaterThan(ROOMS * LIT * 0.3);
});

it(`of ${OUTLINED} random houses the outline is at most 75 mm or 2 % from a lit place`, { timeout: 7_200_000 }, () => {
  const all = houses.slice(0, OUTLINED).flatMap((seed) => {
    const { plan, house, swept } = computed(seed);
    return excessOf(plan, house, swept).map((place) => ({ seed, ...place }));
  });
  console.log(`${all.length} places`);
  expect(all.filter(({ distance, most }) => distance > most)).toEqual([]);
  expect(all.length).toBeGreaterThan(10 * OUTLINED);
});

function computed(seed: number): { plan: Plan; house: RayHouse; swept: Swept } {
  const random = seededRandom(seed);
  const plain = sunnyHouse(random);
  // Every third house has a wall outdoors.
  const plan = seed % 3 === 0 ? withWing(plain, random) : plain;
  const times = sunTimes(plan);
  if (!times) throw new Error('a sunny house has place and times');
  const swept = sweptArea(buildLevel(plan.levels[0] as Level), times, HEIGHTS);
  expect(swept.state).toBe('known');
  const house = new RayHouse(plan, ({ wall, kind }) => kind === 'window' && Number(wall.slice(1)) < 4);
  return { plan, house, swept };
}

function distanceTo(swept: Swept, [x, y]: Point, window: string): number {
  if (swept.state !== 'known') return Number.POSITIVE_INFINITY;
  const rings = swept.areas.filter(({ opening }) => !window || opening === window).flatMap(({ rings }) => rings);
  if (rings.some((ring) => ringContains(ring, [x, y]))) return 0;
  return Math.min(...rings.map((ring) => bodyDistance(ringBody(ring), x, y)), Number.POSITIVE_INFINITY);
}

/** Number of random instants per house: the library for the position of the sun is slow. */
const MOST_INSTANTS = 2000;

function litPoints(plan: Plan, house: RayHouse, random: () => number, wanted: number) {
  const lit: { at: Point; window: string }[] = [];
  const [start, end] = [Date.parse(plan.visit.start as string), Date.parse(plan.visit.end as string)];
  const suns = Array.from({ length: Math.min(20 * wanted, MOST_INSTANTS) }, () =>
    sunAt(plan, start + random() * (end - start)),
  ).filter((sun) => sun !== null);
  if (suns.length === 0) return [];
  for (let tries = 0; lit.length < wanted && tries < wanted * 20; tries++) {
    const sun = suns[Math.floor(random() * suns.length)] as (typeof suns)[number];
    const [turn, far] = [random() * 2 * Math.PI, DISC * Math.sqrt(random())];
    const ray = rayTo(plan, sun, far * Math.cos(turn), far * Math.sin(turn));
    for (const window of house.windows) {
      const { opening, wall, along, across } = window;
      const side = ray.toward[0] * across[0] + ray.toward[1] * across[1] > 0 ? -1 : 1;
      const s = opening.offset + random() * opening.width;
      const z = HEIGHTS.base + random() * HEIGHTS.tall;
      const height = opening.bottom + random() * (opening.top - opening.bottom);
      const t = (height - z) / ray.rise;
      if (t < 0) continue;
      const half = (side * wall.thickness) / 2;
      const at: Point = [
        wall.from[0] + along[0] * s + across[0] * half - ray.toward[0] * t,
        wall.from[1] + along[1] * s + across[1] * half - ray.toward[1] * t,
      ];
      if (house.isLitThrough(window, at, z, ray)) lit.push({ at, window: opening.id });
    }
  }
  return lit;
}

/** Heights at which light is searched for. */
const LOOKED = [0, 0.5, 1].map((share) => HEIGHTS.base + share * HEIGHTS.tall);

interface Place {
  readonly opening: string;
  readonly at: XY;
  /** The greatest distance from the place at which light must be, mm, and the distance of the nearest light. */
  readonly most: number;
  readonly distance: number;
}

/** Returns the corners of the swept area and the middles of its sides, with the distance to the nearest lit place. */
function excessOf(plan: Plan, house: RayHouse, swept: Swept): Place[] {
  if (swept.state !== 'known') return [];
  return swept.areas.flatMap(({ opening, rings }) => {
    const window = house.windows.find((one) => one.opening.id === opening) as RayHouse['windows'][number];
    const { wall, along } = window;
    const middle = window.opening.offset + window.opening.width / 2;
    const light = new NearestLight(plan, house, window, LOOKED);
    return rings.flatMap(cornersAndMiddles).map((at) => {
      const way = Math.hypot(at[0] - wall.from[0] - along[0] * middle, at[1] - wall.from[1] - along[1] * middle);
      const most = Math.max(75, 0.02 * way);
      return { opening, at, most, distance: light.distanceTo(at, most) };
    });
  });
}

function cornersAndMiddles(ring: readonly XY[]): XY[] {
  return ring.flatMap((a, i) => {
    const b = ring[(i + 1) % ring.length] as XY;
    return [a, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]];
  });
}
