import type { Room } from '../level/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import { type Extent, ringExtent } from '../plane/extent.ts';
import { memoize } from '../plane/memoize.ts';
import type { Ring } from '../plane/types.ts';

/** The floor of a room, prepared for measuring. */
export interface RoomFloor {
  readonly extent: Extent;
  /** How far a point is inside the floor's edge, mm; negative outside. 1-Lipschitz. */
  depth(x: Mm, y: Mm): Mm;
}

/** Returns the prepared floor of a room; memoized. */
export const roomFloor: (room: Room) => RoomFloor = memoize(({ floorRings }: Room) => {
  const edges = edgesOf(floorRings);
  return { extent: ringExtent(floorRings.flat()), depth: (x, y) => depthIn(edges, x, y) };
});

/** Returns the edges as flat numbers: x, y of the start, x, y of the end. */
function edgesOf(rings: readonly Ring[]): Float64Array {
  const edges = new Float64Array(4 * rings.reduce((sum, ring) => sum + ring.length, 0));
  let k = 0;
  for (const ring of rings) {
    let [ax, ay] = ring[ring.length - 1] as XY;
    for (const [x, y] of ring) {
      edges[k++] = ax;
      edges[k++] = ay;
      edges[k++] = x;
      edges[k++] = y;
      ax = x;
      ay = y;
    }
  }
  return edges;
}

function depthIn(edges: Float64Array, x: Mm, y: Mm): Mm {
  let leastSq = Number.POSITIVE_INFINITY;
  let inside = false;
  for (let k = 0; k < edges.length; k += 4) {
    const ax = edges[k] as number;
    const ay = edges[k + 1] as number;
    const by = edges[k + 3] as number;
    const dx = (edges[k + 2] as number) - ax;
    const dy = by - ay;
    const px = x - ax;
    const py = y - ay;
    const lengthSq = dx * dx + dy * dy;
    const t = lengthSq > 0 ? Math.min(1, Math.max(0, (px * dx + py * dy) / lengthSq)) : 0;
    const ex = px - t * dx;
    const ey = py - t * dy;
    leastSq = Math.min(leastSq, ex * ex + ey * ey);
    const below = ay > y;
    if (below !== by > y && px * dy < dx * py !== below) inside = !inside;
  }
  return inside ? Math.sqrt(leastSq) : -Math.sqrt(leastSq);
}
