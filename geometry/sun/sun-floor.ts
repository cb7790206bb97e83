import type { LevelModel, OpeningBody, WallPiece } from '../level/types.ts';
import type { Mm } from '../plan/model.ts';
import { memoize } from '../plane/memoize.ts';
import type { Ring } from '../plane/types.ts';
import type { SunTimes } from './times.ts';

/** Heights of a detector above the floor. */
export interface Heights {
  readonly base: Mm;
  readonly tall: Mm;
}

/** The floor that direct sun crosses at the height of a detector, for one opening that lets it in. */
export interface SweptArea {
  /** Id of the opening. */
  readonly opening: string;
  /** Rings that may overlap and touch themselves; never less than the true area. */
  readonly rings: readonly Ring[];
}

export type Swept =
  | { readonly state: 'known'; readonly areas: readonly SweptArea[] }
  /** The area cannot be computed; the reason is a sentence. */
  | { readonly state: 'unknown'; readonly reason: string };

/** Returns the swept area of a level; null if it is computed later. */
export type SunSource = (model: LevelModel, times: SunTimes, heights: Heights) => Swept | null;

let source: SunSource = () => null;

/**
 * Sets the function that computes the swept area. It is set and not imported, because the browser loads the code of the sun late:
 * until then, every swept area is unknown.
 */
export function setSunSource(work: SunSource): void {
  source = work;
}

/** Number of areas cached per drawing: the heights of its detectors, those of a slider, and later starts. */
const MOST_CACHED = 160;

const cachesOf = memoize((_: readonly WallPiece[]) =>
  memoize((__: readonly OpeningBody[]) => new Map<string, Swept>()),
);

/**
 * Returns the floor that direct sun crosses between the underside and the top of a detector; null while it is not computed.
 * Cached by walls, openings, place, times and heights, so that moving a detector recomputes nothing.
 */
export function sunFloor(model: LevelModel, times: SunTimes, heights: Heights): Swept | null {
  const cached = cacheOf(model).get(keyOf(times, heights));
  if (cached) return cached;
  const swept = source(model, times, heights);
  if (swept) keepSunFloor(model, times, heights, swept);
  return swept;
}

/** Caches a swept area that was computed elsewhere. */
export function keepSunFloor(model: LevelModel, times: SunTimes, heights: Heights, swept: Swept): void {
  const cache = cacheOf(model);
  cache.set(keyOf(times, heights), swept);
  for (const oldest of cache.keys()) {
    if (cache.size <= MOST_CACHED) break;
    cache.delete(oldest);
  }
}

const cacheOf = ({ pieces, openings }: LevelModel) => cachesOf(pieces)(openings);

function keyOf({ latitude, longitude, start, end, north, horizon }: SunTimes, { base, tall }: Heights): string {
  return [latitude, longitude, start, end, north, horizon, base, tall].join(' ');
}
