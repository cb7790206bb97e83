import type { Mm, XY } from '../plan/model.ts';
import { convexHull } from '../plane/hull.ts';
import type { HeightLimit, Strip } from './beams.ts';
import { areaOf, clip } from './convex.ts';
import { withFewerCorners } from './fewer-corners.ts';
import type { Edge } from './light-edges.ts';
import type { Reach, ReachedSheaf } from './reach.ts';

/** Cells are larger than the light by this, mm, so that adjacent cells overlap. */
const OVERLAP: Mm = 0.02;
/** A corner that replaces several others is at most this far from the cell, mm. */
const NEAREST: Mm = 2;
/** A smaller cell is rounding, mm². */
const SMALLEST = 1e-3;

/**
 * Returns convex cells that together are the light of a strip, in the axes of its glass. Between two depths without a corner of the
 * strip, the sides turn in one direction only, so that the outermost of all directions are the first and the last.
 */
export function cellsOf(strip: Strip, parts: readonly ReachedSheaf[], reach: Reach, most: Mm): (readonly XY[])[] {
  const { left, right, from, to } = strip;
  const own = parts.filter(({ k0, k1 }) => k0 < strip.k1 && k1 > strip.k0);
  const first = Math.min(from.a[1], from.b[1]);
  const last = to ? Math.max(to.a[1], to.b[1]) : most;
  const near = Math.max(first, Math.min(...own.map((part) => part.near)));
  const far = Math.min(last, Math.max(...own.map((part) => part.far)));
  const stops = [near, ...[left[1], right[1]].filter((y) => y > near && y < far).sort((a, b) => a - b), far];
  const cells: (readonly XY[])[] = [];
  for (let i = 0; i + 1 < stops.length; i++) {
    const [low, high] = [stops[i] as Mm, stops[i + 1] as Mm];
    const cell = betweenEdges(convexHull(litPoints(strip, own, reach, low, high)), strip);
    if (cell.length > 2 && areaOf(cell) > SMALLEST) cells.push(withFewerCorners(cell, NEAREST));
  }
  return cells;
}

/** Returns points whose hull contains the light of a strip between two depths. */
function litPoints(strip: Strip, parts: readonly ReachedSheaf[], reach: Reach, low: Mm, high: Mm): XY[] {
  const lit = new LitPoints(strip.left, strip.right);
  for (const part of parts) {
    if (part.near > high || part.far < low) continue;
    const [k0, k1] = [Math.max(strip.k0, part.k0), Math.min(strip.k1, part.k1)];
    if (strip.limits.length === 0) lit.add(k0, k1, part, reach, low, high);
    else lit.points.push(...litWithinLimits({ ...strip, k0, k1 }, part, reach, low, high));
  }
  lit.close();
  return lit.points;
}

/** Collects corners of the light between two corners of a strip. */
class LitPoints {
  readonly points: XY[] = [];
  private readonly left: XY;
  private readonly right: XY;
  /** The last direction of the previous part, with its ends: the next part usually begins with the same direction. */
  private k = Number.NaN;
  private near: Mm = 0;
  private far: Mm = 0;

  constructor(left: XY, right: XY) {
    this.left = left;
    this.right = right;
  }

  /** Adds the light of a part in directions k0 to k1 between two depths. */
  add(k0: number, k1: number, part: ReachedSheaf, reach: Reach, low: Mm, high: Mm): void {
    for (const k of reach.directionsOf(part, k0, k1, low, high)) {
      const near = Math.max(low, reach.nearAt(part, k));
      const far = Math.min(high, reach.farAt(part, k));
      if (near > far + 2 * OVERLAP) continue;
      if (k === this.k) {
        // The direction belongs to both parts: its ends are the outermost of both.
        this.near = Math.min(this.near, near);
        this.far = Math.max(this.far, far);
      } else if (k === k1) {
        this.close();
        this.k = k;
        this.near = near;
        this.far = far;
      } else this.push(k, near, far);
    }
  }

  /** Adds the last direction of the previous part. */
  close(): void {
    if (!Number.isNaN(this.k)) this.push(this.k, this.near, this.far);
    this.k = Number.NaN;
  }

  private push(k: number, near: Mm, far: Mm): void {
    const { left, right } = this;
    const x0 = left[0] - left[1] * k - OVERLAP;
    const x1 = right[0] - right[1] * k + OVERLAP;
    // Enlarged along y alone: along k, beams at a small angle to the wall would become far longer.
    const above = near - OVERLAP;
    const below = far + OVERLAP;
    this.points.push([x0 + near * k, above], [x1 + near * k, above], [x1 + far * k, below], [x0 + far * k, below]);
  }
}

