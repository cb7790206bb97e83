import type { Plan } from '../../../geometry/plan/model.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../geometry/planfile/write.ts';
import { openFromLibrary } from '../../commands/open-and-save.ts';
import { firstToShow } from '../../state/first-level.ts';
import { useAppStore } from '../../state/store.ts';
import { saveNow, storeOpenPlan, takeSheet } from '../../storage/autosave.ts';
import { freshId } from '../../storage/fresh-id.ts';
import { troubleInWords } from '../../storage/library/database.ts';
import { titleWords } from '../../storage/library/described.ts';
import { addPlan, destroy, readWork, type StoredWork, setTrashed, writeWork } from '../../storage/library/plans.ts';
import type { PlanSummary } from '../../storage/library/records.ts';
import { summaryOf } from '../../storage/library/summary.ts';
import { markVersion } from '../../storage/library/versions.ts';
import { showLibraryMessage, useLibrary } from '../../storage/library-state.ts';
import { announceLibraryChange } from '../../storage/open-plan.ts';
import { downloadFile, fileStem, planFileName } from '../../storage/plan-files.ts';
import { openStored } from '../../storage/restore.ts';

/** Actions on plans of the library. Each shows a message that says what it did, or why it failed. */

async function attempt(action: () => Promise<void>): Promise<void> {
  try {
    await action();
  } catch (error) {
    showLibraryMessage(troubleInWords(error));
  }
  announceLibraryChange();
}

/** Reads a stored plan. Returns null, with a message, if it is missing or cannot be read. */
async function readPlan(summary: PlanSummary): Promise<{ readonly plan: Plan; readonly stored: StoredWork } | null> {
  if (summary.id === useLibrary.getState().openId) await saveNow();
  const stored = await readWork(summary.id);
  const read = stored && stored.text !== null ? parsePlan(stored.text) : null;
  if (stored && stored.text !== null && read?.ok) return { plan: read.plan, stored };
  showLibraryMessage(`${titleWords(summary)} could not be read. Save it as a file to keep what is in it.`);
  return null;
}

export function renamePlan(summary: PlanSummary, title: string): Promise<void> {
  return attempt(async () => {
    if (summary.id === useLibrary.getState().openId) {
      useAppStore.getState().run((plan) => ({ ...plan, title }));
      await saveNow();
    } else {
      const found = await readPlan(summary);
      if (!found) return;
      const plan = { ...found.plan, title };
      const work = { ...found.stored, plan, text: writePlan(plan), savedAt: Date.now(), tab: freshId() };
      const result = await writeWork(work, found.stored.savedAt);
      if (!result.ok) {
        showLibraryMessage(
          result.other === null ? result.reason : 'Another tab has just changed that plan. Try again.',
        );
        return;
      }
      announceLibraryChange({ id: summary.id, savedAt: work.savedAt });
    }
    showLibraryMessage(`Renamed to ${title.trim() || 'nothing'}.`);
  });
}

export function duplicatePlan(summary: PlanSummary): Promise<void> {
  return attempt(async () => {
    const found = await readPlan(summary);
    if (!found) return;
    const plan = { ...found.plan, title: `${titleWords(summary)}, copy` };
    const work = { ...found.stored, id: freshId(), text: writePlan(plan), savedAt: Date.now(), tab: freshId() };
    await addPlan(work, summaryOf(plan));
    showLibraryMessage(`${plan.title} is in Plans.`, () => attempt(() => destroy([work.id])));
  });
}

/** Deletes a plan; if it is open, the sheet is cleared. Undo restores both. */
export function trashPlan(summary: PlanSummary): Promise<void> {
  return attempt(async () => {
    const wasOpen = summary.id === useLibrary.getState().openId;
    const why = wasOpen ? await storeOpenPlan() : '';
    if (why) {
      showLibraryMessage(why);
      return;
    }
    await setTrashed([summary.id], Date.now());
    if (wasOpen) takeSheet(freshId(), null, () => useAppStore.getState().newPlan());
    showLibraryMessage(`${titleWords(summary)} is deleted. It can be restored under Deleted plans.`, () =>
      attempt(async () => {
        await setTrashed([summary.id], null);
        if (wasOpen && !useLibrary.getState().inLibrary) await openStored(summary.id);
        showLibraryMessage(`${titleWords(summary)} is restored.`);
      }),
    );
  });
}

export function restorePlan(summary: PlanSummary): Promise<void> {
  return attempt(async () => {
    await setTrashed([summary.id], null);
    showLibraryMessage(`${titleWords(summary)} is restored.`);
  });
}

export function emptyTrash(summaries: readonly PlanSummary[]): Promise<void> {
  return attempt(async () => {
    await destroy(summaries.map(({ id }) => id));
    showLibraryMessage('The deleted plans are gone for good.');
  });
}

/** Saves a plan as a file; for a plan that cannot be read, saves its stored text. */
export function savePlanAsFile(summary: PlanSummary): Promise<void> {
  return attempt(async () => {
    if (summary.id === useLibrary.getState().openId) await saveNow();
    const stored = await readWork(summary.id);
    if (!stored) {
      showLibraryMessage('That plan is no longer in this browser.');
      return;
    }
    const readable = stored.text !== null && summary.readable;
    const name = readable ? planFileName(summary.title) : `${fileStem(summary.title)}-unreadable.json`;
    const text = stored.text ?? ('raw' in stored ? stored.raw : '');
    downloadFile(name, new Blob([text], { type: 'application/json' }));
    if (readable) await markVersion(summary.id, 'file');
    showLibraryMessage(`${name} is in your downloads.`);
  });
}

/**
 * Restores an earlier version of the plan, as a step of history that Undo reverts. The present state is kept as a version too.
 */
export async function bringBack(summary: PlanSummary, earlier: Plan, when: string): Promise<void> {
  await openFromLibrary(summary.id);
  if (useLibrary.getState().openId !== summary.id) return;
  await saveNow();
  await markVersion(summary.id, 'brought-back');
  const state = useAppStore.getState();
  const why = state.run(() => earlier);
  if (why) return;
  const level = earlier.levels.find(({ id }) => id === state.levelId) ?? firstToShow(earlier);
  useAppStore.setState({ selection: [], ...(level ? { levelId: level.id } : {}) });
  state.fit();
  state.say(`The plan is as it was ${when}. Undo reverts that.`);
}
