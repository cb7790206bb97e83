import { change, database, type LibraryWrite, PLAN_STORES } from './database.ts';
import type { PlanText, PlanVersion, VersionReason } from './records.ts';
import { outdatedVersions } from './retention.ts';
import { deleteUnusedTexts, storeText, wholeText } from './stored-texts.ts';

/** Stores the stored state of the plan as a version. The same state is stored once for each reason. */
export async function keepVersion(
  write: LibraryWrite,
  old: PlanText,
  hash: string,
  why: VersionReason,
  now: number,
): Promise<void> {
  const store = write.objectStore('versions');
  await store.put({ plan: old.id, at: old.savedAt, why, hash, text: old.text });
  await deleteOutdated(write, old.id, now);
}

/**
 * Stores a text that is not the stored plan, for example that of another tab, as a version of the plan. The same text is stored once for
 * each reason. Returns false if the store cannot be written.
 */
export async function keepTextAsVersion(id: string, text: string, at: number, why: VersionReason): Promise<boolean> {
  try {
    await change(PLAN_STORES, async (write) => {
      const settled = await storeText(write, text);
      const there = await write.objectStore('versions').getAll(versionsOf(id));
      if (there.some((version) => version.hash === settled.hash && version.why === why)) return;
      await write.objectStore('versions').put({ plan: id, at, why, ...settled });
      await deleteOutdated(write, id, Date.now());
    });
    return true;
  } catch {
    return false;
  }
}

/**
 * Stores the stored state of the plan as a version, for example because it is saved as a file. Returns false if there is no such plan, or
 * if the store cannot be written.
 */
export async function markVersion(id: string, why: VersionReason): Promise<boolean> {
  try {
    return await change(PLAN_STORES, async (write) => {
      const [text, summary] = await Promise.all([
        write.objectStore('texts').get(id),
        write.objectStore('cards').get(id),
      ]);
      if (!text || !summary) return false;
      await keepVersion(write, text, summary.hash, why, Date.now());
      await write.objectStore('cards').put({ ...summary, versionAt: text.savedAt });
      return true;
    });
  } catch {
    return false; // the plan itself is safe; only this version is not
  }
}

async function deleteOutdated(write: LibraryWrite, id: string, now: number): Promise<void> {
  const store = write.objectStore('versions');
  const keys = await store.getAllKeys(versionsOf(id));
  const gone = outdatedVersions(
    keys.map((key) => ({ at: key[1], marked: key[2] !== 'rest', key })),
    now,
  );
  for (const { key } of gone) {
    const version = await store.get(key);
    await store.delete(key);
    await deleteUnusedTexts(write, version?.text.long ?? []);
  }
}

export function versionsOf(id: string): IDBKeyRange {
  return IDBKeyRange.bound([id], [id, []]);
}

/** An earlier state of a plan with its whole text; the text is null if one of its pictures is missing. */
export interface EarlierPlan extends Pick<PlanVersion, 'at' | 'why' | 'hash'> {
  readonly text: string | null;
}

/** Returns the earlier states of a plan, the newest first. */
export async function readVersions(id: string): Promise<readonly EarlierPlan[]> {
  const library = await database();
  const versions = await library.getAll('versions', versionsOf(id));
  const source = { get: (name: string) => library.get('longs', name) };
  const read = await Promise.all(
    versions.map(async ({ at, why, hash, text }) => ({ at, why, hash, text: await wholeText(text, source) })),
  );
  return read.reverse();
}
