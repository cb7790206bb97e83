import type { LevelRegion } from '../../geometry/region/types.ts';

/**
 * Returns the region of a level as it is drawn, on screen and on paper: on a level that is not the one to test nothing is allowed, whatever
 * the distances. The engine leaves the choice of the level to its caller.
 */
export function drawnRegion(region: LevelRegion, bar: string): LevelRegion {
  if (!bar) return region;
  const rooms = region.rooms.map((room) =>
    room.barred ? room : { ...room, rings: [], area: 0, barred: bar, barredBy: 'level' as const, decided: true },
  );
  return { ...region, rooms };
}
