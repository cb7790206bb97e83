import { freshId } from '../fresh-id.ts';
import { ALL_STORES, change, type LibraryWrite } from './database.ts';
import { type FiledPlan, hashesOf, type ReadPlan, writeLibraryFile } from './library-file.ts';
import { type Fate, fateOf, type Known } from './merge.ts';
import { putNew, readSummaries, readWork } from './plans.ts';
import { NO_VIEW } from './records.ts';
import { storeText } from './stored-texts.ts';
import { summaryOf } from './summary.ts';
import { keepVersion, readVersions } from './versions.ts';

/** Export of the whole library as one file, and import of such a file. */

export interface Everything {
  readonly text: string;
  readonly count: number;
  /** Titles of plans that are not in the file because they could not be read. */
  readonly leftOut: readonly string[];
}

/** Returns all plans with their versions, deleted plans too. Throws if the store cannot be read. */
export async function libraryAsFile(now: number): Promise<Everything> {
  const filed: FiledPlan[] = [];
  const leftOut: string[] = [];
  for (const summary of await readSummaries()) {
    const { id, title, createdAt, changedAt, binnedAt, readable } = summary;
    const stored = readable ? await readWork(id) : undefined;
    if (!stored || stored.text === null) {
      leftOut.push(title);
      continue;
    }
    const versions = (await readVersions(id)).flatMap(({ at, why, text }) =>
      text === null ? [] : [{ at, why, text }],
    );
    filed.push({ id, createdAt, changedAt, binnedAt, text: stored.text, versions });
  }
  return { text: writeLibraryFile(filed, now), count: filed.length, leftOut };
}

/** Number of plans by outcome. */
export interface MergeResult {
  readonly counts: Readonly<Record<Fate['fate'], number>>;
  /** Ids of plans whose content has changed. */
  readonly changedIds: readonly string[];
}

/** Adds the plans of a file to the library, all of them or none. Throws if the store cannot be written. */
export function mergePlans(plans: readonly ReadPlan[], now: number): Promise<MergeResult> {
  return change(ALL_STORES, async (write) => {
    const here = await knownHere(write);
    const counts: Record<Fate['fate'], number> = { new: 0, same: 0, 'from-bin': 0, newer: 0, beside: 0 };
    const changedIds: string[] = [];
    for (const plan of plans) {
      const known = { id: plan.id, binned: plan.binnedAt !== null, ...hashesOf(plan) };
      const fate = fateOf(known, here);
      counts[fate.fate] += 1;
      const id = await takeOne(write, plan, fate, now);
      if (fate.fate === 'newer') changedIds.push(id);
      // So that a plan that occurs twice in one file is recognized.
      if (fate.fate === 'new' || fate.fate === 'beside') here.push({ ...known, id });
    }
    return { counts, changedIds };
  });
}

async function knownHere(write: LibraryWrite): Promise<Known[]> {
  const summaries = await write.objectStore('cards').getAll();
  const earlier = new Map<string, Set<string>>();
  for (const { plan, hash } of await write.objectStore('versions').getAll()) {
    const hashes = earlier.get(plan) ?? new Set();
    earlier.set(plan, hashes.add(hash));
  }
  return summaries.map(({ id, hash, binnedAt }) => ({
    id,
    hash,
    earlier: earlier.get(id) ?? new Set<string>(),
    binned: binnedAt !== null,
  }));
}

async function takeOne(write: LibraryWrite, plan: ReadPlan, fate: Fate, now: number): Promise<string> {
  switch (fate.fate) {
    case 'new':
      await putFiled(write, plan, plan.id);
      return plan.id;
    case 'beside': {
      const id = freshId();
      await putFiled(write, plan, id);
      return id;
    }
    case 'from-bin': {
      const summary = await write.objectStore('cards').get(fate.id);
      if (summary) await write.objectStore('cards').put({ ...summary, binnedAt: null });
      break;
    }
    case 'newer':
      await goOn(write, plan, fate.id, now);
      break;
    case 'same':
  }
  await putVersions(write, plan, fate.id);
  return fate.id;
}

async function putFiled(write: LibraryWrite, filed: ReadPlan, id: string): Promise<void> {
  const { text, plan, createdAt, changedAt, binnedAt } = filed;
  const versionAt = Math.max(0, ...filed.versions.map(({ at }) => at));
  const work = { id, text, savedAt: changedAt, tab: 'imported', view: NO_VIEW };
  await putNew(write, work, summaryOf(plan), { createdAt, binnedAt, versionAt });
  await putVersions(write, filed, id);
}

/** Replaces the state in the library by the newer one, and keeps the old state as a version. */
async function goOn(write: LibraryWrite, { text: whole, plan }: ReadPlan, id: string, now: number): Promise<void> {
  const [old, summary] = await Promise.all([write.objectStore('texts').get(id), write.objectStore('cards').get(id)]);
  if (!old || !summary) return;
  await keepVersion(write, old, summary.hash, 'imported', now);
  const { text, hash } = await storeText(write, whole);
  await write.objectStore('texts').put({ ...old, text, savedAt: now, tab: 'imported' });
  await write
    .objectStore('cards')
    .put({ ...summary, ...summaryOf(plan), hash, changedAt: now, versionAt: old.savedAt, binnedAt: null });
}

async function putVersions(write: LibraryWrite, { versions }: ReadPlan, id: string): Promise<void> {
  const store = write.objectStore('versions');
  for (const { at, why, text } of versions) {
    const there = await store.get([id, at, why]);
    if (there) continue; // a version never changes
    await store.put({ plan: id, at, why, ...(await storeText(write, text)) });
  }
}
