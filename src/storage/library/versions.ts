import { change, database, type LibraryWrite, PLAN_STORES } from './database.ts';
import type { PlanText, PlanVersion, VersionReason } from './records.ts';
import { outdatedVersions } from './retention.ts';
import { letGo, settleText, wholeText } from './stored-texts.ts';

/** Keeps the plan as it lies in the store among its versions. The same state twice in a row is kept once. */
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

/** Keeps a text that does not lie in the store, say of another tab, among the versions of a plan. */
export async function keepTextAsVersion(id: string, text: string, at: number, why: VersionReason): Promise<boolean> {
  try {
    await change(PLAN_STORES, async (write) => {
      const settled = await settleText(write, text);
      await write.objectStore('versions').put({ plan: id, at, why, ...settled });
      await deleteOutdated(write, id, Date.now());
    });
    return true;
  } catch {
    return false;
  }
}

/** Keeps the plan as it lies in the store now, say because it is saved as a file. Returns whether there was something to keep. */
export async function markVersion(id: string, why: VersionReason): Promise<boolean> {
  try {
    return await change(PLAN_STORES, async (write) => {
      const [text, card] = await Promise.all([write.objectStore('texts').get(id), write.objectStore('cards').get(id)]);
      if (!text || !card) return false;
      await keepVersion(write, text, card.hash, why, Date.now());
      await write.objectStore('cards').put({ ...card, versionAt: text.savedAt });
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
    await letGo(write, version?.text.long ?? []);
  }
}

export function versionsOf(id: string): IDBKeyRange {
  return IDBKeyRange.bound([id], [id, []]);
}

/** An earlier state of a plan with its whole text; null where a picture of it is gone. */
export interface EarlierPlan extends Pick<PlanVersion, 'at' | 'why' | 'hash'> {
  readonly text: string | null;
}

/** Newest first. */
export async function readVersions(id: string): Promise<readonly EarlierPlan[]> {
  const shelf = await database();
  const versions = await shelf.getAll('versions', versionsOf(id));
  const source = { get: (name: string) => shelf.get('longs', name) };
  const read = await Promise.all(
    versions.map(async ({ at, why, hash, text }) => ({ at, why, hash, text: await wholeText(text, source) })),
  );
  return read.reverse();
}
