import type { Plan } from '../../../geometry/plan/model.ts';
import { ALL_STORES, change, database, type LibraryWrite, PLAN_STORES, troubleInWords } from './database.ts';
import { isPlanText, type PlanSummary, type StoredView } from './records.ts';
import { isVersionDue } from './retention.ts';
import { letGo, settleText, wholeText } from './stored-texts.ts';
import { summaryOf } from './summary.ts';
import { keepVersion, versionsOf } from './versions.ts';

/** A plan as it is written down. `plan` and `text` are the same. */
export interface Work {
  readonly id: string;
  readonly plan: Plan;
  readonly text: string;
  readonly savedAt: number;
  readonly tab: string;
  readonly view: StoredView;
}

/** A plan as it is read back. */
export interface StoredWork extends Omit<Work, 'plan'> {}

export type WriteResult =
  | { readonly ok: true }
  /** Another tab has written since, at this time. */
  | { readonly ok: false; readonly other: number }
  | { readonly ok: false; readonly other: null; readonly reason: string };

/**
 * Writes the open plan unless another tab has written it since `lastSeen` (ms; null: nothing seen yet). Reading and writing are
 * one transaction, so two tabs cannot both win. `force` writes in any case, and keeps what the other tab wrote as a version.
 */
export async function writeWork(work: Work, lastSeen: number | null, force = false): Promise<WriteResult> {
  try {
    return await withRoomMade(() => change(PLAN_STORES, (write) => writeUnlessHeld(write, work, lastSeen, force)));
  } catch (error) {
    return { ok: false, other: null, reason: troubleInWords(error) };
  }
}

async function writeUnlessHeld(
  write: LibraryWrite,
  work: Work,
  lastSeen: number | null,
  force: boolean,
): Promise<WriteResult> {
  // As few turns with the store as can be: this runs while a page is being closed.
  const [found, card]: [unknown, PlanSummary | undefined] = await Promise.all([
    write.objectStore('texts').get(work.id),
    write.objectStore('cards').get(work.id),
  ]);
  const old = isPlanText(found) ? found : null;
  const foreign = old !== null && old.tab !== work.tab && old.savedAt !== lastSeen;
  if (foreign && !force) return { ok: false, other: old.savedAt };
  const { text, hash } = await settleText(write, work.text);
  const { id, savedAt, tab, view } = work;
  let versionAt = card?.versionAt ?? 0;
  if (old && card && card.hash !== hash && (foreign || isVersionDue(savedAt, old.savedAt, versionAt))) {
    await keepVersion(write, old, card.hash, foreign ? 'other-tab' : 'rest', savedAt);
    versionAt = old.savedAt;
  }
  const same = card?.hash === hash;
  await Promise.all([
    write.objectStore('texts').put({ id, text, savedAt, tab, view }),
    write.objectStore('cards').put({
      id,
      createdAt: card?.createdAt ?? savedAt,
      changedAt: same ? card.changedAt : savedAt,
      hash,
      // Who works on a plan wants it kept, also where another tab has put it in the bin.
      binnedAt: same ? card.binnedAt : null,
      versionAt,
      ...summaryOf(work.plan),
    }),
  ]);
  await letGo(write, old?.text.long.filter((name) => !text.long.includes(name)) ?? []);
  return { ok: true };
}

/** Where the store is full, what can be made again at any time goes first, and it is tried once more. */
async function withRoomMade<T>(attempt: () => Promise<T>): Promise<T> {
  try {
    return await attempt();
  } catch (error) {
    if (!(error instanceof DOMException) || error.name !== 'QuotaExceededError') throw error;
    await change(['looks'], (write) => write.objectStore('looks').clear()).catch(() => undefined);
    return attempt();
  }
}

/** Throws when the store is out of reach. Undefined for no such plan; a text of null where the record is damaged. */
export async function readWork(
  id: string,
): Promise<StoredWork | { readonly text: null; readonly raw: string } | undefined> {
  const shelf = await database();
  const found: unknown = await shelf.get('texts', id);
  if (found === undefined) return undefined;
  if (!isPlanText(found)) return { text: null, raw: JSON.stringify(found) };
  const text = await wholeText(found.text, { get: (name) => shelf.get('longs', name) });
  if (text === null) return { text: null, raw: found.text.pieces.join('') };
  const { savedAt, tab, view } = found;
  return { id, text, savedAt, tab, view };
}

/** In no order. Throws when the store is out of reach. */
export async function readSummaries(): Promise<readonly PlanSummary[]> {
  return (await database()).getAll('cards');
}

/** The plan that was worked on last, of those that stand on the shelf and could be read. */
export async function lastWorkedOn(): Promise<PlanSummary | undefined> {
  const cards = (await readSummaries()).filter(({ binnedAt, readable }) => binnedAt === null && readable);
  return cards.reduce<PlanSummary | undefined>(
    (last, card) => (last && last.changedAt >= card.changedAt ? last : card),
    undefined,
  );
}

/** One of the plans with this very text, if there is one; those in the bin last. */
export async function sameInLibrary(hash: string): Promise<PlanSummary | undefined> {
  const cards = await (await database()).getAllFromIndex('cards', 'hash', hash);
  return cards.find(({ binnedAt }) => binnedAt === null) ?? cards[0];
}

/** Puts a plan on the shelf that is not there yet. Throws when it cannot be written. */
export function addPlan(work: Omit<Work, 'plan'>, described: ReturnType<typeof summaryOf>): Promise<void> {
  return withRoomMade(() => change(PLAN_STORES, (write) => putNew(write, work, described)));
}

/** As part of a larger change. */
export async function putNew(
  write: LibraryWrite,
  { id, text: whole, savedAt, tab, view }: Omit<Work, 'plan'>,
  described: ReturnType<typeof summaryOf>,
  given: Partial<Pick<PlanSummary, 'createdAt' | 'binnedAt' | 'versionAt'>> = {},
): Promise<void> {
  const { text, hash } = await settleText(write, whole);
  await write.objectStore('texts').put({ id, text, savedAt, tab, view });
  await write
    .objectStore('cards')
    .put({ id, createdAt: savedAt, changedAt: savedAt, hash, binnedAt: null, versionAt: 0, ...described, ...given });
}

/** Puts plans in the bin, or with null takes them out. Throws when the store does not take it. */
export function setTrashed(ids: readonly string[], binnedAt: number | null): Promise<void> {
  return change(['cards'], async (write) => {
    for (const id of ids) {
      const card = await write.objectStore('cards').get(id);
      if (card) await write.objectStore('cards').put({ ...card, binnedAt });
    }
  });
}

/** Takes plans away for good, with their versions. Throws when the store does not take it. */
export function destroy(ids: readonly string[]): Promise<void> {
  return change(ALL_STORES, async (write) => {
    for (const id of ids) {
      const text = await write.objectStore('texts').get(id);
      const versions = await write.objectStore('versions').getAll(versionsOf(id));
      await write.objectStore('versions').delete(versionsOf(id));
      for (const store of ['cards', 'texts', 'looks'] as const) await write.objectStore(store).delete(id);
      await letGo(write, [...(text?.text.long ?? []), ...versions.flatMap(({ text: { long } }) => long)]);
    }
  });
}

/** How long the bin keeps a plan, days. */
export const TRASH_DAYS = 30;

/** Plans that have been in the bin for longer than it keeps them. */
export function outlived(cards: readonly PlanSummary[], now: number): readonly string[] {
  return cards
    .filter(({ binnedAt }) => binnedAt !== null && now - binnedAt > TRASH_DAYS * 86_400_000)
    .map(({ id }) => id);
}
