import type { OpeningBody, WallJoint, WallPiece } from '../../geometry/level/types.ts';
import type { Fixture, PlanObject } from '../../geometry/plan/model.ts';
import { type Extent, ringExtent, shapeBody, shapeMiddle } from '../../geometry/plane/body.ts';
import { memoize } from '../../geometry/plane/memoize.ts';
import type { RoomRegion } from '../../geometry/region/types.ts';

/** The rectangles, mm, within which things are drawn, but for the breadth of their lines. */

export const wallExtent = memoize(({ body }: WallPiece | WallJoint): Extent => ringExtent(body));

/** A leaf opens as far as its door is wide, to either side. */
export const openingExtent = memoize(
  ({ body, opening }: OpeningBody): Extent => grown(ringExtent(body), opening.width),
);

/** Its ground, and the air that it blows. */
export const thingExtent = memoize((thing: Fixture | PlanObject): Extent => {
  const { extent } = shapeBody(thing.shape);
  if (!('stream' in thing) || !thing.stream) return extent;
  const [x, y] = shapeMiddle(thing.shape);
  const { reach } = thing.stream;
  return {
    minX: Math.min(extent.minX, x - reach),
    minY: Math.min(extent.minY, y - reach),
    maxX: Math.max(extent.maxX, x + reach),
    maxY: Math.max(extent.maxY, y + reach),
  };
});

export const roomExtent = memoize(({ room }: RoomRegion): Extent => ringExtent(room.floorRings.flat()));

function grown({ minX, minY, maxX, maxY }: Extent, by: number): Extent {
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by };
}
