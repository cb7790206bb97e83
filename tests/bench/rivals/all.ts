import { clipperTs } from './clipper-ts.ts';
import { clipperWasm } from './clipper-wasm.ts';
import { geosByRoom, geosWhole } from './geos.ts';
import type { Rival } from './rival.ts';
import { turfPlain } from './turf-plain.ts';
import { turfByRoom, turfWhole } from './turf-ready.ts';

/** Where there are two ways to use a library, both: the faster one counts. */
export const RIVALS: readonly Rival[] = [
  {
    id: 'turf-plain',
    name: 'turf: buffer, union, difference',
    library: '@turf/turf',
    load: turfPlain,
  },
  {
    id: 'turf-whole',
    name: 'turf: union, difference of ready zones, all at once',
    library: '@turf/turf',
    load: turfWhole,
  },
  {
    id: 'turf-room',
    name: 'turf: union, difference of ready zones, by room',
    library: '@turf/turf',
    load: turfByRoom,
  },
  {
    id: 'clipper-wasm',
    name: 'Clipper2 (WebAssembly), ready zones, by room',
    library: 'clipper2-wasm',
    load: clipperWasm,
  },
  {
    id: 'clipper-ts',
    name: 'Clipper2 (TypeScript), ready zones, by room',
    library: 'clipper2-ts',
    load: clipperTs,
  },
  {
    id: 'geos-whole',
    name: 'GEOS (WebAssembly), ready zones, all at once',
    library: 'geos-wasm',
    load: geosWhole,
  },
  {
    id: 'geos-room',
    name: 'GEOS (WebAssembly), ready zones, by room',
    library: 'geos-wasm',
    load: geosByRoom,
  },
];

export function rivalOf(id: string): Rival {
  const rival = RIVALS.find((one) => one.id === id);
  if (!rival) throw new Error(`no library is called ${id}`);
  return rival;
}
