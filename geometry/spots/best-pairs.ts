import type { LevelModel } from '../level/types.ts';
import type { Mm, Plan, XY } from '../plan/model.ts';
import type { Probe } from '../region/types.ts';
import { SPOT_TOLERANCE, SPOTS_APART } from './best-spots.ts';
import { roomGrounds } from './ground.ts';
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
  const { count = 1, apart = SPOTS_APART, tolerance = SPOT_TOLERANCE } = options;
  const grounds = roomGrounds(plan, model, probe);
  for (const shape of groupShapes(members, probe.radius, companionGap(plan))) {
    const places = searchGroups(grounds, shape, { count, apart, tolerance });
    if (places.length > 0) return places.map((place) => groupOf(place, shape.mutual));
  }
  return [];
}
