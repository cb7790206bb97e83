import type { Plan } from '../../geometry/plan/model.ts';
import type { Point } from './geos.ts';
import { dot, minus } from './plane.ts';
import { DISC, type Ray, type RayHouse, rayTo, sunAt } from './sun-rays.ts';

type Window = RayHouse['windows'][number];

/** Time between two suns, ms: in the first pass, and around the nearest light found in it. */
const [EVERY, CLOSE] = [120_000, 2000];
/** Number of places on the edge of the disc: in the first pass, and around the nearest light found in it. */
const [PLACES, MORE_PLACES] = [8, 120];
/** Rays stay this far inside the edge of the disc, as a fraction, and inside the edge of the openings, mm. */
const [WITHIN, INSET] = [0.99999, 1e-3];
/** Offsets at which light is searched for if a wall shades the nearest place of a ray, mm: across and along the ray. */
const ASIDE = [0, -3, 3, -15, 15, -40, 40, -80, 80];

/** The light of one place of the disc at one height, ignoring all walls except that of the window. */
interface Sheet {
  readonly instant: number;
  readonly ray: Ray;
  readonly z: number;
  /** Intervals along the opening, from its beginning, and along the ray, from the inner face, mm. */
  readonly aside: readonly [number, number];
  readonly along: readonly [number, number];
  /** Where the opening begins on the inner face. */
  readonly origin: Point;
}

/** Finds the light through a window that is nearest to a place. */
export class NearestLight {
  private readonly plan: Plan;
  private readonly house: RayHouse;
  private readonly window: Window;
  private readonly heights: readonly number[];
  private readonly sheets: readonly Sheet[];

  constructor(plan: Plan, house: RayHouse, window: Window, heights: readonly number[]) {
    this.plan = plan;
    this.house = house;
    this.window = window;
    this.heights = heights;
    this.sheets = sunsOf(plan, EVERY).flatMap((sun) => this.sheetsAt(sun, PLACES));
  }

  /** Returns the distance of the nearest lit place, mm. Stops at the first one within `enough`. */
  distanceTo(at: Point, enough: number): number {
    const first = this.nearestOf(this.sheets, at, enough, [0]);
    if (first.distance <= enough) return first.distance;
    const more = this.nearestOf(this.sheets, at, enough, ASIDE, enough);
    if (more.distance <= enough) return more.distance;
    const sheet = more.sheet ?? first.sheet;
    if (!sheet) return first.distance;
    const suns = sunsOf(this.plan, CLOSE, sheet.instant - EVERY, sheet.instant + EVERY);
    const close = suns.flatMap((sun) => this.sheetsAt(sun, MORE_PLACES));
    return Math.min(first.distance, this.nearestOf(close, at, enough, ASIDE).distance);
  }

  private nearestOf(
    sheets: readonly Sheet[],
    at: Point,
    enough: number,
    aside: readonly number[],
    most = Number.POSITIVE_INFINITY,
  ) {
    let [distance, sheet]: [number, Sheet | null] = [most, null];
    for (const one of sheets) {
      if (distanceOf(one, this.window, at) >= distance) continue;
      const [s, t] = nearestIn(one, this.window, at);
      for (const ds of aside)
        for (const dt of aside) {
          const place = placeOf(one, this.window, within(s + ds, one.aside), within(t + dt, one.along));
          const far = Math.hypot(place[0] - at[0], place[1] - at[1]);
          if (far >= distance || !this.house.isLitThrough(this.window, place, one.z, one.ray)) continue;
          [distance, sheet] = [far, one];
          if (distance <= enough) return { distance, sheet };
        }
    }
    return { distance, sheet };
  }

  private sheetsAt({ instant, sun }: Sun, count: number): Sheet[] {
    const sheets: Sheet[] = [];
    for (let i = 0; i <= count; i++) {
      const [turn, far] = [(2 * Math.PI * i) / count, i === count ? 0 : WITHIN * DISC];
      const ray = rayTo(this.plan, sun, far * Math.cos(turn), far * Math.sin(turn));
      for (const z of this.heights) {
        const sheet = this.sheetOf(instant, ray, z);
        if (sheet) sheets.push(sheet);
      }
    }
    return sheets;
  }

