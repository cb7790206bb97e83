import { buffer, difference, featureCollection, lineString, point, polygon, union } from '@turf/turf';
import { toEdges } from '../../../geometry/arrangement/rings.ts';
import { growZone, outlineOf } from '../../../geometry/arrangement/zone.ts';
import type { Body } from '../../../geometry/plane/body.ts';
import { flattened } from '../../../geometry/region/flatten.ts';
import type { Task } from '../task.ts';
import type { TimedRun } from './rival.ts';
import { areaOf } from './turf-ready.ts';

/** Degrees of a great circle per meter, with turf's radius of the earth, 6,371,008.8 m. */
const DEGREES = 180 / (Math.PI * 6371008.8);

/**
 * The usual pipeline with turf: buffer each thing by its distance, unite, subtract from each floor. Buffer measures on a sphere, so the plan
 * is placed around 0°, 0° with 1 mm as 1 m, where 20 m of house are distorted by a millionth. (At true size, buffer reduces small things to
 * their center.)
 */
export async function turfPlain() {
  return ({ rooms, raw }: Task): TimedRun => {
    const [x0, y0] = rooms[0]?.floor[0]?.[0]?.[0] ?? [0, 0];
    const toDegrees = ([x, y]: readonly [number, number]) => [(x - x0) * DEGREES, (y - y0) * DEGREES];
    const closed = (ring: readonly (readonly [number, number])[]) => [...ring, ...ring.slice(0, 1)].map(toDegrees);
    const things = raw.map(({ body, keep, top }) => ({
      ...thingOf(body, keep, closed, toDegrees),
      top: top && thingOf(top.body, -top.depth, closed, toDegrees),
    }));
    const floors = rooms.flatMap(({ floor }) => floor.map((rings) => polygon(rings.map(closed))));
    return () => {
      const zones = things.flatMap((thing) => {
        const zone = grown(thing);
        const free = thing.top && grown(thing.top);
        const rest = zone && free ? difference(featureCollection([zone, free])) : zone;
        return rest ? [rest] : [];
      });
      const blocked = union(featureCollection(zones));
      const results = floors.map((floor) => (blocked ? difference(featureCollection([floor, blocked])) : floor));
      return () => results.reduce((sum, result) => sum + areaOf(result), 0) / (DEGREES * DEGREES);
    };
  };
}

function grown({ feature, keep }: ReturnType<typeof thingOf>) {
  const zone = keep === 0 ? feature : buffer(feature, keep, { units: 'meters' });
  return zone && /Polygon/.test(zone.geometry.type) ? (zone as ReturnType<typeof polygon>) : null;
}

function thingOf(
  body: Body,
  keep: number,
  closed: (ring: readonly (readonly [number, number])[]) => number[][],
  toDegrees: (p: readonly [number, number]) => number[],
) {
  if (body.kind === 'disc') return { feature: point(toDegrees([body.x, body.y])), keep: keep + body.radius };
  const rings = body.kind === 'ring' ? [body.ring] : flattened([toEdges(outlineOf(growZone(body, 0)))], 1);
  const [outer = []] = rings;
  return { feature: outer.length < 3 ? lineString(outer.map(toDegrees)) : polygon(rings.map(closed)), keep };
}
