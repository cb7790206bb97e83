import type { Mm, XY } from '../plan/model.ts';
import { convexHull } from '../plane/hull.ts';
import type { HeightLimit, Strip } from './beams.ts';
import { areaOf, clip } from './convex.ts';
import { withFewerCorners } from './fewer-corners.ts';
import type { ReachedSheaf } from './sheaves.ts';

/** Cells are larger than the light by this, mm, so that cells side by side overlap. */
const OVERLAP: Mm = 0.02;
/** Corners that stand for several are this near to a cell, mm. */
const NEAREST: Mm = 2;
/** A smaller cell is rounding, mm². */
const SMALLEST = 1e-3;

/**
 * Returns convex cells that together are the light of a strip, in the axes of its glass. Between two depths without a corner of the
 * strip the sides turn one way only, so that the outermost of all directions are those at the ends.
 */
export function cellsOf(strip: Strip, parts: readonly ReachedSheaf[], most: Mm): (readonly XY[])[] {
  const { left, right, from, to } = strip;
  const own = parts.filter(({ k0, k1 }) => k0 < strip.k1 && k1 > strip.k0);
  const first = Math.min(from.a[1], from.b[1]);
  const last = to ? Math.max(to.a[1], to.b[1]) : most;
  const near = Math.max(first, Math.min(...own.map((part) => part.near)));
  const far = Math.min(last, Math.max(...own.map((part) => part.far)));
  const stops = [near, ...[left[1], right[1]].filter((y) => y > near && y < far).sort((a, b) => a - b), far];
  const cells: (readonly XY[])[] = [];
  for (let i = 0; i + 1 < stops.length; i++) {
    const points = own.flatMap((part) => {
      const low = Math.max(stops[i] as Mm, part.near) - OVERLAP;
      const high = Math.min(stops[i + 1] as Mm, part.far) + OVERLAP;
      if (low >= high) return [];
      const range = { ...strip, k0: Math.max(strip.k0, part.k0), k1: Math.min(strip.k1, part.k1) };
      return withinLimits(slab(range, low, high), range, part);
    });
    const cell = betweenEdges(own.length === 1 ? points : convexHull(points), strip);
    if (cell.length > 2 && areaOf(cell) > SMALLEST) cells.push(withFewerCorners(cell, NEAREST));
  }
  return cells;
}

function slab({ left, right, k0, k1 }: Strip, near: Mm, far: Mm): XY[] {
  const sides = (p: XY, y: Mm) => [p[0] + (y - p[1]) * k0, p[0] + (y - p[1]) * k1];
  return [
    [Math.min(...sides(left, near)) - OVERLAP, near],
    [Math.max(...sides(right, near)) + OVERLAP, near],
    [Math.max(...sides(right, far)) + OVERLAP, far],
    [Math.min(...sides(left, far)) - OVERLAP, far],
  ];
}

/** Returns what is left of a cell between the edges where its light enters and ends, and in the opening that it is in. */
function betweenEdges(cell: XY[], { from, to, k0, k1, within }: Strip): XY[] {
  const k = (k0 + k1) / 2;
  let rest = beyond(cell, from.a, from.nx, from.ny, from.nx * k + from.ny > 0 ? 1 : -1);
  if (to) rest = beyond(rest, to.a, to.nx, to.ny, to.nx * k + to.ny > 0 ? -1 : 1);
  for (const { a, nx, ny } of within) rest = beyond(rest, a, nx, ny, 1);
  return rest;
}

/** Returns what is left of a cell by the heights of the openings on the way. */
function withinLimits(cell: XY[], { k0, k1, limits }: Strip, { g0, g1 }: ReachedSheaf): XY[] {
  return limits.reduce((rest, limit) => withinHeight(rest, limit, k0, k1, g0, g1), cell);
}

function beyond(cell: XY[], a: XY, nx: number, ny: number, side: number): XY[] {
  return clip(cell, side * nx, side * ny, side * (nx * a[0] + ny * a[1]) - OVERLAP);
}

/** A beam falls by 1 on g along y; across an edge it goes on by g times its direction along the normal. */
function withinHeight(
  cell: XY[],
  { edge: { a, nx, ny }, drop, bound }: HeightLimit,
  k0: number,
  k1: number,
  g0: number,
  g1: number,
): XY[] {
  const side = nx * ((k0 + k1) / 2) + ny > 0 ? 1 : -1;
  const [s, t] = [side * (nx * k0 + ny), side * (nx * k1 + ny)];
  const at = side * (nx * a[0] + ny * a[1]);
  if (bound === 'below') return clip(cell, -side * nx, -side * ny, -(at + drop * g1 * Math.max(s, t, 0)) - OVERLAP);
  return clip(cell, side * nx, side * ny, at + drop * g0 * Math.max(0, Math.min(s, t)) - OVERLAP);
}
