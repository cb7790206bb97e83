import { difference, featureCollection, multiPolygon, polygon, union } from '@turf/turf';
import { signedArea } from '../../../geometry/plane/ring.ts';
import type { Polygon, Task } from '../task.ts';
import type { TimedRun } from './rival.ts';

type Result = ReturnType<typeof difference>;

/** Zones united room by room, then subtracted from the room's floor. Both operations use plane coordinates, so lengths stay mm. */
export async function turfByRoom() {
  return ({ rooms, zones }: Task): TimedRun => {
    const features = zones.map(multi);
    const work = rooms.map(({ floor, near }) => ({ floor: multi(floor), near: near.map((i) => features[i]) }));
    return () => {
      const results = work.map(({ floor, near }) => without(floor, near as ReturnType<typeof multi>[]));
      return () => results.reduce((sum, result) => sum + areaOf(result), 0);
    };
  };
}

/** All zones of the level united, then subtracted from each room's floor. */
export async function turfWhole() {
  return ({ rooms, zones }: Task): TimedRun => {
    const features = zones.map(multi);
    const floors = rooms.map(({ floor }) => multi(floor));
    return () => {
      const blocked = unite(features);
      const results = floors.map((floor) => (blocked ? difference(featureCollection([floor, blocked])) : floor));
      return () => results.reduce((sum, result) => sum + areaOf(result), 0);
    };
  };
}

function without(floor: ReturnType<typeof multi>, zones: ReturnType<typeof multi>[]): Result {
  const blocked = unite(zones);
  return blocked ? difference(featureCollection([floor, blocked])) : floor;
}

/** Turf's union needs at least two features. */
function unite(zones: ReturnType<typeof multi>[]): Result {
  return zones.length > 1 ? union(featureCollection(zones)) : (zones[0] ?? null);
}

function multi(polygons: readonly Polygon[]) {
  return multiPolygon(polygons.map((rings) => polygon(rings.map(closed)).geometry.coordinates));
}

function closed(ring: Polygon[number]): number[][] {
  return [...ring, ...ring.slice(0, 1)].map(([x, y]) => [x, y]);
}

/** Returns the area in the square of the coordinates' unit: turf's own area is that on a sphere. */
export function areaOf(result: Result): number {
  if (!result) return 0;
  const { type, coordinates } = result.geometry;
  const polygons = type === 'Polygon' ? [coordinates] : coordinates;
  let sum = 0;
  for (const rings of polygons) {
    rings.forEach((ring, i) => {
      const size = Math.abs(signedArea(ring.slice(0, -1).map(([x = 0, y = 0]) => [x, y] as const)));
      sum += i === 0 ? size : -size;
    });
  }
  return sum;
}
