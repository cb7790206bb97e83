import { comparePoints, cross, distance } from './point.ts';
import type { Mm, XY } from './types.ts';

/**
 * Returns the convex hull, clockwise on screen (monotone chain, Andrew 1979). Collinear points give a hull of two
 * corners.
 *
 * @param tolerance if consecutive sorted points are closer than this, mm, only the first is used
 */
export function convexHull(points: readonly XY[], tolerance: Mm = 0): XY[] {
  const sorted = [...points].sort(comparePoints);
  const apart =
    tolerance > 0 ? sorted.filter((p, i) => i === 0 || distance(p, sorted[i - 1] as XY) > tolerance) : sorted;
  const chain = (all: readonly XY[]): XY[] => {
    const half: XY[] = [];
    for (const p of all) {
      while (half.length > 1 && cross(half[half.length - 2] as XY, half[half.length - 1] as XY, p) <= 0) half.pop();
      half.push(p);
    }
    return half.slice(0, -1);
  };
  return [...chain(apart), ...chain(apart.reverse())];
}
