import type { LevelModel } from '../level/types.ts';
import type { Mm, Plan, XY } from '../plan/model.ts';
import type { Probe } from '../region/types.ts';
import { SPOT_TOLERANCE, SPOTS_APART } from './best-spots.ts';
import { type Ground, roomGrounds } from './ground.ts';
import { groupOf, type SpotGroup } from './group.ts';
import { shapesFor } from './group-shapes.ts';
import { seekOnFurniture } from './on-furniture.ts';
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
  /** First the groups of which all stand on one piece of furniture, whatever they have to spare, then others. */
  readonly onFurniture?: boolean;
}

/**
 * The places of a level with the most to spare for two detectors side by side, the best first. Both meet every rule in plan and in
 * space and stand in the same room, rim to rim at the best of the gap of `companionGap`, in whatever direction is best. Where no
 * two fit so, at the least gap, else at the greatest, else as far apart as the profile's own gap allows.
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
  const shapes = shapesFor(plan, members, probe.radius);
  const seek = (grounds: readonly Ground[], taken: readonly SpotGroup[]): SpotGroup[] => {
    for (const shape of shapes) {
      const search = { count: count - taken.length, apart, tolerance, taken: taken.map(({ at }) => middleOf(at)) };
      const places = searchGroups(grounds, shape, search);
      if (places.length > 0) return places.map((place) => groupOf(place, shape.mutual));
    }
    return [];
  };
  const carried = onFurniture ? seekOnFurniture(plan, model, probe, count, seek) : [];
  return [...carried, ...seek(roomGrounds(plan, model, probe), carried)];
}

function middleOf(at: readonly XY[]): XY {
  const mean = (k: 0 | 1) => at.reduce((sum, point) => sum + point[k], 0) / at.length;
  return [mean(0), mean(1)];
}
