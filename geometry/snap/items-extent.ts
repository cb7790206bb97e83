import { levelExtent, unionExtent } from '../level/level-extent.ts';
import type { Level } from '../plan/model.ts';
import { type Extent, ringExtent } from '../plane/extent.ts';
import { jambs } from './pick.ts';

/** Returns the bounding box of these items of a level, mm; null when the level has none of them. */
export function itemsExtent(level: Level, ids: readonly string[]): Extent | null {
  const chosen = new Set(ids);
  const among = <T extends { readonly id: string }>(items: readonly T[]) => items.filter(({ id }) => chosen.has(id));
  const standing = levelExtent({
    ...level,
    walls: among(level.walls),
    rooms: among(level.rooms),
    fixtures: among(level.fixtures),
    objects: among(level.objects),
    detectors: among(level.detectors),
  });
  const ends = among(level.openings).flatMap((opening) => jambs(level, opening) ?? []);
  const openings = ends.length > 0 ? ringExtent(ends) : null;
  return standing && openings ? unionExtent(standing, openings) : (standing ?? openings);
}
