import { distance } from './point.ts';
import { interiorPoint, nearestOnRing, ringsContain, signedArea } from './ring.ts';
import type { Ring, XY } from './types.ts';

/** A label is not placed closer than this to an edge, mm. */
const LABEL_CLEARANCE = 1;

/**
 * Returns a point inside the rings (outer ring first, then holes) for a label: the centroid if it lies inside, else
 * an interior point with room around it. For rings without area, the first corner.
 */
export function ringLabelPoint(rings: readonly Ring[]): XY {
  const middle = centroid(rings);
  if (middle && isWithin(rings, middle)) return middle;
  return interiorPoint(rings) ?? middle ?? (rings[0]?.[0] as XY);
}

function isWithin(rings: readonly Ring[], p: XY): boolean {
  return ringsContain(rings, p) && rings.every((ring) => distance(p, nearestOnRing(p, ring)) > LABEL_CLEARANCE);
}

/** Returns the centroid of an outer ring minus its holes; null when their areas cancel. */
function centroid(rings: readonly Ring[]): XY | null {
  const origin = rings[0]?.[0];
  if (!origin) return null;
  let [x, y, area] = [0, 0, 0];
  for (const [index, ring] of rings.entries()) {
    const sign = Math.sign(signedArea(ring)) * (index === 0 ? 1 : -1);
    const [mx, my, own] = moments(ring, origin);
    x += sign * mx;
    y += sign * my;
    area += sign * own;
  }
  return area > 0 ? [origin[0] + x / (3 * area), origin[1] + y / (3 * area)] : null;
}

/** Returns twice the ring's area and six times its first moments, relative to a nearby point to keep precision. */
function moments(ring: Ring, [ox, oy]: XY): readonly [x: number, y: number, area: number] {
  let [x, y, area] = [0, 0, 0];
  let a = ring[ring.length - 1] as XY;
  for (const b of ring) {
    const [ax, ay, bx, by] = [a[0] - ox, a[1] - oy, b[0] - ox, b[1] - oy];
    const cross = ax * by - bx * ay;
    x += (ax + bx) * cross;
    y += (ay + by) * cross;
    area += cross;
    a = b;
  }
  return [x, y, area];
}
