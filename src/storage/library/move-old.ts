import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { freshId } from '../fresh-id.ts';
import { textHash } from '../long-texts.ts';
import { change, PLAN_STORES } from './database.ts';
import { OLD, openOld } from './old-store.ts';
import { putNew, sameInLibrary } from './plans.ts';
import { isStoredView, NO_VIEW, type StoredView } from './records.ts';
import { summaryOf, UNREADABLE } from './summary.ts';

interface OldPlan {
  readonly text: string;
  readonly savedAt: number;
  readonly view: StoredView;
}

/** Migrates the store of the first version. Returns how many plans were moved, usually 0. Throws when a store is out of reach. */
export async function moveOld(): Promise<number> {
  const old = await openOld();
  if (!old) return 0;
  try {
    const [work, shelf] = await Promise.all([old.get(OLD.store, 'work'), old.get(OLD.store, 'shelf')]);
    const theme: unknown = await old.get(OLD.store, 'setting/theme');
    const plans = [...worded(work), ...shelved(shelf), ...oldUnsavedCopies()];
    // Oldest first: the plan that was open last is then the one that was changed last.
    for (const plan of plans.sort((a, b) => a.savedAt - b.savedAt)) await moveOne(plan);
    if (theme !== undefined)
      await change(['settings'], async (write) => void (await write.objectStore('settings').put(theme, 'theme')));
    await old.clear(OLD.store);
    clearOldUnsavedCopies();
    return plans.length;
  } finally {
    old.close();
  }
}

async function moveOne({ text, savedAt, view }: OldPlan): Promise<void> {
  const there = await sameInLibrary(textHash(text));
  if (there && there.binnedAt === null) return;
  const read = parsePlan(text);
  const described = read.ok ? summaryOf(read.plan) : UNREADABLE;
  const work = { id: freshId(), text, savedAt, tab: 'moved', view };
  await change(PLAN_STORES, (write) => putNew(write, work, described));
}

function worded(value: unknown): readonly OldPlan[] {
  if (value === undefined) return [];
  const { text, savedAt, view } = asRecord(value);
  if (typeof text === 'string' && typeof savedAt === 'number') {
    return [{ text, savedAt, view: isStoredView(view) ? view : NO_VIEW }];
  }
  return [{ text: JSON.stringify(value), savedAt: 0, view: NO_VIEW }];
}

function shelved(value: unknown): readonly OldPlan[] {
  return Array.isArray(value)
    ? value.flatMap((each) => {
        const { text, putAwayAt } = asRecord(each);
        if (typeof text !== 'string') return [];
        return [{ text, savedAt: typeof putAwayAt === 'number' ? putAwayAt : 0, view: NO_VIEW }];
      })
    : [];
}

/** The unsaved copies of the first version. */
function oldUnsavedCopies(): readonly OldPlan[] {
  try {
    const words: unknown = JSON.parse(localStorage.getItem(OLD.unsavedCopies) ?? 'null');
    return words === null ? [] : worded(asRecord(words).plan);
  } catch {
    return [];
  }
}

function clearOldUnsavedCopies(): void {
  try {
    localStorage.removeItem(OLD.unsavedCopies);
  } catch {
    // Forbidden: nothing is stored there either.
  }
}

function asRecord(value: unknown): Readonly<Record<string, unknown>> {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
}
