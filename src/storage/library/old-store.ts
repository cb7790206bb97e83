import { openDB } from 'idb';

/**
 * What the first version of Stillspot kept: one plan under "work", twelve that had been put away under "shelf", settings. All
 * of it comes over to the shelf, and only then goes from its old place. Whatever stops it half way, nothing is lost: what came
 * over already is recognised the next time.
 */
export const OLD = { database: 'stillspot', store: 'plans', unsavedCopies: 'stillspot-last-words' } as const;

/** Null where there is none: it is not made for being asked for. */
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
