import { type Extent, overlaps, ringExtent } from '../plane/extent.ts';
import { convexHull } from '../plane/hull.ts';
import { memoize } from '../plane/memoize.ts';
import { vectorLength } from '../plane/point.ts';
import type { Mm, Ring, XY } from '../plane/types.ts';
import { containsTest } from './contains-test.ts';

/**
 * The area of interest. `accepts` decides whether a point belongs to it; all accepted points lie in the extent and the
 * hull.
 */
export interface Space {
  readonly extent: Extent;
  /** Half-planes (nx, ny, c): a point with nx·x + ny·y > c is outside. May be empty. */
  readonly hull: Float64Array;
  readonly accepts: (x: Mm, y: Mm) => boolean;
}

/** The whole plane. */
export const EVERYWHERE: Space = {
  extent: {
    minX: Number.NEGATIVE_INFINITY,
    minY: Number.NEGATIVE_INFINITY,
    maxX: Number.POSITIVE_INFINITY,
    maxY: Number.POSITIVE_INFINITY,
  },
  hull: new Float64Array(0),
  accepts: () => true,
};

/** Returns the inside of rings (outer ring first, then holes) as a space; memoized by identity. */
export const ringSpace: (rings: readonly Ring[]) => Space = memoize((rings: readonly Ring[]): Space => {
  const outer = rings[0] as Ring;
  return {
    extent: widened(ringExtent(outer)),
    hull: halfPlanes(convexHull(outer)),
    accepts: containsTest(rings),
  };
});

/**
 * The extent is widened by this, mm: something on the boundary of a space within rounding still cuts what crosses it.
 */
const EDGE_TOLERANCE: Mm = 1e-6;

function widened({ minX, minY, maxX, maxY }: Extent): Extent {
  return {
    minX: minX - EDGE_TOLERANCE,
    minY: minY - EDGE_TOLERANCE,
    maxX: maxX + EDGE_TOLERANCE,
    maxY: maxY + EDGE_TOLERANCE,
  };
}

/**
 * Returns whether something within a bounding box may reach into a space: a conservative test against the extent and
 * the half-planes.
 */
export function mayReach({ extent, hull }: Space, box: Extent): boolean {
  if (!overlaps(box, extent)) return false;
  for (let h = 0; h < hull.length; h += 3) {
    const nx = hull[h] as number;
    const ny = hull[h + 1] as number;
    // The corner of the box farthest to the inner side.
    const deepest = nx * (nx > 0 ? box.minX : box.maxX) + ny * (ny > 0 ? box.minY : box.maxY);
    if (deepest > (hull[h + 2] as number)) return false;
  }
  return true;
}

/** Returns the half-planes of a convex ring that runs clockwise on screen: outside is left of each edge. */
function halfPlanes(hull: readonly XY[]): Float64Array {
  const planes = new Float64Array(hull.length * 3);
  hull.forEach((a, i) => {
    const b = hull[(i + 1) % hull.length] as XY;
    const nx = b[1] - a[1];
    const ny = a[0] - b[0];
    planes[3 * i] = nx;
    planes[3 * i + 1] = ny;
    planes[3 * i + 2] = nx * a[0] + ny * a[1] + EDGE_TOLERANCE * vectorLength(nx, ny);
  });
  return planes;
}
