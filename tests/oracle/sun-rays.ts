import { Body, Equator, Horizon, Observer } from 'astronomy-engine';
import type { Opening, Plan, Wall } from '../../geometry/plan/model.ts';
import type { Point } from './geos.ts';
import { apart, dot, minus, unit } from './plane.ts';

/*
 * Direct sun by single rays, written from the text of the contract. It shares no code with the engine: another library for the
 * position of the sun, walls as rectangles, no rooms. For walls at right angles; walls that meet at their ends must be equally thick.
 */

const RADIANS = Math.PI / 180;
export const DISC = 0.267;

export interface Ray {
  /** Direction toward the sun, on the plan. */
  readonly toward: Point;
  /** Tangent of the altitude. */
  readonly rise: number;
}

/** Returns the position of the middle of the sun at an instant; null below the horizon of the site. */
export function sunAt({ site }: Plan, instant: number): { readonly azimuth: number; readonly altitude: number } | null {
  const date = new Date(instant);
  const observer = new Observer(site.latitude as number, site.longitude as number, 0);
  const { ra, dec } = Equator(Body.Sun, date, observer, true, true);
  const sun = Horizon(date, observer, ra, dec, 'normal');
  return sun.altitude < (site.horizon ?? 3) ? null : sun;
}

/** Returns a ray to the place of the disc at (across, up) from its middle, degrees. */
export function rayTo(plan: Plan, sun: { azimuth: number; altitude: number }, across: number, up: number): Ray {
  const bearing = (plan.site.north + sun.azimuth + across / Math.cos(sun.altitude * RADIANS)) * RADIANS;
  return { toward: [Math.sin(bearing), -Math.cos(bearing)], rise: Math.tan((sun.altitude + up) * RADIANS) };
}

interface Frame {
  readonly opening: Opening;
  readonly wall: Wall;
  readonly along: Point;
  readonly across: Point;
}

/** The rectangle of a wall with the corners that it shares: `left` and `right` along it from its beginning. */
interface Solid {
  readonly wall: Wall;
  readonly along: Point;
  readonly across: Point;
  readonly left: number;
  readonly right: number;
  readonly half: number;
}

/** Returns the body of a wall. Walls have square ends; where two ends meet, the corner between them is filled. */
function solidOf(wall: Wall, walls: readonly Wall[]): Solid {
  const along = unit(minus(wall.to, wall.from));
  const half = wall.thickness / 2;
  const isCorner = (end: Point) =>
    walls.some((other) => other !== wall && [other.from, other.to].some((at) => apart(at, end) < 1e-6));
  return {
    ...{ wall, along, across: [-along[1], along[0]], half },
    left: isCorner(wall.from) ? -half : 0,
    right: apart(wall.from, wall.to) + (isCorner(wall.to) ? half : 0),
  };
}

export class RayHouse {
  readonly windows: readonly Frame[];
  private readonly frames: readonly Frame[];
  private readonly walls: readonly Solid[];
  private readonly isOutside: (opening: Opening) => boolean;

  constructor(plan: Plan, isOutside: (opening: Opening) => boolean) {
    const [level] = plan.levels;
    if (!level) throw new Error('no level');
    this.walls = level.walls.map((wall) => solidOf(wall, level.walls));
    this.isOutside = isOutside;
    this.frames = level.openings.map((opening) => {
      const wall = level.walls.find(({ id }) => id === opening.wall) as Wall;
      const along = unit(minus(wall.to, wall.from));
      return { opening, wall, along, across: [-along[1], along[0]] as Point };
    });
    this.windows = this.frames.filter(({ opening }) => isOutside(opening) && opening.shade !== 'covered');
  }

  /** Returns whether light from the sun through a window reaches a point at a height. */
  isLitThrough(window: Frame, p: Point, z: number, { toward, rise }: Ray): boolean {
    const { opening, wall, along, across } = window;
    const turn = dot(toward, across);
    if (Math.abs(turn) < 1e-9) return false;
    const off = dot(minus(p, wall.from), across);
    const side = turn > 0 ? -1 : 1;
    // From the inner face at side·half to the outer one.
    const half = wall.thickness / 2;
    const inner = (side * half - off) / turn;
    const outer = (-side * half - off) / turn;
    if (inner < -1e-9) return false;
    for (const t of [inner, outer]) {
      const at = dot(minus(p, wall.from), along) + t * dot(toward, along);
      const height = z + t * rise;
      if (at < opening.offset || at > opening.offset + opening.width) return false;
      if (height < opening.bottom || height > opening.top) return false;
    }
    const { shade } = opening;
    if (typeof shade === 'object' && shade?.overhang) {
      const t = outer + shade.overhang.depth / Math.abs(turn);
      if (z + t * rise > opening.top + shade.overhang.above) return false;
    }
    return this.isFromOutdoors(p, toward, outer, wall) && this.isFree(p, z, toward, rise, inner, wall);
  }

  private isFromOutdoors(p: Point, toward: Point, outer: number, own: Wall): boolean {
    return this.walls.every(({ wall, along, across, left, right, half }) => {
      if (wall === own) return true;
      const span = this.crossing(p, toward, wall.from, along, across, left, right, half);
      return !span || span[1] < outer + 1e-6;
    });
  }

  /** Returns whether only open doors are between a point and the window's inner face. */
  private isFree(p: Point, z: number, toward: Point, rise: number, reach: number, own: Wall): boolean {
    for (const { wall, along, across, left, right, half } of this.walls) {
      const spans = this.crossing(p, toward, wall.from, along, across, left, right, half);
      if (!spans) continue;
      const [from, to] = [Math.max(0, spans[0]), Math.min(reach, spans[1])];
      if (to - from < 1e-6 || (wall === own && from > reach - 1e-6)) continue;
      const isOpen = this.frames.some(({ opening, wall: host }) => {
        if (host !== wall || host === own || this.isOutside(opening)) return false;
        const hole = this.crossing(
          p,
          toward,
          wall.from,
          along,
          across,
          opening.offset,
          opening.offset + opening.width,
          half,
        );
        if (!hole || hole[0] > from + 1e-6 || hole[1] < to - 1e-6) return false;
        return z + from * rise >= opening.bottom && z + to * rise <= opening.top;
      });
      if (!isOpen) return false;
    }
    return true;
  }

  /** Returns the interval of a ray in a rectangle along a wall; null if it misses. */
  private crossing(
    p: Point,
    toward: Point,
    origin: Point,
    along: Point,
    across: Point,
    left: number,
    right: number,
    half: number,
  ): [number, number] | null {
    let [from, to] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
    for (const [axis, low, high] of [[along, left, right] as const, [across, -half, half] as const]) {
      const at = dot(minus(p, origin), axis);
      const run = dot(toward, axis);
      if (Math.abs(run) < 1e-12) {
        if (at <= low || at >= high) return null;
        continue;
      }
      const [s, t] = [(low - at) / run, (high - at) / run];
      from = Math.max(from, Math.min(s, t));
      to = Math.min(to, Math.max(s, t));
    }
    return from < to ? [from, to] : null;
  }
}
