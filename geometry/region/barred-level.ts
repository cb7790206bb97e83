import type { LevelRegion } from './types.ts';

/**
 * Returns a region in which nothing is allowed, whatever the distances, if `bar` says why the level is not the one to test; the same region
 * if `bar` is empty. `levelRegion` does not consider the choice of the level; its caller does.
 */
export function regionUnderBar(region: LevelRegion, bar: string): LevelRegion {
  if (!bar) return region;
  const rooms = region.rooms.map((room) =>
    room.barred ? room : { ...room, rings: [], area: 0, barred: bar, barredBy: 'level' as const, decided: true },
  );
  return { ...region, rooms };
}
