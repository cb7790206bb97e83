import { comparePoints, cross, distance } from './point.ts';
import type { Mm, XY } from './types.ts';

/**
 * The convex hull, clockwise on screen (monotone chain, Andrew 1979). Points in one line have a hull of two corners.
 *
 * @param same of points that lie this near to the one before them in the order of the page only the first counts, mm
 */
export function convexHull(points: readonly XY[], same: Mm = 0): XY[] {
  const sorted = [...points].sort(comparePoints);
  const apart = same > 0 ? sorted.filter((p, i) => i === 0 || distance(p, sorted[i - 1] as XY) > same) : sorted;
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
