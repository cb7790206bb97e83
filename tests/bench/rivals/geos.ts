import initGeosJs from 'geos-wasm';
import type { Polygon, Task } from '../task.ts';
import type { TimedRun } from './rival.ts';

type Library = Awaited<ReturnType<typeof initGeosJs>>;
/** Address of a geometry in the library's memory. */
type Geom = number;

/** Type id of a multipolygon in GEOS. */
const MULTI_POLYGON = 6;

export async function openGeos(): Promise<Library> {
  const fail = (message: string) => {
    throw new Error(`GEOS: ${message}`);
  };
  return initGeosJs({ errorHandler: fail, noticeHandler: () => undefined });
}

/** Zones united room by room, then subtracted from the floor. Rooms are not united with each other. */
export async function geosByRoom() {
  const geos = await openGeos();
  return ({ rooms, zones }: Task): TimedRun => {
    const flat = zones.map(flatPolygons);
    const work = rooms.map(({ floor, near }) => ({
      floor: flatPolygons(floor),
      near: near.flatMap((i) => flat[i] ?? []),
    }));
    return () => {
      const results = work.map(({ floor, near }) => {
        const blocked = united(geos, near);
        const result = floorWithout(geos, floor, blocked);
        geos.GEOSGeom_destroy(blocked);
        return result;
      });
      return () => measured(geos, results);
    };
  };
}

/** All zones of the level united, then subtracted from each floor. */
export async function geosWhole() {
  const geos = await openGeos();
  return ({ rooms, zones }: Task): TimedRun => {
    const flat = zones.flatMap(flatPolygons);
    const floors = rooms.map(({ floor }) => flatPolygons(floor));
    return () => {
      const blocked = united(geos, flat);
      const results = floors.map((floor) => floorWithout(geos, floor, blocked));
      geos.GEOSGeom_destroy(blocked);
      return () => measured(geos, results);
    };
  };
}

export type FlatPolygon = readonly Float64Array[];

export function flatPolygons(polygons: readonly Polygon[]): FlatPolygon[] {
  return polygons.map((rings) => rings.map((ring) => Float64Array.from([...ring, ...ring.slice(0, 1)].flat())));
}

export function united(geos: Library, polygons: readonly FlatPolygon[]): Geom {
  const all = collected(geos, polygons);
  const union = geos.GEOSUnaryUnion(all);
  geos.GEOSGeom_destroy(all);
  return union;
}

export function floorWithout(geos: Library, floor: readonly FlatPolygon[], blocked: Geom): Geom {
  const whole = collected(geos, floor);
  const result = geos.GEOSDifference(whole, blocked);
  geos.GEOSGeom_destroy(whole);
  return result;
}

/** Returns the sum of the areas, mm², and frees the geometries. */
export function measured(geos: Library, results: readonly Geom[]): number {
  const out = geos.Module._malloc(8);
  let sum = 0;
  for (const result of results) {
    geos.GEOSArea(result, out);
    sum += geos.Module.HEAPF64[out / 8] as number;
    geos.GEOSGeom_destroy(result);
  }
  geos.Module._free(out);
  return sum;
}

function collected(geos: Library, polygons: readonly FlatPolygon[]): Geom {
  const parts = polygons.map((rings) => newPolygon(geos, rings));
  return withPointers(geos, parts, (at) => geos.GEOSGeom_createCollection(MULTI_POLYGON, at, parts.length));
}

function newPolygon(geos: Library, rings: FlatPolygon): Geom {
  const [outer, ...holes] = rings.map((ring) => geos.GEOSGeom_createLinearRing(newSequence(geos, ring)));
  if (outer === undefined) throw new Error('a polygon needs a ring');
  return withPointers(geos, holes, (at) => geos.GEOSGeom_createPolygon(outer, at, holes.length));
}

export function newSequence(geos: Library, flat: Float64Array): number {
  const buffer = geos.Module._malloc(flat.byteLength);
  geos.Module.HEAPF64.set(flat, buffer / 8);
  const sequence = geos.GEOSCoordSeq_copyFromBuffer(buffer, flat.length / 2, 0, 0);
  geos.Module._free(buffer);
  return sequence;
}

function withPointers<T>(geos: Library, pointers: readonly Geom[], use: (at: number) => T): T {
  if (pointers.length === 0) return use(0);
  const at = geos.Module._malloc(pointers.length * 4);
  geos.Module.HEAPU32.set(pointers, at / 4);
  const result = use(at);
  geos.Module._free(at);
  return result;
}
