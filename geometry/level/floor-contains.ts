import { type Extent, ringExtent } from '../plane/extent.ts';
import { memoize } from '../plane/memoize.ts';
import { ringsContain } from '../plane/ring.ts';
import type { XY } from '../plane/types.ts';
import type { Room } from './types.ts';

const floorExtent = memoize(({ floorRings }: Room): Extent => ringExtent(floorRings.flat()));

/** Returns whether a point lies on the floor of a room. Of many rooms nearly all are ruled out by their extent alone. */
export function floorContains(room: Room, p: XY): boolean {
  const { minX, minY, maxX, maxY } = floorExtent(room);
  return p[0] >= minX && p[0] <= maxX && p[1] >= minY && p[1] <= maxY && ringsContain(room.floorRings, p);
}
