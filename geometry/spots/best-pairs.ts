import type { LevelModel } from '../level/types.ts';
import type { Mm, Plan, XY } from '../plan/model.ts';
import { vectorLength } from '../point.ts';
import type { Probe } from '../region/types.ts';
import { SPOT_TOLERANCE, SPOTS_APART } from './best-spots.ts';
import { type Ground, objectGrounds, roomGrounds } from './ground.ts';
import { groupOf, type SpotGroup } from './group.ts';
import { companionGap, groupShapes } from './group-shapes.ts';
import { searchGroups } from './search-groups.ts';

export interface SpotPair extends SpotGroup {
  readonly at: readonly [XY, XY];
}

export interface GroupOptions {
  /** How many groups; fewer come back where there are no more. */
  readonly count?: number;
  /** How far the middles of two groups are apart at the least, mm. */
  readonly apart?: Mm;
  /** How much less than the best there is a group may have, mm. */
  readonly tolerance?: Mm;
  /** First the places on furniture that can carry them all, whatever they have to spare, then others. */
  readonly onFurniture?: boolean;
}

/**
 * The places of a level with the most to spare for two detectors side by side, the best first. Both meet every rule in plan and in
 * space and stand in the same room, rim to rim at the middle of the gap that the profile asks for, in whatever direction is
 * best. Where no two fit so, at the least gap, else at the greatest.
 */
export function bestPairs(plan: Plan, model: LevelModel, probe: Probe, options: GroupOptions = {}): SpotPair[] {
  return bestGroups(plan, model, probe, 2, options).map((group) => ({ ...group, at: group.at as [XY, XY] }));
}

/** The same for two detectors or more: see `groupShapes` for how they stand. */
export function bestGroups(
  plan: Plan,
  model: LevelModel,
  probe: Probe,
  members: number,
  options: GroupOptions = {},
): SpotGroup[] {
  const { count = 1, apart = SPOTS_APART, tolerance = SPOT_TOLERANCE, onFurniture = false } = options;
  const seek = (grounds: readonly Ground[], more: number): SpotGroup[] => {
    if (more <= 0) return [];
    for (const shape of groupShapes(members, probe.radius, companionGap(plan))) {
      const places = searchGroups(grounds, shape, { count: more, apart, tolerance });
      if (places.length > 0) return places.map((place) => groupOf(place, shape.mutual));
    }
    return [];
  };
  const carried = onFurniture ? seek(objectGrounds(plan, model, probe), count) : [];
  const others = seek(roomGrounds(plan, model, probe), count - carried.length);
  return [...carried, ...others.filter((group) => carried.every((one) => apartBy(one, group) >= apart))];
}

/** How far the middles of two groups are apart, mm. */
function apartBy(a: SpotGroup, b: SpotGroup): Mm {
  const middle = ({ at }: SpotGroup, axis: 0 | 1) => at.reduce((sum, one) => sum + one[axis], 0) / at.length;
  return vectorLength(middle(a, 0) - middle(b, 0), middle(a, 1) - middle(b, 1));
}
