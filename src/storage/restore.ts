import type { Plan } from '../../geometry/plan/model.ts';
import { parsePlan } from '../../geometry/planfile/parse.ts';
import { useAppStore } from '../state/store.ts';
import { readAddress, showAddress } from './address.ts';
import { keepHeld, takeSheet } from './autosave.ts';
import { change, database, troubleInWords } from './library/database.ts';
import { UNREADABLE } from './library/described.ts';
import { lastChangedPlan, readWork, type StoredWork, writeWork } from './library/plans.ts';
import { keepTextAsVersion } from './library/versions.ts';
import { showSaveStatus, useLibrary } from './library-state.ts';
import { joinText } from './long-texts.ts';
import { hasWork } from './open-plan.ts';
import { clearUnsavedCopies, type UnsavedCopy, unsavedCopies } from './unsaved-copy.ts';

/** What was found in the store when the page opened. */
export type Restored =
  | { readonly found: 'nothing' | 'plan' }
  /** The address names a plan that is not in this browser. */
  | { readonly found: 'gone' }
  | { readonly found: 'unreadable' }
  /** The store has not answered yet. */
  | { readonly found: 'no-answer' }
  | { readonly found: 'no-store'; readonly reason: string };

/** Opens a plan of the library: the one that the address names, else the one that was changed last. */
export async function restoreWork(): Promise<Restored> {
  try {
    const unsaved = await storeUnsavedCopies();
    return await restoreFromAddress(unsaved);
  } catch (error) {
    const reason = troubleInWords(error);
    showSaveStatus({ state: 'failed', reason });
    return { found: 'no-store', reason };
  }
}

async function restoreFromAddress(unsaved: readonly StoredWork[]): Promise<Restored> {
  const address = readAddress();
  if (address.shows === 'new') return { found: 'nothing' };
  const id = address.shows === 'plan' ? address.id : (unsaved.at(-1)?.id ?? (await lastChangedPlan())?.id);
  if (id === undefined) return { found: 'nothing' };
  const stored = unsaved.findLast((work) => work.id === id) ?? (await readWork(id));
  // The store was slow to answer, and the user has begun to draw meanwhile.
  if (hasWork(useAppStore.getState().plan)) return { found: 'nothing' };
  if (address.shows !== 'plans') showAddress(stored ? { shows: 'plan', id } : { shows: 'nothing' }, 'replace');
  if (!stored) return { found: 'gone' };
  if (showWork(id, stored)) return { found: 'plan' };
  showAddress({ shows: 'new' }, 'replace');
  return { found: 'unreadable' };
}

/** Opens a plan of the library. Returns false if it cannot be read: it is then marked as unreadable, and the open plan stays open. */
function showWork(id: string, stored: StoredWork | { readonly text: null }): boolean {
  const read = stored.text === null ? null : parsePlan(stored.text);
  if (stored.text !== null && read?.ok) {
    showStored(read.plan, stored);
    return true;
  }
  void markUnreadable(id);
  return false;
}

async function markUnreadable(id: string): Promise<void> {
  await change(['cards'], async (write) => {
    const summary = await write.objectStore('cards').get(id);
    if (summary) await write.objectStore('cards').put({ ...summary, ...UNREADABLE, title: summary.title });
  }).catch(() => undefined);
}

/** Opens a plan of the library in place of the open one, which must be stored already. */
export async function openStored(id: string): Promise<'open' | 'gone' | 'unreadable'> {
  const stored = await readWork(id).catch(() => undefined);
  if (!stored) return 'gone';
  return showWork(id, stored) ? 'open' : 'unreadable';
}

/**
 * Opens what the other tab has written; changes of this tab become a version of the plan. Returns false, and keeps the open plan, if either
 * fails.
 */
export async function takeOther(): Promise<boolean> {
  const { openId: id } = useLibrary.getState();
  useAppStore.getState().endChain();
  const stored = await readWork(id).catch(() => undefined);
  const read = stored && stored.text !== null ? parsePlan(stored.text) : null;
  if (!stored || stored.text === null || !read?.ok || !(await keepHeld())) return false;
  showStored(read.plan, stored);
  return true;
}

function showStored(plan: Plan, { id, savedAt, view }: StoredWork): void {
  takeSheet(id, savedAt, () => {
    useAppStore.getState().openPlan(plan);
    const level = plan.levels.find(({ id: each }) => each === view.levelId) ?? plan.levels[0];
    if (level) useAppStore.setState({ levelId: level.id, selection: selectionOn(level, view.selection) });
    if (view.corners && view.corners.length > 0) {
      useAppStore.setState({ tool: { kind: 'wall' }, chain: { corners: view.corners, takenBack: [] } });
    }
  });
}

function selectionOn(level: Plan['levels'][number], ids: readonly string[]): readonly string[] {
  const there = new Set(
    [level.walls, level.openings, level.rooms, level.fixtures, level.objects, level.detectors].flatMap((items) =>
      items.map(({ id }) => id),
    ),
  );
  return ids.filter((id) => there.has(id));
}

/** Stores the unsaved copies that closed tabs have left. Returns those that could not be stored and may be opened, oldest first. */
async function storeUnsavedCopies(): Promise<readonly StoredWork[]> {
  const unsaved: StoredWork[] = [];
  for (const words of unsavedCopies()) {
    const work = await wholeWords(words);
    const kept = work ? await storeUnsavedCopy(work, words.held) : true; // dropped: its pictures are missing
    if (kept) clearUnsavedCopies(words.tab);
    else if (work && !words.held) unsaved.push(work);
  }
  return unsaved;
}

async function wholeWords({ text: split, held: _held, ...words }: UnsavedCopy): Promise<StoredWork | null> {
  const library = await database();
  const longTexts = new Map<string, string>();
  for (const name of split.long) {
    const long = await library.get('longs', name);
    if (long !== undefined) longTexts.set(name, long);
  }
  const text = joinText(split, longTexts);
  return text === null ? null : { ...words, text };
}

async function storeUnsavedCopy(work: StoredWork, held: boolean): Promise<boolean> {
  if (held) return keepTextAsVersion(work.id, work.text, work.savedAt, 'other-tab');
  const stored = await readWork(work.id);
  if (stored && stored.text !== null && stored.savedAt >= work.savedAt) return true;
  const read = parsePlan(work.text);
  if (!read.ok) return true;
  return (await writeWork({ ...work, plan: read.plan }, null, true)).ok;
}
