import type { Mm, XY } from '../plan/model.ts';
import { convexHull } from '../plane/hull.ts';
import { along, distance, nearestOnSegment } from '../plane/point.ts';
import { areaOf, sharedArea } from './convex.ts';
import { withFewerCorners } from './fewer-corners.ts';

/** Every point of a hull is within this distance of its cells, mm. */
const DEEPEST: Mm = 15;
/** Where a side of a hull is measured, as fractions of its length: the farthest point is near the middle. */
const MEASURED = [0.25, 0.5, 0.75];
/** At most this many of the latest hulls are tried for a cell. */
const MOST_TRIED = 8;

interface Hull {
  ring: readonly XY[];
  area: number;
  /** How far a point of the hull may be from its cells, mm. */
  depth: Mm;
}

/** Collects convex cells, and joins each with an earlier hull if the hull of both is hardly larger than the two. */
export class Hulls {
  private readonly hulls: Hull[] = [];

  add(ring: readonly XY[]): void {
    const area = areaOf(ring);
    const last = this.hulls.length - 1;
    for (let i = last; i >= Math.max(0, last - MOST_TRIED); i--) {
      const hull = this.hulls[i] as Hull;
      if (!joins(hull, ring, area)) continue;
      // The next cell is usually beside this one, so this hull is tried first.
      this.hulls[i] = this.hulls[last] as Hull;
      this.hulls[last] = hull;
      return;
    }
    this.hulls.push({ ring, area, depth: 0 });
  }

  /** Returns the hulls with their number of corners reduced. */
  rings(): readonly (readonly XY[])[] {
    return this.hulls.map(({ ring }) => withFewerCorners(ring));
  }
}

function joins(hull: Hull, ring: readonly XY[], area: number): boolean {
  const shared = sharedArea(ring, hull.ring);
  if (shared >= area - 1e-6) return true;
  if (shared <= 0) return false;
  const joined = convexHull([...hull.ring, ...ring]);
  const joinedArea = areaOf(joined);
  const dents = joinedArea - hull.area - area + shared > 1 ? deepestDent(joined, hull.ring, ring) : 0;
  if (hull.depth + dents > DEEPEST) return false;
  hull.ring = joined;
  hull.area = joinedArea;
  hull.depth += dents;
  return true;
}

/** Returns the greatest distance from both rings, mm, of those sides of their hull that connect one with the other. */
function deepestDent(hull: readonly XY[], one: readonly XY[], two: readonly XY[]): Mm {
  let most = 0;
  hull.forEach((p, i) => {
    const q = hull[(i + 1) % hull.length] as XY;
    if ((one.includes(p) && one.includes(q)) || (two.includes(p) && two.includes(q))) return;
    for (const share of MEASURED) {
      const at = along(p, q, share);
      most = Math.max(most, Math.min(outlineDistance(at, one), outlineDistance(at, two)) * 1.5);
    }
  });
  return most;
}

/** Returns the distance from a point outside a ring to the ring, mm. */
function outlineDistance(p: XY, ring: readonly XY[]): Mm {
  let least = Number.POSITIVE_INFINITY;
  ring.forEach((a, i) => {
    least = Math.min(least, distance(p, nearestOnSegment(p, a, ring[(i + 1) % ring.length] as XY)));
  });
  return least;
}
