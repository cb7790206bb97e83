import type { OpeningBody, WallJoint, WallPiece } from '../../geometry/level/types.ts';
import { type Extent, ringExtent } from '../../geometry/plane/extent.ts';
import { memoize } from '../../geometry/plane/memoize.ts';
import type { RoomRegion } from '../../geometry/region/types.ts';

/** The rectangles, mm, within which things are drawn, without the width of lines. */

export const wallExtent = memoize(({ body }: WallPiece | WallJoint): Extent => ringExtent(body));

/** With room for the leaf of a door, which opens by its width to either side. */
export const openingExtent = memoize(
  ({ body, opening }: OpeningBody): Extent => grown(ringExtent(body), opening.width),
);

export const roomExtent = memoize(({ room }: RoomRegion): Extent => ringExtent(room.floorRings.flat()));

function grown({ minX, minY, maxX, maxY }: Extent, by: number): Extent {
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by };
}
