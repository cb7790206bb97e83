import { levelBar } from '../../../geometry/check/level.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Mm, Plan, XY } from '../../../geometry/plan/model.ts';
import type { Probe } from '../../../geometry/region/types.ts';
import { bestGroups } from '../../../geometry/search/best-pairs.ts';
import { bestSpots } from '../../../geometry/search/best-spots.ts';
import type { Limit } from '../../../geometry/search/field/primitives.ts';
import { setSunSource } from '../../../geometry/sun/sun-floor.ts';
import { sweptArea } from '../../../geometry/sun/swept.ts';
import { exposureEnd } from '../../../geometry/sun/times.ts';

/** Parameters of the search on a level. */
export interface PlaceQuery {
  readonly probe: Probe;
  /** Number of collocated detectors; 1 for single places. */
  readonly members: number;
  readonly count: number;
  readonly onFurniture: boolean;
}

/** A place as structured-cloneable data. Lengths in mm. */
export interface BestPlace {
  readonly axes: readonly XY[];
  readonly base: Mm;
  /** Id of the furniture that it is on; null if none was requested. */
  readonly on: string | null;
  /** Infinite if no rule has anything to measure. */
  readonly margin: Mm;
  readonly limitedBy: Limit | null;
  /** Whether every two members keep the distance of a pair; otherwise only neighbors in a row do. */
  readonly mutual: boolean;
}

/** Default number of places: about as many as a technician visits. */
export const PLACES = 5;

/**
 * Returns the best places of a level, the best first; none on a level that must not be tested. Takes up to a few hundred ms on a large
 * level with much furniture: not for use during a drag.
 */
export function findPlaces(plan: Plan, levelId: string, wanted: PlaceQuery): readonly BestPlace[] {
  setSunSource(sweptArea);
  const level = plan.levels.find(({ id }) => id === levelId);
  if (!level || levelBar(plan, level)) return [];
  const { probe, members, count, onFurniture } = wanted;
  const model = buildLevel(level);
  const found: readonly BestPlace[] =
    members > 1
      ? bestGroups(plan, model, probe, members, { count, onFurniture }).map((group) => ({ ...group, axes: group.at }))
      : bestSpots(plan, model, probe, { count, onFurniture }).map((spot) => {
          return { ...spot, axes: [spot.at], mutual: true };
        });
  return found.map(({ axes, base, on, margin, limitedBy, mutual }) => ({ axes, base, on, margin, limitedBy, mutual }));
}

/** Returns everything that the result depends on, for memoization. It does not depend on detectors and texts. */
export function searchInputs(
  plan: Plan,
  levelId: string,
  { probe, members, count, onFurniture }: PlaceQuery,
): readonly unknown[] {
  const level = plan.levels.find(({ id }) => id === levelId);
  const whichLevel = plan.levels.flatMap(({ id, name, order, living, ground }) => [id, name, order, living, ground]);
  return [
    levelId,
    level?.walls,
    level?.openings,
    level?.rooms,
    level?.fixtures,
    level?.objects,
    level?.ceiling,
    ...whichLevel,
    plan.protocol,
    plan.site,
    plan.visit.start,
    exposureEnd(plan.visit),
    probe,
    members,
    count,
    onFurniture,
  ];
}
