import type { Mm, XY } from '../plan/model.ts';
import { type Ring, ringContains } from './planar-turf.ts';

/** minX, minY, maxX, maxY. */
export type Extent = readonly [Mm, Mm, Mm, Mm];

export const plus = (p: XY, d: XY, length: number): XY => [p[0] + d[0] * length, p[1] + d[1] * length];
export const dot = (a: XY, b: XY): number => a[0] * b[0] + a[1] * b[1];
/** Positive if b is clockwise on screen from a. */
export const cross = (a: XY, b: XY): number => a[0] * b[1] - a[1] * b[0];
export const apart = (a: XY, b: XY): Mm => Math.hypot(b[0] - a[0], b[1] - a[1]);
export const middle = (a: XY, b: XY): XY => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
/** Rotates by a quarter turn clockwise on screen. */
export const quarter = (d: XY): XY => [-d[1], d[0]];
export const vector = (from: XY, to: XY): XY => [to[0] - from[0], to[1] - from[1]];

/** Returns the unit vector from a to b; +x if they coincide. */
export function direction(a: XY, b: XY): XY {
  const length = apart(a, b);
  return length === 0 ? [1, 0] : [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
}

/** Returns the distance from p to the segment ab, mm. */
export function segmentDistance(p: XY, a: XY, b: XY): Mm {
  return apart(p, nearestOnSegment(p, a, b));
}

/** Returns the point of the segment ab nearest to p. */
export function nearestOnSegment(p: XY, a: XY, b: XY): XY {
  const along = vector(a, b);
  const square = dot(along, along);
  const share = square === 0 ? 0 : dot(vector(a, p), along) / square;
  return plus(a, along, Math.max(0, Math.min(1, share)));
}

/** Returns the crossing of the lines through ab and cd; null for parallel lines. */
export function lineCrossing(a: XY, b: XY, c: XY, d: XY): XY | null {
  const [u, v] = [vector(a, b), vector(c, d)];
  const turn = cross(u, v);
  return turn === 0 ? null : plus(a, u, cross(vector(a, c), v) / turn);
}

export const edgesOf = (ring: Ring): (readonly [XY, XY])[] =>
  ring.map((corner, i) => [corner, ring[(i + 1) % ring.length] as XY]);

/** Returns the distance from p to the outline of the ring, mm. */
export function outlineDistance(p: XY, ring: Ring): Mm {
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < ring.length; i++) {
    least = Math.min(least, segmentDistance(p, ring[i] as XY, ring[(i + 1) % ring.length] as XY));
  }
  return least;
}

/** Returns the distance from p to the area of the ring, mm: 0 inside. */
export function ringDistance(p: XY, ring: Ring): Mm {
  return boxContains(ring, p) && ringContains(ring, p) ? 0 : outlineDistance(p, ring);
}

/** Quick test: false if p is outside the bounding box. */
function boxContains(ring: Ring, [x, y]: XY): boolean {
  let [left, right, above, below] = [false, false, false, false];
  for (const [cx, cy] of ring) {
    left ||= cx <= x;
    right ||= cx >= x;
    above ||= cy <= y;
    below ||= cy >= y;
  }
  return left && right && above && below;
}

/** Returns the unsigned area of the ring, mm². */
export function ringArea(ring: Ring): number {
  // Relative to the first corner, to keep precision far from the origin.
  const [origin] = ring as readonly [XY];
  return Math.abs(edgesOf(ring).reduce((sum, [a, b]) => sum + cross(vector(origin, a), vector(origin, b)), 0)) / 2;
}

export function extentOf(points: readonly XY[]): Extent {
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)];
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)];
}

export const extentContains = (extent: Extent, [x, y]: XY): boolean =>
  x >= extent[0] && y >= extent[1] && x <= extent[2] && y <= extent[3];

export const extentsMeet = (a: Extent, b: Extent): boolean =>
  a[0] <= b[2] && b[0] <= a[2] && a[1] <= b[3] && b[1] <= a[3];
