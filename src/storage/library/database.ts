import { type DBSchema, type IDBPDatabase, type IDBPTransaction, openDB } from 'idb';
import type { PlanPreview, PlanSummary, PlanText, PlanVersion, VersionReason } from './records.ts';

/**
 * The browser's store (IndexedDB). Its names are stored data and must not change. Summary, text and preview of a plan are separate records,
 * so that the list is read without the plans.
 */
interface Library extends DBSchema {
  cards: { key: string; value: PlanSummary; indexes: { hash: string } };
  texts: { key: string; value: PlanText; indexes: { long: string } };
  versions: { key: VersionKey; value: PlanVersion; indexes: { long: string } };
  /** Long texts by their name, for all plans and versions. */
  longs: { key: string; value: string };
  looks: { key: string; value: PlanPreview };
  settings: { key: string; value: unknown };
}

/** Plan, time and reason: enough to decide which versions are deleted without reading them. */
type VersionKey = [plan: string, at: number, why: VersionReason];

export type StoreName = 'cards' | 'texts' | 'versions' | 'longs' | 'looks' | 'settings';
export type LibraryDatabase = IDBPDatabase<Library>;
export type LibraryWrite = IDBPTransaction<Library, StoreName[], 'readwrite'>;
export const ALL_STORES: StoreName[] = ['cards', 'texts', 'versions', 'longs', 'looks', 'settings'];
/** The stores that a change of a plan writes to. */
export const PLAN_STORES: StoreName[] = ['cards', 'texts', 'versions', 'longs'];

const NAME = 'stillspot-shelf';
const VERSION = 1;

let opening: Promise<LibraryDatabase> | null = null;

/** Returns the open database. A failure to open it rejects for every caller, and the next call tries again. */
export function database(): Promise<LibraryDatabase> {
  opening ??= open();
  return opening;
}

/** Makes the next call open the database again: after a failure, or because the browser closed it. */
function forgetDatabase(): void {
  opening = null;
}

/** Closes the database, for tests. */
export async function closeDatabase(): Promise<void> {
  (await opening)?.close();
  forgetDatabase();
}

async function open(): Promise<LibraryDatabase> {
  try {
    return await openDB<Library>(NAME, VERSION, {
      upgrade: (made) => {
        made.createObjectStore('cards', { keyPath: 'id' }).createIndex('hash', 'hash');
        made.createObjectStore('texts', { keyPath: 'id' }).createIndex('long', 'text.long', { multiEntry: true });
        made
          .createObjectStore('versions', { keyPath: ['plan', 'at', 'why'] })
          .createIndex('long', 'text.long', { multiEntry: true });
        made.createObjectStore('longs');
        made.createObjectStore('looks', { keyPath: 'id' });
        made.createObjectStore('settings');
      },
      // A newer version of the app in another tab waits for this connection to close; later changes here show as not saved.
      blocking: (_current, _next, event) => {
        (event.target as IDBDatabase).close();
        forgetDatabase();
      },
      terminated: forgetDatabase,
    });
  } catch (error) {
    forgetDatabase();
    throw error;
  }
}

/** Runs `make` in one transaction, which is committed whole or not at all. Throws the browser's error; see `troubleInWords`. */
export async function change<T>(stores: StoreName[], make: (write: LibraryWrite) => Promise<T>): Promise<T> {
  const library = await database();
  let write: LibraryWrite;
  try {
    write = library.transaction(stores, 'readwrite') as LibraryWrite;
  } catch (error) {
    forgetDatabase(); // the browser has closed the connection
    throw error;
  }
  // Avoids an unhandled rejection: `done` of an aborted transaction rejects, and is not awaited if `make` throws.
  write.done.catch(() => undefined);
  try {
    const made = await make(write);
    await write.done;
    return made;
  } catch (error) {
    try {
      write.abort();
    } catch {
      // The transaction was aborted already.
    }
    throw write.error ?? error;
  }
}

/** Returns why the browser did not store a plan, and what to do, in words. */
export function troubleInWords(error: unknown): string {
  const name = error instanceof DOMException ? error.name : '';
  if (name === 'QuotaExceededError') {
    return 'The storage of this browser is full. Save the plan as a file, then free some space.';
  }
  if (name === 'VersionError') {
    return 'A newer Stillspot has been used in this browser. Save the plan as a file, then reload this page.';
  }
  if (name === 'SecurityError' || name === 'InvalidStateError' || typeof indexedDB === 'undefined') {
    return 'This browser stores nothing for this page, as in a private window. Save the plan as a file before you close it.';
  }
  return 'The browser did not store the copy. Save the plan as a file.';
}