/** Returns the part of a cell between the edges where its light enters and ends, and within the opening that it is in. */
function betweenEdges(cell: XY[], { from, to, k0, k1, within }: Strip): XY[] {
  const k = (k0 + k1) / 2;
  let rest = beyond(cell, from.a, from.nx, from.ny, from.nx * k + from.ny > 0 ? 1 : -1);
  if (to) rest = beyond(rest, to.a, to.nx, to.ny, to.nx * k + to.ny > 0 ? -1 : 1);
  for (const { a, nx, ny } of within) rest = beyond(rest, a, nx, ny, 1);
  return rest;
}

/** Returns points whose hull contains the light of a strip between two depths, limited by the heights of the openings on the way. */
function litWithinLimits(strip: Strip, part: ReachedSheaf, reach: Reach, low: Mm, high: Mm): XY[] {
  const passing = strip.limits.reduce((rest, limit) => passingHeight(rest, limit, strip, reach), part);
  if (passing.l0 > passing.l1) return [];
  const lit = new LitPoints(strip.left, strip.right);
  lit.add(strip.k0, strip.k1, passing, reach, low, high);
  lit.close();
  return strip.limits.reduce((rest, limit) => withinHeight(rest, limit, strip, passing), convexHull(lit.points));
}

/** Returns the beams of a part that pass both the glass and a height limit; `l0` is more than `l1` if none does. */
function passingHeight(part: ReachedSheaf, limit: HeightLimit, strip: Strip, reach: Reach): ReachedSheaf {
  const { k0, k1 } = strip;
  const [nearest, farthest] = depthsOn(limit.edge, strip);
  if (limit.bound === 'above') {
    const straightest = k0 > 0 ? k0 : Math.min(k1, 0);
    return { ...part, l0: Math.max(part.l0, reach.leastFall(limit.drop, nearest) * Math.hypot(1, straightest)) };
  }
  const steepest = Math.max(Math.abs(k0), Math.abs(k1));
  return { ...part, l1: Math.min(part.l1, reach.mostFall(limit.drop, farthest) * Math.hypot(1, steepest)) };
}

/** Returns the least and the greatest depth at which light between the corners of a strip crosses an edge. */
function depthsOn({ a, b, nx, ny }: Edge, { left, right, k0, k1 }: Strip): [Mm, Mm] {
  const ends = [Math.min(a[1], b[1]), Math.max(a[1], b[1])] as const;
  const crossed = [left, right].flatMap(([x, y]) =>
    [k0, k1].map((k) => (nx * (a[0] - x + y * k) + ny * a[1]) / (nx * k + ny)),
  );
  const inside = (depth: Mm) => Math.min(ends[1], Math.max(ends[0], depth));
  // Light parallel to an edge may cross it anywhere.
  if ((nx * k0 + ny) * (nx * k1 + ny) <= 0) return [...ends];
  return [inside(Math.min(...crossed)), inside(Math.max(...crossed))];
}

function beyond(cell: XY[], a: XY, nx: number, ny: number, side: number): XY[] {
  return clip(cell, side * nx, side * ny, side * (nx * a[0] + ny * a[1]) - OVERLAP);
}

/** Clips a cell at a height limit. Along its way a beam falls by 1 per l; beyond an edge it extends by the fraction of its way along the normal. */
function withinHeight(
  cell: XY[],
  { edge: { a, nx, ny }, drop, bound }: HeightLimit,
  { k0, k1 }: Strip,
  { l0, l1 }: ReachedSheaf,
): XY[] {
  const side = nx * ((k0 + k1) / 2) + ny > 0 ? 1 : -1;
  const [s, t] = [k0, k1].map((k) => (side * (nx * k + ny)) / Math.hypot(1, k)) as [number, number];
  const at = side * (nx * a[0] + ny * a[1]);
  if (bound === 'above')
    return clip(cell, side * nx, side * ny, at + drop * l0 * Math.max(0, Math.min(s, t)) - OVERLAP);
  // The beam perpendicular to the edge extends farthest.
  const most = Math.max(s, t, 0) / Math.cos((Math.atan(k1) - Math.atan(k0)) / 2);
  return clip(cell, -side * nx, -side * ny, -(at + drop * l1 * most) - OVERLAP);
}
