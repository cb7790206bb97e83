import type { LevelModel } from './types.ts';

/** Ids of the walls with a piece that has the outside on one side: the outline of the level. Empty while no room is closed, unless `side` says so. */
export function outsideWallIds({ pieces }: LevelModel): ReadonlySet<string> {
  return new Set(pieces.filter(({ outside }) => outside).map(({ wall }) => wall.id));
}
