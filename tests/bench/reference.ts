import { toEdges } from '../../geometry/arrangement/rings.ts';
import { growZone, outlineOf } from '../../geometry/arrangement/zone.ts';
import type { Body } from '../../geometry/plane/body.ts';
import { flattened } from '../../geometry/region/flatten.ts';
import { flatPolygons, floorWithout, measured, newSequence, openGeos, united } from './rivals/geos.ts';
import type { Task } from './task.ts';

/** Chords per quarter turn: a radius of 7 ft is then right to 0.04 mm. */
const PER_QUADRANT = 128;

/**
 * Returns the area by GEOS when it also makes the zones itself, with fine chords, mm². All areas of the tables are compared with this
 * independent result.
 */
export async function referenceArea({ rooms, raw }: Task): Promise<number> {
  const geos = await openGeos();
  const grown = (body: Body, keep: number) => {
    const bare = geometryOf(geos, body);
    const zone = geos.GEOSBuffer(bare, body.kind === 'disc' ? keep + body.radius : keep, PER_QUADRANT);
    geos.GEOSGeom_destroy(bare);
    return zone;
  };
  const bodies = raw.map(({ body, keep, top }) => {
    const zone = grown(body, keep);
    if (top === null) return zone;
    const free = grown(top.body, -top.depth);
    const rest = geos.GEOSDifference(zone, free);
    geos.GEOSGeom_destroy(zone);
    geos.GEOSGeom_destroy(free);
    return rest;
  });
  const results = rooms.map(({ floor, near }) => {
    const zones = near.map((i) => geos.GEOSGeom_clone(bodies[i] as number));
    const at = geos.Module._malloc(Math.max(4, zones.length * 4));
    geos.Module.HEAPU32.set(zones, at / 4);
    const all = geos.GEOSGeom_createCollection(7, at, zones.length);
    geos.Module._free(at);
    const blocked = geos.GEOSUnaryUnion(all);
    geos.GEOSGeom_destroy(all);
    const result = floorWithout(geos, flatPolygons(floor), blocked);
    geos.GEOSGeom_destroy(blocked);
    return result;
  });
  for (const body of bodies) geos.GEOSGeom_destroy(body);
  return measured(geos, results);
}

/** The body without its distance; a disc as its center. */
function geometryOf(geos: Awaited<ReturnType<typeof openGeos>>, body: Body): number {
  if (body.kind === 'disc') return geos.GEOSGeom_createPointFromXY(body.x, body.y);
  const rings = body.kind === 'ring' ? [body.ring] : flattened([toEdges(outlineOf(growZone(body, 0)))], 1e-3);
  const [outer = []] = rings;
  if (outer.length < 3) return geos.GEOSGeom_createLineString(newSequence(geos, Float64Array.from(outer.flat())));
  return united(geos, flatPolygons([rings]));
}
