import type { Plan } from '../../geometry/plan/model.ts';
import type { Point } from './geos.ts';
import { dot, minus } from './plane.ts';
import { DISC, type Ray, type RayHouse, rayTo, sunAt } from './sun-rays.ts';

/** Seconds between the rays, and places of the disc: its middle, half way out, its edge. */
const EVERY_MS = 6000;
const PARTS: readonly (readonly [number, number])[] = [[0, 0], ...around(4, 0.5), ...around(12, 0.9999)];
/** Where light is looked for around a place, as shares of how far it may be. */
const SHARES = [0, 0.1, 0.25, 0.4, 0.55, 0.7, 0.85, 0.99];
const TURNS = 32;

function around(count: number, far: number): [number, number][] {
  return Array.from({ length: count }, (_, i) => {
    const turn = (2 * Math.PI * i) / count;
    return [far * Math.cos(turn), far * Math.sin(turn)];
  });
}

/** Returns whether light through a window is near enough to a place, at one of some heights: slow, and hardly any light is too narrow for it. */
export function isLitNear(
  plan: Plan,
  house: RayHouse,
  window: RayHouse['windows'][number],
  at: Point,
  most: number,
  heights: readonly number[],
): boolean {
  const rays = raysNear(plan, window, at, most, heights);
  return SHARES.some((share) =>
    around(TURNS, share * most).some(([x, y]) =>
      heights.some((z) => rays.some((ray) => house.isLitThrough(window, [at[0] + x, at[1] + y], z, ray))),
    ),
  );
}

/** The rays that pass the window, or nearly, on their way to a place. */
function raysNear(
  plan: Plan,
  { opening, wall, along, across }: RayHouse['windows'][number],
  at: Point,
  most: number,
  heights: readonly number[],
): Ray[] {
  const [off, place] = [dot(minus(at, wall.from), across), dot(minus(at, wall.from), along)];
  const isNear = ({ toward, rise }: Ray) => {
    const turn = dot(toward, across);
    if (Math.abs(turn) < 1e-6) return false;
    const way = ((turn > 0 ? -1 : 1) * (wall.thickness / 2) - off) / turn;
    const slack = most / Math.abs(turn);
    const passed = place + way * dot(toward, along) - opening.offset;
    if (way + slack < 0 || passed < -most - slack || passed > opening.width + most + slack) return false;
    const low = Math.min(...heights) + (way - slack) * rise;
    const high = Math.max(...heights) + (way + slack) * rise;
    return high >= opening.bottom && low <= opening.top;
  };
  const [start, end] = [Date.parse(plan.visit.start as string), Date.parse(plan.visit.end as string)];
  const rays: Ray[] = [];
  for (let t = start; t <= end; t += EVERY_MS) {
    const sun = sunAt(plan, t);
    if (sun) rays.push(...PARTS.map(([a, u]) => rayTo(plan, sun, a * DISC, u * DISC)).filter(isNear));
  }
  return rays;
}
