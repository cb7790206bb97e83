import type { Point } from './geos.ts';

/** Plain vector functions, so that the oracle shares no arithmetic with the engine. */
export const minus = (a: Point, b: Point): Point => [a[0] - b[0], a[1] - b[1]];
export const plus = (a: Point, b: Point, times = 1): Point => [a[0] + b[0] * times, a[1] + b[1] * times];
export const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1];
export const wedge = (a: Point, b: Point): number => a[0] * b[1] - a[1] * b[0];
/** Math.hypot is not used: it is ten times slower and guards against sizes that no house has. */
const size = (a: Point): number => Math.sqrt(a[0] * a[0] + a[1] * a[1]);
export const apart = (a: Point, b: Point): number => size(minus(a, b));
export const unit = (a: Point): Point => [a[0] / size(a), a[1] / size(a)];
/** Rotates by a quarter turn clockwise on screen. */
export const quarter = ([x, y]: Point): Point => [-y, x];
export const middle = (a: Point, b: Point): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

/** Returns where the line through p along u meets the line through q along v; null when they are parallel. */
export function meeting(p: Point, u: Point, q: Point, v: Point): Point | null {
  const det = wedge(u, v);
  if (Math.abs(det) < 1e-12) return null;
  return plus(p, u, wedge(minus(q, p), v) / det);
}

/** Returns the distance from a point to a segment, mm. */
export function offSegment(p: Point, a: Point, b: Point): number {
  const along = minus(b, a);
  const share = dot(minus(p, a), along) / dot(along, along);
  return apart(p, plus(a, along, Math.min(1, Math.max(0, share))));
}

/** Returns the point of a segment that is nearest to p. */
export function nearest(p: Point, a: Point, b: Point): Point {
  const along = unit(minus(b, a));
  const out = (p[0] - a[0]) * along[0] + (p[1] - a[1]) * along[1];
  return plus(a, along, Math.min(Math.max(0, out), apart(a, b)));
}

/** A bounding box: left, top, right, bottom. */
export type Extent = readonly [left: number, top: number, right: number, bottom: number];

export function extentOf(points: readonly Point[]): Extent {
  let [left, top, right, bottom] = [
    Number.POSITIVE_INFINITY,
    Number.POSITIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
    Number.NEGATIVE_INFINITY,
  ];
  for (const [x, y] of points) {
    left = Math.min(left, x);
    right = Math.max(right, x);
    top = Math.min(top, y);
    bottom = Math.max(bottom, y);
  }
  return [left, top, right, bottom];
}

export const grown = ([left, top, right, bottom]: Extent, by: number): Extent => [
  left - by,
  top - by,
  right + by,
  bottom + by,
];

/** Returns the distance between two bounding boxes, mm; 0 where they overlap. */
export function extentsApart(a: Extent, b: Extent): number {
  const across = Math.max(a[0] - b[2], b[0] - a[2], 0);
  const down = Math.max(a[1] - b[3], b[1] - a[3], 0);
  return Math.sqrt(across * across + down * down);
}

/** Returns the direction of a vector as an angle, radians, 0 ≤ … < 2π, clockwise on screen from +x. */
export function bearing([x, y]: Point): number {
  const angle = Math.atan2(y, x);
  return angle < 0 ? angle + 2 * Math.PI : angle;
}
