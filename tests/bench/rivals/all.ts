import type { Rival } from './rival.ts';

/**
 * If there are two ways to use a library, both are listed, and the faster one counts. A library is loaded only on request, so
 * that no other process waits for it.
 */
export const RIVALS: readonly Rival[] = [
  {
    id: 'turf-plain',
    name: 'turf: buffer, union, difference',
    library: '@turf/turf',
    load: async () => (await import('./turf-plain.ts')).turfPlain(),
  },
  {
    id: 'turf-whole',
    name: 'turf: union, difference of ready zones, all at once',
    library: '@turf/turf',
    load: async () => (await import('./turf-ready.ts')).turfWhole(),
  },
  {
    id: 'turf-room',
    name: 'turf: union, difference of ready zones, by room',
    library: '@turf/turf',
    load: async () => (await import('./turf-ready.ts')).turfByRoom(),
  },
  {
    id: 'clipper-wasm',
    name: 'Clipper2 (WebAssembly), ready zones, by room',
    library: 'clipper2-wasm',
    load: async () => (await import('./clipper-wasm.ts')).clipperWasm(),
  },
  {
    id: 'clipper-ts',
    name: 'Clipper2 (TypeScript), ready zones, by room',
    library: 'clipper2-ts',
    load: async () => (await import('./clipper-ts.ts')).clipperTs(),
  },
  {
    id: 'geos-whole',
    name: 'GEOS (WebAssembly), ready zones, all at once',
    library: 'geos-wasm',
    load: async () => (await import('./geos.ts')).geosWhole(),
  },
  {
    id: 'geos-room',
    name: 'GEOS (WebAssembly), ready zones, by room',
    library: 'geos-wasm',
    load: async () => (await import('./geos.ts')).geosByRoom(),
  },
];

export function rivalOf(id: string): Rival {
  const rival = RIVALS.find((one) => one.id === id);
  if (!rival) throw new Error(`no library is called ${id}`);
  return rival;
}
