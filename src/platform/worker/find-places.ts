import { levelBar } from '../../../geometry/check/level.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Mm, Plan, XY } from '../../../geometry/plan/model.ts';
import type { Probe } from '../../../geometry/region/types.ts';
import { bestGroups } from '../../../geometry/search/best-pairs.ts';
import { bestSpots } from '../../../geometry/search/best-spots.ts';
import type { Limit } from '../../../geometry/search/field/primitives.ts';

/** What is looked for on a level. */
export interface PlaceQuery {
  readonly probe: Probe;
  /** 1 for single places; more for detectors side by side. */
  readonly members: number;
  readonly count: number;
  readonly onFurniture: boolean;
}

/** A good place, as plain data that a worker can hand over. Lengths in mm. */
export interface BestPlace {
  readonly axes: readonly XY[];
  readonly base: Mm;
  /** Id of the object that carries it; null where nothing was asked for to carry it. */
  readonly on: string | null;
  /** Infinite where no rule finds anything to measure. */
  readonly margin: Mm;
  readonly limitedBy: Limit | null;
  /** Whether each keeps the gap to every other; else only to its neighbours in a row. */
  readonly mutual: boolean;
}

/** So many places are given: about as many as a tester walks to. */
export const PLACES = 5;

/**
 * The best places of a level, the best first. None on a level that is not the one to test, whatever its distances. Takes up to some
 * hundred ms on a large level with much furniture: not for the middle of a gesture.
 */
export function findPlaces(plan: Plan, levelId: string, wanted: PlaceQuery): readonly BestPlace[] {
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

/** Everything that the answer hangs on. Detectors and words are not among it: to move one asks for nothing new. */
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
    plan.site.purpose,
    probe,
    members,
    count,
    onFurniture,
  ];
}
