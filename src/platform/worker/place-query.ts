import type { Mm, Plan, XY } from '../../../geometry/plan/model.ts';
import type { Probe } from '../../../geometry/region/types.ts';
import type { Limit } from '../../../geometry/search/field/primitives.ts';
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
