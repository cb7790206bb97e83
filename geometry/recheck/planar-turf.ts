import {
  booleanPointInPolygon,
  featureCollection,
  lineString,
  point,
  polygon,
  polygonize as turfPolygonize,
} from '@turf/turf';
import type { XY } from '../plan/model.ts';

/*
 * What the second computation takes from turf: the parts that compare and multiply, and so hold on a plan in mm. Turf's distances,
 * areas and buffers read coordinates as degrees on a globe.
 */

/** Corners of a simple polygon in order, the first not repeated, at least three. */
export type Ring = readonly XY[];

/** Whether p lies in the ring; its outline counts as inside. */
export function ringHolds(ring: Ring, p: XY): boolean {
  return booleanPointInPolygon(point([p[0], p[1]]), polygon([closed(ring)]));
}

/** Every ring that the stretches enclose. They may meet at their ends only. */
export function polygonize(stretches: readonly (readonly [XY, XY])[]): Ring[] {
  if (stretches.length < 3) return [];
  const lines = stretches.map(([a, b]) => lineString([[...a], [...b]]));
  return turfPolygonize(featureCollection(lines)).features.map(({ geometry }) => opened(geometry.coordinates[0] ?? []));
}

const closed = (ring: Ring): number[][] => [...ring, ring[0] as XY].map(([x, y]) => [x, y]);

const opened = (positions: readonly number[][]): Ring => positions.slice(0, -1).map(([x = 0, y = 0]): XY => [x, y]);
