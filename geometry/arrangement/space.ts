import { type Extent, overlaps, ringExtent } from '../plane/body.ts';
import { convexHull } from '../plane/hull.ts';
import { memoize } from '../plane/memoize.ts';
import { vectorLength } from '../plane/point.ts';
import type { Mm, Ring, XY } from '../plane/types.ts';
import { containsTest } from './contains-test.ts';
import type { Space } from './zone.ts';

/** The inside of rings (outer ring first, then holes) as a space to cut in. */
export const ringSpace: (rings: readonly Ring[]) => Space = memoize((rings: readonly Ring[]): Space => {
  const outer = rings[0] as Ring;
  return {
    extent: withEdge(ringExtent(outer)),
    hull: halfPlanes(convexHull(outer)),
    accepts: containsTest(rings),
  };
});

/** What lies on the edge of a space to within rounding, mm, still cuts what runs across it. */
const EDGE: Mm = 1e-6;

function withEdge({ minX, minY, maxX, maxY }: Extent): Extent {
  return { minX: minX - EDGE, minY: minY - EDGE, maxX: maxX + EDGE, maxY: maxY + EDGE };
}

/** Whether something within a box may reach into a space: its box meets the extent, and lies beyond no side of the hull. */
export function mayReach({ extent, hull }: Space, box: Extent): boolean {
  if (!overlaps(box, extent)) return false;
  for (let h = 0; h < hull.length; h += 3) {
    const nx = hull[h] as number;
    const ny = hull[h + 1] as number;
    // The corner of the box that lies deepest on the inner side.
    const deepest = nx * (nx > 0 ? box.minX : box.maxX) + ny * (ny > 0 ? box.minY : box.maxY);
    if (deepest > (hull[h + 2] as number)) return false;
  }
  return true;
}

/** The half-planes of a convex ring that runs clockwise on screen: outside is left of each edge. */
function halfPlanes(hull: readonly XY[]): Float64Array {
  const planes = new Float64Array(hull.length * 3);
  hull.forEach((a, i) => {
    const b = hull[(i + 1) % hull.length] as XY;
    const nx = b[1] - a[1];
    const ny = a[0] - b[0];
    planes[3 * i] = nx;
    planes[3 * i + 1] = ny;
    planes[3 * i + 2] = nx * a[0] + ny * a[1] + EDGE * vectorLength(nx, ny);
  });
  return planes;
}
