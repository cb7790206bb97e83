import { type Extent, ringExtent } from '../plane/extent.ts';
import { memoize } from '../plane/memoize.ts';
import { ringsContain } from '../plane/ring.ts';
import type { XY } from '../plane/types.ts';
import type { Room } from './types.ts';

const floorExtent = memoize(({ floorRings }: Room): Extent => ringExtent(floorRings.flat()));

/** Returns whether a point is on the floor of a room. The extent is tested first, which rules out nearly all of many rooms. */
export function floorContains(room: Room, p: XY): boolean {
  const { minX, minY, maxX, maxY } = floorExtent(room);
  return p[0] >= minX && p[0] <= maxX && p[1] >= minY && p[1] <= maxY && ringsContain(room.floorRings, p);
}
