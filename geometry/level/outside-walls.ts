import type { LevelModel } from './types.ts';

/**
 * Returns the ids of walls with an outside piece: the outline of the level. Empty while no room is closed, unless
 * `side` says otherwise.
 */
export function outsideWallIds({ pieces }: LevelModel): ReadonlySet<string> {
  return new Set(pieces.filter(({ outside }) => outside).map(({ wall }) => wall.id));
}
