import Flatbush from 'flatbush';
import { ringExtent } from './extent.ts';
import type { Mm, XY } from './types.ts';

/**
 * Returns the indices, in no order, of the segments whose bounding boxes come within `reach` mm of the bounding box of the points. `filter`
 * excludes indices.
 */
export type FindNear = (points: readonly XY[], reach: Mm, filter?: (place: number) => boolean) => number[];

/** Returns a search among segments, or among points given as lists of one. */
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
