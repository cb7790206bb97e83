import { type RunningDimension, runningDimensions } from '../../geometry/dimension/running-dimensions.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import { memoize, memoizeLatest } from '../../geometry/plane/memoize.ts';
import type { LevelRegion, Zone } from '../../geometry/region/types.ts';
import { type Stretch, visibleEdges } from '../../geometry/region/visible-edges.ts';

/** What is seen of the outlines of a region's zones, computed once for each region. */
export const drawnEdges = memoize(
  (region: LevelRegion): ReadonlyMap<Zone, readonly Stretch[]> => visibleEdges(region.zones),
);

const dimensionsOf = memoize((_: LevelModel['rooms']) =>
  memoizeLatest(runningDimensions, ({ openings }: LevelModel) => [openings]),
);
/** Returns every length that is written along a face; computed again only where rooms or openings have changed. */
export function drawnDimensions(model: LevelModel): readonly RunningDimension[] {
  return dimensionsOf(model.rooms)(model);
}
