import type { LevelModel } from '../../geometry/level/types.ts';
import type { Extent } from '../../geometry/plane/body.ts';
import type { LevelRegion } from '../../geometry/region/types.ts';
import { zoneExtent } from '../../geometry/region/visible-edges.ts';
import { thingExtent } from '../drawing/things.ts';
import { openingExtent, roomExtent, wallExtent } from './extents.ts';

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

export function spoiltWalls(before: LevelModel, now: LevelModel): readonly Extent[] {
  if (before === now) return [];
  return [
    ...differing(before.pieces, now.pieces, wallExtent),
    ...differing(before.joints, now.joints, wallExtent),
    ...differing(before.openings, now.openings, openingExtent),
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
  const { pieces, joints, openings, level } = model;
  return [
    ...pieces.filter(({ wall }) => turned.has(wall.id)).map(wallExtent),
    ...joints.filter(({ walls }) => walls.some(({ id }) => turned.has(id))).map(wallExtent),
    ...openings.filter(({ opening }) => turned.has(opening.id)).map(openingExtent),
    ...[...level.fixtures, ...level.objects].filter(({ id }) => turned.has(id)).map(thingExtent),
  ];
}
