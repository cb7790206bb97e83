import { levelBar } from '../../../geometry/check/level.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { bestGroups } from '../../../geometry/search/best-pairs.ts';
import { bestSpots } from '../../../geometry/search/best-spots.ts';
import { setSunSource } from '../../../geometry/sun/sun-floor.ts';
import { sweptArea } from '../../../geometry/sun/swept.ts';
import type { BestPlace, PlaceQuery } from './place-query.ts';

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
