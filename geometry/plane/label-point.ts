import { distance } from './point.ts';
import { nearestOnRing, ringsContain, roomyPoint, signedArea } from './ring.ts';
import type { Ring, XY } from './types.ts';

/** Nearer to an edge than this, mm, a point is no place for a name. */
const FROM_EDGE = 1;

/**
 * A point inside the rings (outer first, then holes) for a name: the centre of area where that lies inside, else one with room around it.
 * Of rings without area, their first corner.
 */
export function ringLabelPoint(rings: readonly Ring[]): XY {
  const middle = areaCentre(rings);
  if (middle && isWithin(rings, middle)) return middle;
  return roomyPoint(rings) ?? middle ?? (rings[0]?.[0] as XY);
}

function isWithin(rings: readonly Ring[], p: XY): boolean {
  return ringsContain(rings, p) && rings.every((ring) => distance(p, nearestOnRing(p, ring)) > FROM_EDGE);
}

/** The centre of the area of an outer ring less its holes; null where they leave none. */
function areaCentre(rings: readonly Ring[]): XY | null {
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

/** Twice the ring's area and six times its moments, about a point near by so that their digits are kept. */
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