  private sheetOf(instant: number, ray: Ray, z: number): Sheet | null {
    const { opening, wall, along, across } = this.window;
    const turn = dot(ray.toward, across);
    const cosine = Math.abs(turn);
    if (cosine < 1e-6) return null;
    const thick = wall.thickness / cosine;
    const slip = -dot(ray.toward, along) * thick;
    const aside = [Math.max(0, slip), Math.min(opening.width, opening.width + slip)] as const;
    const { shade } = opening;
    const roof = typeof shade === 'object' ? shade?.overhang : undefined;
    const way = [
      Math.max(0, (opening.bottom - z) / ray.rise),
      Math.min(
        (opening.top - z) / ray.rise - thick,
        roof ? (opening.top + roof.above - z) / ray.rise - thick - roof.depth / cosine : Number.POSITIVE_INFINITY,
      ),
    ] as const;
    if (aside[0] > aside[1] || way[0] > way[1]) return null;
    const off = ((turn > 0 ? -1 : 1) * wall.thickness) / 2;
    const origin: Point = [
      wall.from[0] + along[0] * opening.offset + across[0] * off,
      wall.from[1] + along[1] * opening.offset + across[1] * off,
    ];
    return { instant, ray, z, aside, along: way, origin };
  }
}

interface Sun {
  readonly instant: number;
  readonly sun: { readonly azimuth: number; readonly altitude: number };
}

let last: { readonly plan: Plan; readonly suns: readonly Sun[] } | null = null;

/** Returns the suns of an exposure, or of a part of it; those of a whole exposure are cached for the next window. */
function sunsOf(plan: Plan, every: number, from = Number.NEGATIVE_INFINITY, to = Number.POSITIVE_INFINITY) {
  const isWhole = from === Number.NEGATIVE_INFINITY;
  if (isWhole && last?.plan === plan) return last.suns;
  const suns: Sun[] = [];
  const begin = Math.max(from, Date.parse(plan.visit.start as string));
  const end = Math.min(to, Date.parse(plan.visit.end as string));
  for (let instant = begin; instant < end + every; instant += every) {
    const sun = sunAt(plan, Math.min(instant, end));
    if (sun) suns.push({ instant: Math.min(instant, end), sun });
  }
  if (isWhole) last = { plan, suns };
  return suns;
}

const within = (x: number, [low, high]: readonly [number, number]): number => {
  const inset = Math.min(INSET, (high - low) / 2);
  return Math.min(high - inset, Math.max(low + inset, x));
};

function placeOf({ origin, ray }: Sheet, { along }: Window, s: number, t: number): Point {
  return [origin[0] + along[0] * s - ray.toward[0] * t, origin[1] + along[1] * s - ray.toward[1] * t];
}

/** Returns the distance from a place to a sheet, mm. */
function distanceOf(sheet: Sheet, window: Window, at: Point): number {
  const [s, t] = nearestIn(sheet, window, at);
  const [x, y] = placeOf(sheet, window, s, t);
  return Math.hypot(x - at[0], y - at[1]);
}

/** Returns the place of a sheet, a parallelogram, that is nearest to a point: distances along the opening and along the ray. */
function nearestIn({ origin, ray, aside, along: ways }: Sheet, { along, across }: Window, at: Point): [number, number] {
  const v = minus(at, origin);
  const lean = -dot(ray.toward, along);
  // at = origin + s · along − t · toward.
  const t = -dot(v, across) / dot(ray.toward, across);
  const s = dot(v, along) - t * lean;
  if (s >= aside[0] && s <= aside[1] && t >= ways[0] && t <= ways[1]) return [within(s, aside), within(t, ways)];
  const [p, q] = [dot(v, along), -dot(v, ray.toward)];
  let [best, found]: [number, [number, number]] = [Number.POSITIVE_INFINITY, [0, 0]];
  const take = (si: number, ti: number) => {
    // The square of the distance, minus that of v.
    const far = si * si + ti * ti + 2 * (si * ti * lean - si * p - ti * q);
    if (far < best) [best, found] = [far, [si, ti]];
  };
  for (const end of [0, 1] as const) {
    const [si, ti] = [within(aside[end], aside), within(ways[end], ways)];
    take(si, within(q - si * lean, ways));
    take(within(p - ti * lean, aside), ti);
  }
  return found;
}
