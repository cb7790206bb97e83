import type { LevelModel, Room } from '../level/types.ts';
import type { Mm, Plan, XY } from '../plan/model.ts';
import type { Probe } from '../region/types.ts';
import type { Chosen } from './best-first.ts';
import type { Limit } from './field/primitives.ts';
import { type Ground, roomGrounds } from './ground.ts';
import { seekOnFurniture } from './on-furniture.ts';
import { type Place, searchSpots } from './search-spots.ts';

/** A good place for one detector. Lengths in mm. */
export interface Spot {
  /** The axis. */
  readonly at: XY;
  /** The underside: of the probe, or the top of what carries it. */
  readonly base: Mm;
  /** Id of the object that carries it; null where nothing was asked for to carry it. */
  readonly on: string | null;
  readonly room: Room;
  /** The least of measured − required over the rules in plan and in space. */
  readonly margin: Mm;
  /** No place that keeps away from the spots before it has more than this. */
  readonly bound: Mm;
  /** What leaves this margin; null where no rule finds anything to measure. */
  readonly limitedBy: Limit | null;
}

export interface SpotOptions {
  /** How many; fewer come back where there are no more. */
  readonly count?: number;
  /** How far the axes of two spots are apart at the least, mm. */
  readonly apart?: Mm;
  /** How much less than the best there is a spot may have, mm. */
  readonly tolerance?: Mm;
  /** First the spots on furniture that can carry a detector at an allowed height, whatever they have to spare, then others. */
  readonly onFurniture?: boolean;
}

/** Spots are a step apart, mm: 36 in. Nearer ones would be the same advice twice. */
export const SPOTS_APART: Mm = 914.4;

/** 1/16 in, mm: finer than any tape is read. */
export const SPOT_TOLERANCE: Mm = 1.6;

/**
 * The places of a level with the most to spare for a probe, the best first, well apart from one another. Every rule in plan
 * and in space is met there, the whole rim is inside a room that may hold a detector, and the height is allowed; level, sun and
 * pair are not asked. Empty where there is no such place. A valid region narrower than 0.001 mm may be passed over.
 */
export function bestSpots(plan: Plan, model: LevelModel, probe: Probe, options: SpotOptions = {}): Spot[] {
  const { count = 1, apart = SPOTS_APART, tolerance = SPOT_TOLERANCE, onFurniture = false } = options;
  const seek = (grounds: readonly Ground[], taken: readonly Spot[]): Spot[] => {
    const search = { count: count - taken.length, apart, tolerance, taken: taken.map(({ at }) => at) };
    return searchSpots(grounds, search).map(spotOf);
  };
  const carried = onFurniture ? seekOnFurniture(plan, model, probe, count, seek) : [];
  return [...carried, ...seek(roomGrounds(plan, model, probe), carried)];
}

/** A chosen place as it is reported. */
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
