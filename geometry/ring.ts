import type { Ring } from './level/types.ts';
import type { Mm, XY } from './plan/model.ts';
import { distance, nearestOnSegment } from './point.ts';

/** Shoelace area, square mm: positive for a ring that runs clockwise on screen (y is down). */
export function signedArea(ring: Ring): number {
  let sum = 0;
  let previous = ring[ring.length - 1];
  if (!previous) return 0;
  // Relative to one corner, so that a small ring far from the origin keeps its digits.
  const [ox, oy] = previous;
  for (const point of ring) {
    sum += (previous[0] - ox) * (point[1] - oy) - (point[0] - ox) * (previous[1] - oy);
    previous = point;
  }
  return sum / 2;
}

/** Whether p lies inside the ring by the even-odd count; a point on the boundary may come out either way. */
export function ringContains(ring: Ring, p: XY): boolean {
  const [x, y] = p;
  let inside = false;
  let a = ring[ring.length - 1];
  for (const b of ring) {
    if (a && a[1] > y !== b[1] > y && x < ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1]) + a[0]) inside = !inside;
    a = b;
  }
  return inside;
}

/** Whether p lies inside the area of rings (outer rings and holes together) by the even-odd count. */
export function ringsContain(rings: readonly Ring[], p: XY): boolean {
  let inside = false;
  for (const ring of rings) if (ringContains(ring, p)) inside = !inside;
  return inside;
}

/** The point of the ring's boundary nearest to p. The ring has at least one corner. */
export function nearestOnRing(p: XY, ring: Ring): XY {
  let best = ring[0] as XY;
  let least: Mm = Number.POSITIVE_INFINITY;
  let a = ring[ring.length - 1] as XY;
  for (const b of ring) {
    const q = nearestOnSegment(p, a, b);
    const d = distance(p, q);
    if (d < least) {
      least = d;
      best = q;
    }
    a = b;
  }
  return best;
}

/** The ring turned so that its area is positive. */
export function clockwiseOnScreen(ring: Ring): Ring {
  return signedArea(ring) < 0 ? [...ring].reverse() : ring;
}
