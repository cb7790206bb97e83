import { type RunningDimension, runningDimensions } from '../../geometry/dimension/running-dimensions.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Mm } from '../../geometry/plan/model.ts';
import { memoize, memoizeLatest } from '../../geometry/plane/memoize.ts';
import type { LevelRegion, Zone } from '../../geometry/region/types.ts';
import { type Stretch, visibleEdges } from '../../geometry/region/visible-edges.ts';

/** What is seen of the outlines of a region's zones, computed once for each region. */
export const drawnEdges = memoize(
  (region: LevelRegion): ReadonlyMap<Zone, readonly Stretch[]> => visibleEdges(region.zones),
);

/** Step along an edge during a drag, mm: a few px of a large house. */
const COARSE_STEP: Mm = 200;

/** The same, coarser where zones are new: for a picture that is gone with the next move of the pointer. */
export const coarseEdges = memoize(
  (region: LevelRegion): ReadonlyMap<Zone, readonly Stretch[]> => visibleEdges(region.zones, COARSE_STEP),
);

const dimensionsOf = memoize((_: LevelModel['rooms']) =>
  memoizeLatest(runningDimensions, ({ openings }: LevelModel) => [openings]),
);
/** Returns every length that is written along a face; computed again only where rooms or openings have changed. */
export function drawnDimensions(model: LevelModel): readonly RunningDimension[] {
  return dimensionsOf(model.rooms)(model);
}
