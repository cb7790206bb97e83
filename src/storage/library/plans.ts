import type { Plan } from '../../../geometry/plan/model.ts';
import { ALL_STORES, change, database, type LibraryWrite, PLAN_STORES, troubleInWords } from './database.ts';
import { type Described, describedPlan } from './described.ts';
import { isPlanText, type PlanSummary, type StoredView } from './records.ts';
import { isVersionDue } from './retention.ts';
import { deleteUnusedTexts, storeText, wholeText } from './stored-texts.ts';
import { keepVersion, versionsOf } from './versions.ts';

/** A plan to be written. `plan` and `text` are the same plan. */
export interface Work {
  readonly id: string;
  readonly plan: Plan;
  readonly text: string;
  readonly savedAt: number;
  readonly tab: string;
  readonly view: StoredView;
}

/** A plan as read from the store. */
export interface StoredWork extends Omit<Work, 'plan'> {}

export type WriteResult =
  /** Written; the hash of the plan's text. */
  | { readonly ok: true; readonly hash: string }
  /** Another tab has written since, at this time. */
  | { readonly ok: false; readonly other: number }
  | { readonly ok: false; readonly other: null; readonly reason: string };

/**
 * Writes the open plan unless another tab has written it since `lastSeen` (ms since 1970; null: nothing seen yet). Reading and writing are
 * one transaction, so two tabs cannot both win. `force` always writes, and keeps what the other tab wrote as a version. Never rejects for a
 * failure of the store: that is a result with its reason.
 */
export async function writeWork(work: Work, lastSeen: number | null, force = false): Promise<WriteResult> {
  try {
    const described = (await summaryCode())(work.plan);
    return await withRoomMade(() =>
      change(PLAN_STORES, (write) => writeUnlessHeld(write, work, described, lastSeen, force)),
    );
  } catch (error) {
    return { ok: false, other: null, reason: troubleInWords(error) };
  }
}

/** How long a write waits for the code of `summaryOf`, ms: a browser that is killed may lose no more than half a second of work. */
const LONGEST_WAIT_MS = 100;

let loadedSummaryOf: ((plan: Plan) => Described) | null = null;

/**
 * Loads the code that reads from a plan what its next date depends on: it judges the whole test, and is not part of the start. Never rejects;
 * without it a summary has only start and end, until the plan is written again.
 */
export async function loadSummaries(): Promise<void> {
  if (loadedSummaryOf) return;
  const part = await import('./summary.ts').catch(() => null);
  loadedSummaryOf = part?.summaryOf ?? null;
}

async function summaryCode(): Promise<(plan: Plan) => Described> {
  if (!loadedSummaryOf) await Promise.race([loadSummaries(), new Promise((done) => setTimeout(done, LONGEST_WAIT_MS))]);
  return loadedSummaryOf ?? describedPlan;
}

async function writeUnlessHeld(
  write: LibraryWrite,
  work: Work,
  described: Described,
  lastSeen: number | null,
  force: boolean,
): Promise<WriteResult> {
  // As few requests to the store as possible: this runs while a page is being closed.
  const [found, summary]: [unknown, PlanSummary | undefined] = await Promise.all([
    write.objectStore('texts').get(work.id),
    write.objectStore('cards').get(work.id),
  ]);
  const old = isPlanText(found) ? found : null;
  const foreign = old !== null && old.tab !== work.tab && old.savedAt !== lastSeen;
  if (foreign && !force) return { ok: false, other: old.savedAt };
  const { text, hash } = await storeText(write, work.text);
  const { id, savedAt, tab, view } = work;
  let versionAt = summary?.versionAt ?? 0;
  if (old && summary && summary.hash !== hash && (foreign || isVersionDue(savedAt, old.savedAt, versionAt))) {
    await keepVersion(write, old, summary.hash, foreign ? 'other-tab' : 'rest', savedAt);
    versionAt = old.savedAt;
  }
  const same = summary?.hash === hash;
  await Promise.all([
    write.objectStore('texts').put({ id, text, savedAt, tab, view }),
    write.objectStore('cards').put({
      id,
      createdAt: summary?.createdAt ?? savedAt,
      changedAt: same ? summary.changedAt : savedAt,
      hash,
      // A change to a plan restores it if another tab has deleted it.
      binnedAt: same ? summary.binnedAt : null,
      versionAt,
      ...described,
    }),
  ]);
  await deleteUnusedTexts(write, old?.text.long.filter((name) => !text.long.includes(name)) ?? []);
  return { ok: true, hash };
}

