import type { Mm, XY } from './types.ts';

/**
 * The page: x to the right, y DOWN. `cross(a, b, c) > 0` means that c lies clockwise on screen of the ray a → b
 * (to the right of one who walks from a to b).
 */
export function cross(a: XY, b: XY, c: XY): number {
  return (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0]);
}

/** Length of a vector. Math.hypot guards against overflow, which no plan reaches, and is several times slower. */
export function vectorLength(dx: Mm, dy: Mm): Mm {
  return Math.sqrt(dx * dx + dy * dy);
}

/** Distance between two points, mm. */
export function distance(a: XY, b: XY): Mm {
  return vectorLength(b[0] - a[0], b[1] - a[1]);
}

/** a + (b − a)·t. */
export function along(a: XY, b: XY, t: number): XY {
  return [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t];
}

/** Where on the segment a–b the point nearest to p lies, 0…1; 0 for a segment without length. */
export function nearestParameter(p: XY, a: XY, b: XY): number {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const lengthSq = dx * dx + dy * dy;
  if (lengthSq === 0) return 0;
  return Math.min(1, Math.max(0, ((p[0] - a[0]) * dx + (p[1] - a[1]) * dy) / lengthSq));
}

/** The point of the segment a–b nearest to p. */
export function nearestOnSegment(p: XY, a: XY, b: XY): XY {
  return along(a, b, nearestParameter(p, a, b));
}

/** Order of points by x, then y: gives results that do not depend on the order of the file. */
export function comparePoints(a: XY, b: XY): number {
  return a[0] - b[0] || a[1] - b[1];
}

/** A drawn coordinate without the dust of arithmetic: to a ten-thousandth of a millimetre, so that a file holds 914.4 and not 914.3999999999999. */
export function tidy(mm: Mm): Mm {
  return Math.round(mm * 10_000) / 10_000 || 0; // no −0
}

export function tidyPoint([x, y]: XY): XY {
  return [tidy(x), tidy(y)];
}
