import { distance, nearestOnSegment } from './point.ts';
import type { Mm, Ring, XY } from './types.ts';

/**
 * Returns the signed area by the shoelace formula, mm²: positive for a ring that runs clockwise on screen (y is down).
 */
export function signedArea(ring: Ring): number {
  let sum = 0;
  let previous = ring[ring.length - 1];
  if (!previous) return 0;
  // Relative to one corner, so that a small ring far from the origin keeps its precision.
  const [ox, oy] = previous;
  for (const point of ring) {
    sum += (previous[0] - ox) * (point[1] - oy) - (point[0] - ox) * (previous[1] - oy);
    previous = point;
  }
  return sum / 2;
}

/**
 * Returns whether p lies inside the ring (even-odd rule). A point on the boundary may come out either way. Where the
 * ring traverses an edge in both directions (around a wall that ends in a room), the two crossings cancel.
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

/** Returns whether the horizontal ray from (x, y) to +x crosses the edge a–b. */
export function isLeftOf(a: XY, b: XY, x: Mm, y: Mm): boolean {
  if (a[1] > y === b[1] > y) return false;
  // Always computed from the upper end, so that both directions of the same edge round alike.
  const [p, q] = a[1] < b[1] ? [a, b] : [b, a];
  return x < ((q[0] - p[0]) * (y - p[1])) / (q[1] - p[1]) + p[0];
}

/** Returns whether p lies in the area bounded by rings (outer rings and holes together), by the even-odd rule. */
export function ringsContain(rings: readonly Ring[], p: XY): boolean {
  let inside = false;
  for (const ring of rings) if (ringContains(ring, p)) inside = !inside;
  return inside;
}

/** A point closer than this to a ring is on it, mm: larger than the rounding of a rotated plan's coordinates. */
const OUTLINE_TOLERANCE: Mm = 1e-6;

/** Returns whether p lies in the area bounded by rings (outer rings and holes together) or on its boundary. */
export function ringsCover(rings: readonly Ring[], p: XY): boolean {
  const isOn = (ring: Ring) => ring.length > 0 && distance(p, nearestOnRing(p, ring)) <= OUTLINE_TOLERANCE;
  return ringsContain(rings, p) || rings.some(isOn);
}

/** Returns the point of the ring's boundary nearest to p. The ring has at least one corner. */
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

/** Number of horizontal scan lines: enough to hit a room 0.5 m deep in most houses. */
const SCAN_LINES = 24;

/**
 * Returns a point inside the area bounded by rings (outer rings and holes together), far from its boundary: of the
 * midpoints of all scan-line spans, the one with the greatest distance to the rings. Null when no scan line meets the
 * area.
 */
export function interiorPoint(rings: readonly Ring[]): XY | null {
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

/** Returns the x coordinates where a ring crosses a horizontal line: always an even number. */
function crossingsAt(ring: Ring, y: Mm): Mm[] {
  return ring.flatMap((b, i) => {
    const a = ring[(i + ring.length - 1) % ring.length] as XY;
    return a[1] > y === b[1] > y ? [] : [a[0] + ((b[0] - a[0]) * (y - a[1])) / (b[1] - a[1])];
  });
}

/** Returns the ring oriented so that its area is positive. */
export function clockwiseOnScreen(ring: Ring): Ring {
  return signedArea(ring) < 0 ? [...ring].reverse() : ring;
}

/** Returns the ring without collinear corners: where another wall meets it, or its body begins, a face continues. */
export function withoutStraightCorners(ring: Ring): Ring {
  return ring.filter((b, i) => {
    const a = ring[(i + ring.length - 1) % ring.length] as XY;
    const c = ring[(i + 1) % ring.length] as XY;
    const turn = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);
    return Math.abs(turn) > 1e-6 * distance(a, b) * distance(b, c);
  });
}

/** Returns the edges of a ring as pairs of corners. */
export function ringEdges(ring: Ring): readonly (readonly [from: XY, to: XY])[] {
  return ring.map((point, index) => [ring[(index + ring.length - 1) % ring.length] as XY, point] as const);
}
