import { type RunningDimension, runningDimensions } from '../../geometry/dimension/running-dimensions.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import { memoize, memoizeLatest } from '../../geometry/plane/memoize.ts';
import type { LevelRegion, Zone } from '../../geometry/region/types.ts';
import { newZones, type Stretch, visibleEdges, visibleEdgesInSteps } from '../../geometry/region/visible-edges.ts';
import { useShown } from '../state/shown.ts';

type Edges = ReadonlyMap<Zone, readonly Stretch[]>;

/**
 * Most new zones that are outlined at once. More, as of a plan of 5,000 features that was just opened, are outlined in slices, so that the
 * sheet is shown and takes input before.
 */
const AT_ONCE = 1500;
const SLICE_MS = 8;
const NONE: Edges = new Map();

const edgesOf = new WeakMap<LevelRegion, Edges>();
/** The region that is outlined in slices. */
let sliced: LevelRegion | null = null;

/**
 * Returns the visible stretches of the outlines of a region's zones, computed once for each region; empty while they are outlined in
 * slices.
 */
export function drawnEdges(region: LevelRegion): Edges {
  const known = edgesOf.get(region);
  if (known) return known;
  if (newZones(region.zones) > AT_ONCE) {
    if (sliced !== region) outlineInSlices(region);
    return NONE;
  }
  const edges = visibleEdges(region.zones);
  edgesOf.set(region, edges);
  return edges;
}

/** Whether the outlines of a region's zones are computed. */
export const isOutlined = (region: LevelRegion): boolean => drawnEdges(region) !== NONE;

function outlineInSlices(region: LevelRegion): void {
  sliced = region;
  const steps = visibleEdgesInSteps(region.zones);
  const slice = () => {
    // Another region is outlined by now.
    if (sliced !== region) return;
    const end = performance.now() + SLICE_MS;
    while (performance.now() < end) {
      const { done, value } = steps.next();
      if (!done) continue;
      sliced = null;
      edgesOf.set(region, value);
      // Makes the pictures that need the outlines read them again.
      useShown.setState((shown) => ({ ...shown }));
      return;
    }
    setTimeout(slice);
  };
  setTimeout(slice);
}

const dimensionsOf = memoize((_: LevelModel['rooms']) =>
  memoizeLatest(runningDimensions, ({ openings }: LevelModel) => [openings]),
);
/** Returns every length that is written along a face; computed again only if rooms or openings have changed. */
export function drawnDimensions(model: LevelModel): readonly RunningDimension[] {
  return dimensionsOf(model.rooms)(model);
}
