import type { Check } from '../../geometry/check/types.ts';
import { type RunningDimension, runningDimensions } from '../../geometry/dimension/running-dimensions.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import { checkFigures, figureWithLimit } from '../../geometry/messages/index.ts';
import type { Mm, Plan } from '../../geometry/plan/model.ts';
import { memoize } from '../../geometry/plane/memoize.ts';
import type { LevelRegion, Zone } from '../../geometry/region/types.ts';
import { type Stretch, visibleEdges } from '../../geometry/region/visible-edges.ts';

/** What the layers draw, worked out once for each level and region; and the words that stand on the drawing. */

export const drawnEdges = memoize(
  (region: LevelRegion): ReadonlyMap<Zone, readonly Stretch[]> => visibleEdges(region.zones),
);

/** So fine, mm, edges are drawn while a hand pulls at the plan: a few px of a large house. */
const WHILE_PULLED: Mm = 200;

/** The same a little coarser where zones are new: for a picture that is gone with the next move of the hand. */
export const pulledEdges = memoize(
  (region: LevelRegion): ReadonlyMap<Zone, readonly Stretch[]> => visibleEdges(region.zones, WHILE_PULLED),
);

const dimensionsOf = new WeakMap<
  LevelModel['rooms'],
  { readonly openings: LevelModel['openings']; readonly dimensions: readonly RunningDimension[] }
>();
/** Every length that is written along a face: worked out anew only where rooms or openings are others. */
export function drawnDimensions(model: LevelModel): readonly RunningDimension[] {
  const known = dimensionsOf.get(model.rooms);
  if (known?.openings === model.openings) return known.dimensions;
  const dimensions = runningDimensions(model);
  dimensionsOf.set(model.rooms, { openings: model.openings, dimensions });
  return dimensions;
}

/** The figure on a measured line: what was measured, and what is needed where it is short. */
export function measureWords(check: Check, plan: Plan): string {
  return check.verdict === 'blocked' ? figureWithLimit(check, plan) : checkFigures(check, plan).measured;
}
