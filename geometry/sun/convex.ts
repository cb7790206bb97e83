import type { XY } from '../plan/model.ts';

/** Returns the part of a convex ring where nx·x + ny·y is at least c (Sutherland and Hodgman, 1974). */
export function clip(ring: readonly XY[], nx: number, ny: number, c: number): XY[] {
  const rest: XY[] = [];
  for (let i = 0; i < ring.length; i++) {
    const p = ring[i] as XY;
    const q = ring[(i + 1) % ring.length] as XY;
    const [s, t] = [nx * p[0] + ny * p[1] - c, nx * q[0] + ny * q[1] - c];
    if (s >= 0) rest.push(p);
    if (s >= 0 === t >= 0) continue;
    const share = s / (s - t);
    rest.push([p[0] + (q[0] - p[0]) * share, p[1] + (q[1] - p[1]) * share]);
  }
  return rest;
}

/** Returns the area of a convex ring, mm²: positive when it runs clockwise on screen. */
export function areaOf(ring: readonly XY[]): number {
  let sum = 0;
  for (let i = 1; i + 1 < ring.length; i++) {
    const [o, p, q] = [ring[0] as XY, ring[i] as XY, ring[i + 1] as XY];
    sum += (p[0] - o[0]) * (q[1] - o[1]) - (q[0] - o[0]) * (p[1] - o[1]);
  }
  return sum / 2;
}

/** Returns the area that two convex rings share, mm². Both run clockwise on screen. */
export function sharedArea(one: readonly XY[], two: readonly XY[]): number {
  let rest = one;
  for (let i = 0; i < two.length && rest.length > 2; i++) {
    const [a, b] = [two[i] as XY, two[(i + 1) % two.length] as XY];
    const [nx, ny] = [a[1] - b[1], b[0] - a[0]];
    rest = clip(rest, nx, ny, nx * a[0] + ny * a[1]);
  }
  return rest.length > 2 ? areaOf(rest) : 0;
}
