import { bodyDistance, shapeBody } from '../body.ts';
import type { LevelModel } from '../level/types.ts';
import type { XY } from '../plan/model.ts';
import type { Probe } from '../region/types.ts';

/**
 * Whether some detector would stand within a fixture: in a washer, say, where no rule of the profile keeps it away from one.
 * A place to be offered must be free, whatever the rules allow. What ends at or below its underside may carry it.
 */
export function isOccupied({ level }: LevelModel, { base, radius, tall }: Probe, axes: readonly XY[]): boolean {
  return level.fixtures.some(({ shape, bottom, top }) => {
    if (top <= base || bottom >= base + tall) return false;
    const body = shapeBody(shape);
    return axes.some(([x, y]) => bodyDistance(body, x, y) < radius);
  });
}
