import type { Wall } from '../plan/model.ts';
import { bearing, fullTurn } from '../plane/bearing.ts';
import { distance } from '../plane/point.ts';
import type { Deg, Mm } from '../plane/types.ts';
import { sunPosition } from './position.ts';

/** Below the least altitude the sun is hidden or refracted; above the greatest, a wall's shadow is too short to judge. Degrees. */
const ALTITUDES = { least: 3, most: 60 } as const;
/** A shorter wall is hard to sight along, mm. */
const SHORTEST: Mm = 1000;
/** Directions of walls that differ by no more than this count as one, degrees. */
const SAME: Deg = 1;

/** True north as found from the sun along a wall, or why it cannot be found. */
export type NorthBySun =
  | { readonly ok: true; readonly north: Deg; readonly azimuth: Deg; readonly altitude: Deg }
  | { readonly ok: false; readonly why: 'low' | 'high'; readonly altitude: Deg };

/** Returns true north, clockwise from straight up the page, given a direction on the page and its bearing from true north. */
export const northByBearing = (toward: Deg, bearingThere: Deg): Deg => fullTurn(toward - bearingThere);

/** Returns the directions along the walls of a level, both ways, each once, in whole degrees clockwise from straight up the page. */
export function wallDirections(walls: readonly Pick<Wall, 'from' | 'to'>[]): readonly Deg[] {
  const all = walls
    .filter(({ from, to }) => distance(from, to) >= SHORTEST)
    .flatMap(({ from, to }) => [bearing(from, to), bearing(to, from)])
    .map((degrees) => fullTurn(Math.round(degrees)))
    .sort((a, b) => a - b);
  return all.filter((degrees, index) => !all.slice(0, index).some((other) => turnBetween(degrees, other) <= SAME));
}

const turnBetween = (a: Deg, b: Deg): Deg => Math.min(fullTurn(a - b), fullTurn(b - a));

/**
 * Returns true north, clockwise from straight up the page, given the direction of the sun on the page at an instant; why not, if the sun is
 * too low or too high.
 * @param toward the direction of the sun on the page, clockwise from straight up
 * @param instant milliseconds since 1970; latitude and longitude in degrees north and east
 */
export function northBySun(toward: Deg, instant: number, latitude: Deg, longitude: Deg): NorthBySun {
  const { azimuth, altitude } = sunPosition(instant, latitude, longitude);
  if (altitude < ALTITUDES.least) return { ok: false, why: 'low', altitude };
  if (altitude > ALTITUDES.most) return { ok: false, why: 'high', altitude };
  return { ok: true, north: northByBearing(toward, azimuth), azimuth, altitude };
}
