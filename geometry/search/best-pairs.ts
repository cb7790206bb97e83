import type { LevelModel } from '../level/types.ts';
import type { Mm, Plan, XY } from '../plan/model.ts';
import { assert } from '../plane/assert.ts';
import type { Probe } from '../region/types.ts';
import { SPOT_TOLERANCE, SPOTS_APART } from './best-spots.ts';
import { type Ground, roomGrounds } from './ground.ts';
import { groupOf, type SpotGroup } from './group.ts';
import { pairAtAnyGap, shapesFor } from './group-shapes.ts';
import { searchOnFurniture } from './on-furniture.ts';
import { searchGroups } from './search-groups.ts';

export interface SpotPair extends SpotGroup {
  readonly at: readonly [XY, XY];
}

export interface GroupOptions {
  /** Number of groups; fewer are returned if there are no more. */
  readonly count?: number;
  /** Least distance between the middles of two groups, mm. */
  readonly apart?: Mm;
  /** How far below the optimum the margin of a group may be, mm. */
  readonly tolerance?: Mm;
  /** Returns first the groups that stand on one object, whatever their margin, then others. */
  readonly onFurniture?: boolean;
  /**
   * Pairs at whatever distance within the profile's own gap leaves the greatest margin, instead of the preferred gap. Mostly
   * this is the least distance, which leaves no margin in the gap itself.
   */
  readonly anyGap?: boolean;
}

/**
 * Returns the places of a level with the greatest margin for two detectors side by side, best first. Both meet every
 * rule in plan and in space and are in the same room, rim to rim at the best gap of `companionGap`, in any direction.
 * If no pair fits at that gap: at the least gap, else at the greatest, else anywhere within the profile's own gap.
 */
export function bestPairs(plan: Plan, model: LevelModel, probe: Probe, options: GroupOptions = {}): SpotPair[] {
  return bestGroups(plan, model, probe, 2, options).map((group) => ({ ...group, at: group.at as [XY, XY] }));
}

/** Same as `bestPairs` for two or more detectors: see `groupShapes` for their arrangement. */
export function bestGroups(
  plan: Plan,
  model: LevelModel,
  probe: Probe,
  members: number,
  options: GroupOptions = {},
): SpotGroup[] {
  const { count = 1, apart = SPOTS_APART, tolerance = SPOT_TOLERANCE, onFurniture = false, anyGap = false } = options;
  assert(!anyGap || members === 2, 'only a pair is looked for at any gap');
  const shapes = anyGap ? [pairAtAnyGap(plan, probe.radius)] : shapesFor(plan, members, probe.radius);
  const search = (grounds: readonly Ground[], taken: readonly SpotGroup[]): SpotGroup[] => {
    for (const shape of shapes) {
      const search = { count: count - taken.length, apart, tolerance, taken: taken.map(({ at }) => middleOf(at)) };
      const places = searchGroups(grounds, shape, search);
      if (places.length > 0) return places.map((place) => groupOf(place, shape.mutual));
    }
    return [];
  };
  const onObjects = onFurniture ? searchOnFurniture(plan, model, probe, count, search) : [];
  return [...onObjects, ...search(roomGrounds(plan, model, probe), onObjects)];
}

function middleOf(at: readonly XY[]): XY {
  const mean = (k: 0 | 1) => at.reduce((sum, point) => sum + point[k], 0) / at.length;
  return [mean(0), mean(1)];
}
