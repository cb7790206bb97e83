import type { LevelRegion } from './types.ts';

/**
 * Returns a region in which nothing is allowed, whatever the distances, where `bar` says why the level is not the one to test; the region
 * itself where `bar` is empty. `levelRegion` leaves the choice of the level to its caller.
 */
export function regionUnderBar(region: LevelRegion, bar: string): LevelRegion {
  if (!bar) return region;
  const rooms = region.rooms.map((room) =>
    room.barred ? room : { ...room, rings: [], area: 0, barred: bar, barredBy: 'level' as const, decided: true },
  );
  return { ...region, rooms };
}
