import Flatbush from 'flatbush';
import { ringExtent } from './extent.ts';
import type { Mm, XY } from './types.ts';

/**
 * Returns the segments whose bounding boxes come within a distance of that of some points: their places in the list, in no order. `filter`
 * leaves places out.
 */
export type FindNear = (points: readonly XY[], reach: Mm, filter?: (place: number) => boolean) => number[];

/** Returns a search among segments, or points. */
export function nearbyOf(segments: readonly (readonly XY[])[]): FindNear {
  if (segments.length === 0) return () => [];
  const index = new Flatbush(segments.length);
  for (const segment of segments) {
    const { minX, minY, maxX, maxY } = ringExtent(segment);
    index.add(minX, minY, maxX, maxY);
  }
  index.finish();
  return (points, reach, filter) => {
    const { minX, minY, maxX, maxY } = ringExtent(points);
    return index.search(minX - reach, minY - reach, maxX + reach, maxY + reach, filter);
  };
}
