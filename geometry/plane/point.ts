import type { Mm, XY } from './types.ts';

/**
 * Returns the cross product (b − a) × (c − a), mm². The page has x to the right and y DOWN, so a positive value means
 * that c lies clockwise on screen of the ray a → b, to its right.
 */
export function cross(a: XY, b: XY, c: XY): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

/**
 * Returns the length of a vector, mm. `Math.hypot` is several times slower because it guards against overflow, which
 * plan coordinates never reach.
 */
export function vectorLength(dx: Mm, dy: Mm): Mm {
  return Math.sqrt(dx * dx + dy * dy);
}

/** Returns the distance between two points, mm. */
export function distance(a: XY, b: XY): Mm {
  return vectorLength(b[0] - a[0], b[1] - a[1]);
}

/** Returns a + (b − a)·t. */
export function along(a: XY, b: XY, t: number): XY {
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
}

/** Returns the parameter 0…1 of the point of segment a–b nearest to p; 0 for a segment of length zero. */
export function nearestParameter(p: XY, a: XY, b: XY): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const lengthSq = dx * dx + dy * dy;
  if (lengthSq === 0) return 0;
  return Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / lengthSq));
}

/** Returns the point of segment a–b nearest to p. */
export function nearestOnSegment(p: XY, a: XY, b: XY): XY {
  return along(a, b, nearestParameter(p, a, b));
}

/** Returns the distance from p to segment a–b, mm. Allocates nothing: pairs of walls are tested by the million. */
export function segmentDistance(p: XY, a: XY, b: XY): Mm {
  const t = nearestParameter(p, a, b);
  return vectorLength(a[0] + (b[0] - a[0]) * t - p[0], a[1] + (b[1] - a[1]) * t - p[1]);
}

/** Compares points by x, then y: sorting with it makes results independent of the order in the file. */
export function comparePoints(a: XY, b: XY): number {
  return a[0] - b[0] || a[1] - b[1];
}

/**
 * Returns a coordinate rounded to 1e-4 mm: removes floating-point noise, so that a file holds 914.4 and not
 * 914.3999999999999.
 */
export function roundCoordinate(mm: Mm): Mm {
  return Math.round(mm * 10_000) / 10_000 || 0; // never −0
}

/** Returns the point with its coordinates rounded to 1e-4 mm: see `roundCoordinate`. */
export function roundPoint([x, y]: XY): XY {
  return [roundCoordinate(x), roundCoordinate(y)];
}

/** Returns the sum of two vectors. */
export function plus([x, y]: XY, [dx, dy]: XY): XY {
  return [x + dx, y + dy];
}

/** Returns a vector times a number. */
export function scaled([x, y]: XY, by: number): XY {
  return [x * by, y * by];
}
