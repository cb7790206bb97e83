import { type Extent, ringExtent, shapeBody, shapeMiddle } from '../../geometry/body.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Fixture, PlanObject } from '../../geometry/plan/model.ts';
import type { LevelRegion, RoomRegion } from '../../geometry/region/types.ts';
import { zoneExtent } from '../../geometry/region/visible-edges.ts';

/** Rectangles of the plan, mm, outside of which two drawings are the same. What an edit leaves alone keeps its object: see `state/kept.ts`. */

/** What differs between two lists: all that is in one of them only. */
function differing<T>(before: readonly T[], now: readonly T[], extentOf: (one: T) => Extent): readonly Extent[] {
  if (before === now) return [];
  const [old, young] = [new Set(before), new Set(now)];
  return [...before.filter((one) => !young.has(one)), ...now.filter((one) => !old.has(one))].map(extentOf);
}

export function spoiltRegion(before: LevelRegion, now: LevelRegion): readonly Extent[] {
  if (before === now) return [];
  return [...differing(before.zones, now.zones, zoneExtent), ...differing(before.rooms, now.rooms, roomExtent)];
}

function roomExtent({ room }: RoomRegion): Extent {
  return ringExtent(room.floorRings.flat());
}

export function spoiltWalls(before: LevelModel, now: LevelModel): readonly Extent[] {
  if (before === now) return [];
  return [
    ...differing(before.pieces, now.pieces, ({ body }) => ringExtent(body)),
    // A leaf opens as far as its door is wide, to either side.
    ...differing(before.openings, now.openings, ({ body, opening }) => grown(ringExtent(body), opening.width)),
    ...differing(before.level.fixtures, now.level.fixtures, thingExtent),
    ...differing(before.level.objects, now.level.objects, thingExtent),
  ];
}

/** What is drawn in another colour when the selection turns from one to the other. */
export function spoiltBySelection(
  model: LevelModel,
  before: readonly string[],
  now: readonly string[],
): readonly Extent[] {
  if (before === now) return [];
  const turned = new Set([...before.filter((id) => !now.includes(id)), ...now.filter((id) => !before.includes(id))]);
  const { pieces, openings, level } = model;
  return [
    ...pieces.filter(({ wall }) => turned.has(wall.id)).map(({ body }) => ringExtent(body)),
    ...openings
      .filter(({ opening }) => turned.has(opening.id))
      .map(({ body, opening }) => grown(ringExtent(body), opening.width)),
    ...[...level.fixtures, ...level.objects].filter(({ id }) => turned.has(id)).map(thingExtent),
  ];
}

/** Its ground, and the air that it blows. */
export function thingExtent(thing: Fixture | PlanObject): Extent {
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
}

function grown({ minX, minY, maxX, maxY }: Extent, by: number): Extent {
  return { minX: minX - by, minY: minY - by, maxX: maxX + by, maxY: maxY + by };
}
