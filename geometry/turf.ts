import { booleanPointInPolygon, kinks, lineIntersect, lineString, point, polygon } from '@turf/turf';
import type { Ring } from './level/types.ts';
import type { XY } from './plan/model.ts';

/*
 * The only file that imports turf. Turf reads coordinates as degrees on a globe, so only what works by plain comparison and
 * multiplication is used here: point in polygon, line crossings, kinks, GeoJSON. Its area, length, distance,
 * buffer and nearest point are spherical and wrong on a plan; `docs` in DEVELOPERS.md has the figures.
 */

/**
 * Whether p lies in the area of rings, outer first, then holes; the boundary counts as inside. A hole of two corners (a wall
 * that stands free) encloses nothing and is passed over: turf takes no such ring.
 */
export function pointInRings(rings: readonly Ring[], p: XY): boolean {
  const [outer, ...holes] = rings;
  if (!outer || outer.length < 3) return false;
  const enclosing = [outer, ...holes.filter((hole) => hole.length >= 3)];
  return booleanPointInPolygon(point([...p]), polygon(enclosing.map(closed)));
}

/** Where the edges of a ring cross each other, mm; empty for a simple ring. */
export function ringKinks(ring: Ring): XY[] {
  return kinks(polygon([closed(ring)])).features.map(({ geometry }) => toXY(geometry.coordinates));
}

/** Where two polylines of at least two points cross or touch, mm. */
export function lineCrossings(a: readonly XY[], b: readonly XY[]): XY[] {
  const [s, t] = [lineString(a.map(toPosition)), lineString(b.map(toPosition))];
  return lineIntersect(s, t).features.map(({ geometry }) => toXY(geometry.coordinates));
}

/** Rings as a GeoJSON polygon in plan millimetres (which other programs may take for degrees). */
export function ringsToGeoJson(rings: readonly Ring[]): { type: 'Polygon'; coordinates: number[][][] } {
  return { type: 'Polygon', coordinates: polygon(rings.map(closed)).geometry.coordinates };
}

function closed(ring: Ring): number[][] {
  const [first] = ring;
  return first ? [...ring, first].map(toPosition) : [];
}

function toPosition([x, y]: XY): number[] {
  return [x, y];
}

function toXY(position: readonly number[]): XY {
  return [position[0] ?? 0, position[1] ?? 0];
}
