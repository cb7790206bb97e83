import type { LevelModel, Room } from '../level/types.ts';
import type { Mm, Plan, XY } from '../plan/model.ts';
import type { Probe } from '../region/types.ts';
import type { Chosen } from './best-first.ts';
import type { Limit } from './field/primitives.ts';
import { type Ground, roomGrounds } from './ground.ts';
import { searchOnFurniture } from './on-furniture.ts';
import { type Place, searchSpots } from './search-spots.ts';

/** A good position for one detector. Lengths in mm. */
export interface Spot {
  /** The axis. */
  readonly at: XY;
  /** The base height: that of the probe, or the top of the object that supports it. */
  readonly base: Mm;
  /** Id of the supporting object; null if none was requested. */
  readonly on: string | null;
  readonly room: Room;
  /** The least of measured − required over the rules in plan and in space. */
  readonly margin: Mm;
  /** Upper bound of the margin of every position far enough from the spots before it. */
  readonly bound: Mm;
  /** What determines the margin; null if no rule has anything to measure. */
  readonly limitedBy: Limit | null;
}

export interface SpotOptions {
  /** Number of spots; fewer are returned if there are no more. */
  readonly count?: number;
  /** Least distance between the axes of two spots, mm. */
  readonly apart?: Mm;
  /** How far below the optimum the margin of a spot may be, mm. */
  readonly tolerance?: Mm;
  /**
   * Returns first the spots on furniture that can support a detector at an allowed height, whatever their margin, then others.
   */
  readonly onFurniture?: boolean;
}

/** Default distance between spots, mm: 36 in. Closer ones would be the same advice twice. */
export const SPOTS_APART: Mm = 914.4;

/** 1/16 in, mm: finer than any tape is read. */
export const SPOT_TOLERANCE: Mm = 1.6;

/**
 * Returns the positions on a level with the greatest margin for a probe, best first, apart from each other. Every
 * rule in plan and in space is met there, the whole rim is inside a room that allows a detector, and the height is
 * allowed. The rules on level and pair, and sun that is not computed, are not considered. Empty if there is none. A
 * valid region narrower than 0.001 mm may be missed.
 */
export function bestSpots(plan: Plan, model: LevelModel, probe: Probe, options: SpotOptions = {}): Spot[] {
  const { count = 1, apart = SPOTS_APART, tolerance = SPOT_TOLERANCE, onFurniture = false } = options;
  const search = (grounds: readonly Ground[], taken: readonly Spot[]): Spot[] => {
    const search = { count: count - taken.length, apart, tolerance, taken: taken.map(({ at }) => at) };
    return searchSpots(grounds, search).map(spotOf);
  };
  const onObjects = onFurniture ? searchOnFurniture(plan, model, probe, count, search) : [];
  return [...onObjects, ...search(roomGrounds(plan, model, probe), onObjects)];
}

/** Converts a chosen place to a spot. */
export function spotOf({ ground, x, y, margin, bound }: Chosen<Place>): Spot {
  const { field, on, room } = ground;
  return {
    at: [x, y],
    base: field.probe.base,
    on: on?.id ?? null,
    room,
    margin,
    bound,
    limitedBy: field.limitedBy(x, y),
  };
}
