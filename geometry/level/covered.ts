import type { GrownZone } from '../arrangement/zone.ts';
import type { XY } from '../plan/model.ts';
import { bodyDistance } from '../plane/body.ts';
import { type Extent, ringExtent } from '../plane/extent.ts';
import { convexHull } from '../plane/hull.ts';
import { along, cross } from '../plane/point.ts';
import { signedArea } from '../plane/ring.ts';
import type { Ring } from '../plane/types.ts';

/** An uncovered part smaller than this is rounding, mm². */
const NEGLIGIBLE_AREA = 1e-6;

/** The test gives up after subtracting this many bodies; the caller then cuts every body by every other. */
const MOST_SUBTRACTIONS = 16;

/** Returns whether a convex zone contains a ring. */
export function containsRing(one: GrownZone, ring: Ring, extent: Extent): boolean {
  if (!one.convex || one.minX > extent.minX || one.minY > extent.minY) return false;
  if (one.maxX < extent.maxX || one.maxY < extent.maxY) return false;
  return ring.every(([x, y]) => bodyDistance(one.body, x, y) === 0);
}

/**
 * Returns true if a few convex zones together cover a ring and this is found quickly; false otherwise. A part that one
 * zone contains is done; from any other part, a zone that contains the part's middle is subtracted.
 *
 * @param first zones that are tried before the others
 */
export function isCovered(ring: Ring, first: readonly GrownZone[], others: readonly GrownZone[]): boolean {
  const hull = convexHull(ring);
  const parts: Ring[] = [hull];
  for (let subtracted = 0; subtracted <= MOST_SUBTRACTIONS; subtracted++) {
    const part = parts.pop();
    if (!part) return true;
    const extent = ringExtent(part);
    const containsAll = (one: GrownZone) => containsRing(one, part, extent);
    if (first.some(containsAll) || others.some(containsAll)) continue;
    const middle = middleOf(part);
    const containsMiddle = (one: GrownZone) => one.convex && bodyDistance(one.body, ...middle) === 0;
    const body = first.find(containsMiddle) ?? others.find(containsMiddle);
    if (body?.body.kind !== 'ring') return false;
    parts.push(...subtractConvex(part, body.body.ring));
  }
  return false;
}

/** Returns a point inside a convex ring; any point inside is good enough. */
function middleOf(ring: Ring): XY {
  const [x, y] = ring.reduce(([sx, sy], [px, py]) => [sx + px, sy + py], [0, 0]);
  return [x / ring.length, y / ring.length];
}

/** Returns the part of a convex ring outside another, as convex rings. All run clockwise on screen. */
function subtractConvex(ring: Ring, subtracted: Ring): Ring[] {
  const parts: Ring[] = [];
  let rest: Ring = ring;
  subtracted.forEach((a, i) => {
    const b = subtracted[(i + 1) % subtracted.length] as XY;
    const outside = clipToRight(rest, b, a);
    if (signedArea(outside) > NEGLIGIBLE_AREA) parts.push(outside);
    rest = clipToRight(rest, a, b);
  });
  return parts;
}

/** Returns the part of a convex ring to the right of the line a → b (Sutherland and Hodgman, 1974). */
function clipToRight(ring: Ring, a: XY, b: XY): Ring {
  return ring.flatMap((p, i) => {
    const q = ring[(i + 1) % ring.length] as XY;
    const [atP, atQ] = [cross(a, b, p), cross(a, b, q)];
    const clipped: XY[] = atP >= 0 ? [p] : [];
    if (atP * atQ < 0) clipped.push(along(p, q, atP / (atP - atQ)));
    return clipped;
  });
}