/** If the store is full, deletes the previews, which can be made again, and tries the write once more. */
async function withRoomMade<T>(attempt: () => Promise<T>): Promise<T> {
  try {
    return await attempt();
  } catch (error) {
    if (!(error instanceof DOMException) || error.name !== 'QuotaExceededError') throw error;
    await change(['looks'], (write) => write.objectStore('looks').clear()).catch(() => undefined);
    return attempt();
  }
}

/** Returns undefined if there is no such plan, and a text of null if the record is damaged. Throws if the store cannot be read. */
export async function readWork(
  id: string,
): Promise<StoredWork | { readonly text: null; readonly raw: string } | undefined> {
  const library = await database();
  const found: unknown = await library.get('texts', id);
  if (found === undefined) return undefined;
  if (!isPlanText(found)) return { text: null, raw: JSON.stringify(found) };
  const text = await wholeText(found.text, { get: (name) => library.get('longs', name) });
  if (text === null) return { text: null, raw: found.text.pieces.join('') };
  const { savedAt, tab, view } = found;
  return { id, text, savedAt, tab, view };
}

/** Returns all summaries, in no order. Throws if the store cannot be read. */
export async function readSummaries(): Promise<readonly PlanSummary[]> {
  return (await database()).getAll('cards');
}

/** Returns the last changed plan of those that are not deleted and could be read; undefined for none. */
export async function lastChangedPlan(): Promise<PlanSummary | undefined> {
  const summaries = (await readSummaries()).filter(({ binnedAt, readable }) => binnedAt === null && readable);
  return summaries.reduce<PlanSummary | undefined>(
    (last, summary) => (last && last.changedAt >= summary.changedAt ? last : summary),
    undefined,
  );
}

/** Returns a plan whose text has this hash; a deleted plan only if there is no other, undefined for none. */
export async function sameInLibrary(hash: string): Promise<PlanSummary | undefined> {
  const summaries = await (await database()).getAllFromIndex('cards', 'hash', hash);
  return summaries.find(({ binnedAt }) => binnedAt === null) ?? summaries[0];
}

/** Adds a new plan to the library. Throws if it cannot be written. */
export function addPlan(work: Omit<Work, 'plan'>, described: Described): Promise<void> {
  return withRoomMade(() => change(PLAN_STORES, (write) => putNew(write, work, described)));
}

/** Adds a new plan within a transaction. */
export async function putNew(
  write: LibraryWrite,
  { id, text: whole, savedAt, tab, view }: Omit<Work, 'plan'>,
  described: Described,
  given: Partial<Pick<PlanSummary, 'createdAt' | 'binnedAt' | 'versionAt'>> = {},
): Promise<void> {
  const { text, hash } = await storeText(write, whole);
  await write.objectStore('texts').put({ id, text, savedAt, tab, view });
  await write
    .objectStore('cards')
    .put({ id, createdAt: savedAt, changedAt: savedAt, hash, binnedAt: null, versionAt: 0, ...described, ...given });
}

/** Marks plans as deleted at `binnedAt`, ms since 1970; null restores them. Throws if the store cannot be written. */
export function setTrashed(ids: readonly string[], binnedAt: number | null): Promise<void> {
  return change(['cards'], async (write) => {
    for (const id of ids) {
      const summary = await write.objectStore('cards').get(id);
      if (summary) await write.objectStore('cards').put({ ...summary, binnedAt });
    }
  });
}

/** Deletes plans for good, with their versions. Throws if the store cannot be written. */
export function destroy(ids: readonly string[]): Promise<void> {
  return change(ALL_STORES, async (write) => {
    for (const id of ids) {
      const text = await write.objectStore('texts').get(id);
      const versions = await write.objectStore('versions').getAll(versionsOf(id));
      await write.objectStore('versions').delete(versionsOf(id));
      for (const store of ['cards', 'texts', 'looks'] as const) await write.objectStore(store).delete(id);
      await deleteUnusedTexts(write, [...(text?.text.long ?? []), ...versions.flatMap(({ text: { long } }) => long)]);
    }
  });
}

/** Number of days for which deleted plans are kept. */
export const TRASH_DAYS = 30;

/** Returns the ids of plans that were deleted more than `TRASH_DAYS` ago. */
export function outlived(summaries: readonly PlanSummary[], now: number): readonly string[] {
  return summaries
    .filter(({ binnedAt }) => binnedAt !== null && now - binnedAt > TRASH_DAYS * 86_400_000)
    .map(({ id }) => id);
}
