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
 * The parts of turf that the second computation uses. They only compare and multiply, and so are valid for a plan in
 * mm. Turf's distances, areas and buffers read coordinates as degrees on a globe.
 */

/** The corners of a simple polygon in order, at least three, the first not repeated. */
export type Ring = readonly XY[];

/** Returns whether p is in the ring; its boundary counts as inside. */
export function ringContains(ring: Ring, p: XY): boolean {
  return booleanPointInPolygon(point([p[0], p[1]]), polygon([closed(ring)]));
}

/** Returns every ring that the stretches enclose. They may meet at their ends only. */
export function polygonize(stretches: readonly (readonly [XY, XY])[]): Ring[] {
  if (stretches.length < 3) return [];
  const lines = stretches.map(([a, b]) => lineString([[...a], [...b]]));
  return turfPolygonize(featureCollection(lines)).features.map(({ geometry }) => opened(geometry.coordinates[0] ?? []));
}

const closed = (ring: Ring): number[][] => [...ring, ring[0] as XY].map(([x, y]) => [x, y]);

const opened = (positions: readonly number[][]): Ring => positions.slice(0, -1).map(([x = 0, y = 0]): XY => [x, y]);
