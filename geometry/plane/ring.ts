import { distance, nearestOnSegment } from './point.ts';
import type { Mm, Ring, XY } from './types.ts';

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

/**
 * Whether p lies inside the ring by the even-odd count; a point on the boundary may come out either way, but on a line that the ring
 * walks there and back, as around a wall that ends in a room, it is as inside as what is beside it.
 */
export function ringContains(ring: Ring, p: XY): boolean {
  const [x, y] = p;
  let inside = false;
  let a = ring[ring.length - 1];
  for (const b of ring) {
    if (a && isLeftOf(a, b, x, y)) inside = !inside;
    a = b;
  }
  return inside;
}

/** Whether a point lies at the height of an edge and left of it. */
export function isLeftOf(a: XY, b: XY, x: Mm, y: Mm): boolean {
  if (a[1] > y === b[1] > y) return false;
  // From the upper end whichever way it is walked: there and back must round alike.
  const [p, q] = a[1] < b[1] ? [a, b] : [b, a];
  return x < ((q[0] - p[0]) * (y - p[1])) / (q[1] - p[1]) + p[0];
}

/** Whether p lies inside the area of rings (outer rings and holes together) by the even-odd count. */
export function ringsContain(rings: readonly Ring[], p: XY): boolean {
  let inside = false;
  for (const ring of rings) if (ringContains(ring, p)) inside = !inside;
  return inside;
}

/** Nearer to an outline than this, mm, a point lies on it: coordinates of a turned plan round by less. */
const ON_OUTLINE: Mm = 1e-6;

/** Whether p lies in the area of rings (outer rings and holes together); a point on an outline counts as inside. */
export function ringsHold(rings: readonly Ring[], p: XY): boolean {
  const isOn = (ring: Ring) => ring.length > 0 && distance(p, nearestOnRing(p, ring)) <= ON_OUTLINE;
  return ringsContain(rings, p) || rings.some(isOn);
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

/** Lines that are tried through a floor for a roomy point: enough that a room half a metre wide is met in most houses. */
const SCAN_LINES = 24;

/**
 * A point inside the area of rings (outer rings and holes together) that has much room around it: the best of the middles
 * of what lines along the page cut out of the area. Null where no line meets it, as in an area of no height.
 */
export function roomyPoint(rings: readonly Ring[]): XY | null {
  const ys = rings.flat().map(([, y]) => y);
  const top = Math.min(...ys);
  const step = (Math.max(...ys) - top) / SCAN_LINES;
  let best: XY | null = null;
  let most: Mm = 0;
  for (let k = 0; k < SCAN_LINES; k++) {
    const y = top + step * (k + 0.5);
    const stops = rings.flatMap((ring) => crossingsAt(ring, y)).sort((a, b) => a - b);
    for (let i = 1; i < stops.length; i += 2) {
      const p: XY = [((stops[i - 1] as Mm) + (stops[i] as Mm)) / 2, y];
      const room = Math.min(...rings.map((ring) => distance(p, nearestOnRing(p, ring))));
      if (room <= most) continue;
      most = room;
      best = p;
    }
  }
  return best;
}

/** Where a ring crosses a line along the page: an even number of places. */
function crossingsAt(ring: Ring, y: Mm): Mm[] {
  return ring.flatMap((b, i) => {
    const a = ring[(i + ring.length - 1) % ring.length] as XY;
    return a[1] > y === b[1] > y ? [] : [a[0] + ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1])];
  });
}

/** The ring turned so that its area is positive. */
export function clockwiseOnScreen(ring: Ring): Ring {
  return signedArea(ring) < 0 ? [...ring].reverse() : ring;
}

/** The edges of a ring, each from one corner to the next. */
export function ringLines(ring: Ring): readonly (readonly [from: XY, to: XY])[] {
  return ring.map((point, index) => [ring[(index + ring.length - 1) % ring.length] as XY, point] as const);
}
