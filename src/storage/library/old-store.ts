import { openDB } from 'idb';

/**
 * The store of the first version of Stillspot: one plan under "work", twelve earlier ones under "shelf", settings. All of it is
 * copied into the library before it is deleted, so an interruption loses nothing: plans that were copied already are recognized.
 */
export const OLD = { database: 'stillspot', store: 'plans', unsavedCopies: 'stillspot-last-words' } as const;

/** Returns null where there is none, without creating it. */
export async function openOld() {
  try {
    return await openDB(OLD.database, undefined, {
      upgrade: (_made, _old, _new, write) => {
        write.done.catch(() => undefined);
        write.abort();
      },
    });
  } catch (error) {
    if (error instanceof DOMException && error.name === 'AbortError') return null;
    throw error;
  }
}
