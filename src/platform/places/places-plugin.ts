import type { Plugin } from 'vite';
import { packPlaces, zipRows } from './pack-places.ts';

/** Returns the plug-in that fills `packed-places.ts` with the table of ZIP codes. */
export function placesPlugin(): Plugin {
  return {
    name: 'stillspot-places',
    load: (id) =>
      /[\\/]platform[\\/]places[\\/]packed-places\.ts$/.test(id)
        ? `export const PACKED = ${JSON.stringify(packPlaces(zipRows()))};`
        : null,
  };
}
