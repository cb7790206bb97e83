import type { Mm, XY } from '../plan/model.ts';
import { type Ring, ringHolds } from './planar-turf.ts';

/** Least x, least y, greatest x, greatest y. */
export type Extent = readonly [Mm, Mm, Mm, Mm];

export const plus = (p: XY, d: XY, length: number): XY => [p[0] + d[0] * length, p[1] + d[1] * length];
export const dot = (a: XY, b: XY): number => a[0] * b[0] + a[1] * b[1];
/** Above 0 where b turns clockwise on screen from a. */
export const cross = (a: XY, b: XY): number => a[0] * b[1] - a[1] * b[0];
export const apart = (a: XY, b: XY): Mm => Math.hypot(b[0] - a[0], b[1] - a[1]);
export const middle = (a: XY, b: XY): XY => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
/** A quarter turn clockwise on screen. */
export const quarter = (d: XY): XY => [-d[1], d[0]];
export const vector = (from: XY, to: XY): XY => [to[0] - from[0], to[1] - from[1]];

/** The direction from a to b, of length 1; along +x where they are one point. */
export function direction(a: XY, b: XY): XY {
  const length = apart(a, b);
  return length === 0 ? [1, 0] : [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
}

/** The distance from p to the segment ab, mm. */
export function segmentDistance(p: XY, a: XY, b: XY): Mm {
  return apart(p, nearestOnSegment(p, a, b));
}

export function nearestOnSegment(p: XY, a: XY, b: XY): XY {
  const along = vector(a, b);
  const square = dot(along, along);
  const share = square === 0 ? 0 : dot(vector(a, p), along) / square;
  return plus(a, along, Math.max(0, Math.min(1, share)));
}

/** Where the lines through ab and cd cross, or null for parallel ones. */
export function lineCrossing(a: XY, b: XY, c: XY, d: XY): XY | null {
  const [u, v] = [vector(a, b), vector(c, d)];
  const turn = cross(u, v);
  return turn === 0 ? null : plus(a, u, cross(vector(a, c), v) / turn);
}

export const edgesOf = (ring: Ring): (readonly [XY, XY])[] =>
  ring.map((corner, i) => [corner, ring[(i + 1) % ring.length] as XY]);

export function outlineDistance(p: XY, ring: Ring): Mm {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < ring.length; i++) {
    least = Math.min(least, segmentDistance(p, ring[i] as XY, ring[(i + 1) % ring.length] as XY));
  }
  return least;
}

/** The distance from p to the area of the ring, mm: 0 inside. */
export function ringDistance(p: XY, ring: Ring): Mm {
  return mayHold(ring, p) && ringHolds(ring, p) ? 0 : outlineDistance(p, ring);
}

/** False where p lies beyond every corner on one side: most points lie in no ring. */
function mayHold(ring: Ring, [x, y]: XY): boolean {
  let [left, right, above, below] = [false, false, false, false];
  for (const [cx, cy] of ring) {
    left ||= cx <= x;
    right ||= cx >= x;
    above ||= cy <= y;
    below ||= cy >= y;
  }
  return left && right && above && below;
}

/** The area of the ring, square mm, whichever way it runs. */
export function ringArea(ring: Ring): number {
  // Counted from the first corner: far from the origin the products would lose digits.
  const [origin] = ring as readonly [XY];
  return Math.abs(edgesOf(ring).reduce((sum, [a, b]) => sum + cross(vector(origin, a), vector(origin, b)), 0)) / 2;
}

export function extentOf(points: readonly XY[]): Extent {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

export const extentHolds = (extent: Extent, [x, y]: XY): boolean =>
  x >= extent[0] && y >= extent[1] && x <= extent[2] && y <= extent[3];

export const extentsMeet = (a: Extent, b: Extent): boolean =>
  a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];
