import type { LevelModel } from '../../../geometry/level/types.ts';
import type { Extent } from '../../../geometry/plane/extent.ts';
import type { LevelRegion } from '../../../geometry/region/types.ts';
import { zoneExtent } from '../../../geometry/region/visible-edges.ts';
import { thingExtent } from '../../drawing/things.ts';
import { openingExtent, roomExtent, wallExtent } from '../extents.ts';

/**
 * Dirty rectangles of the plan, mm: outside of them two states of the plan look the same. Parts that an edit does not change keep their
 * objects: see `state/structural-sharing.ts`.
 */

/** Returns the extents of everything that is in only one of the two lists. */
function changed<T>(before: readonly T[], now: readonly T[], extentOf: (one: T) => Extent): readonly Extent[] {
  if (before === now) return [];
  const [old, young] = [new Set(before), new Set(now)];
  return [...before.filter((one) => !young.has(one)), ...now.filter((one) => !old.has(one))].map(extentOf);
}

export function dirtyInRegion(before: LevelRegion, now: LevelRegion): readonly Extent[] {
  if (before === now) return [];
  return [...changed(before.zones, now.zones, zoneExtent), ...changed(before.rooms, now.rooms, roomExtent)];
}

export function dirtyInWalls(before: LevelModel, now: LevelModel): readonly Extent[] {
  if (before === now) return [];
  return [
    ...changed(before.pieces, now.pieces, wallExtent),
    ...changed(before.joints, now.joints, wallExtent),
    ...changed(before.openings, now.openings, openingExtent),
    ...changed(before.level.fixtures, now.level.fixtures, thingExtent),
    ...changed(before.level.objects, now.level.objects, thingExtent),
  ];
}

/** Returns the extents of items that are in only one of two selections, since a selected item has another color. */
export function dirtyBySelection(
  model: LevelModel,
  before: readonly string[],
  now: readonly string[],
): readonly Extent[] {
  if (before === now) return [];
  const turned = new Set([...before.filter((id) => !now.includes(id)), ...now.filter((id) => !before.includes(id))]);
  const { pieces, joints, openings, level } = model;
  return [
    ...pieces.filter(({ wall }) => turned.has(wall.id)).map(wallExtent),
    ...joints.filter(({ walls }) => walls.some(({ id }) => turned.has(id))).map(wallExtent),
    ...openings.filter(({ opening }) => turned.has(opening.id)).map(openingExtent),
    ...[...level.fixtures, ...level.objects].filter(({ id }) => turned.has(id)).map(thingExtent),
  ];
}
