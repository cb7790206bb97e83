import type { Plan } from '../../geometry/plan/model.ts';
import { PART_MISSING } from '../platform/part-missing.ts';
import { firstToShow } from '../state/first-level.ts';
import { useAppStore } from '../state/store.ts';
import { readAddress, showAddress } from '../storage/address.ts';
import { saveNow, storeOpenPlan, takeSheet } from '../storage/autosave.ts';
import { freshId } from '../storage/fresh-id.ts';
import { sameInLibrary, setTrashed } from '../storage/library/plans.ts';
import type { PlanSummary } from '../storage/library/records.ts';
import { markVersion } from '../storage/library/versions.ts';
import { samePlan, useLibrary } from '../storage/library-state.ts';
import { textHash } from '../storage/long-texts.ts';
import { announceLibraryChange, hasWork, planText } from '../storage/open-plan.ts';
import {
  forgetPlace,
  isLibraryFile,
  type OpenedFile,
  readPlanFile,
  readPlanText,
  type SaveResult,
  savePlanFile,
  savePlanTo,
} from '../storage/plan-files.ts';
import { openStored } from '../storage/restore.ts';
import type { Sample } from '../storage/samples.ts';
import { openStage, showDialog, unfoldFirst, usePanels } from './panels.ts';
import { pictureWords, planToSave } from './picture-choice.ts';

/** Opening and saving of whole plans: a new sheet, a file, a sample, a plan of the library. */

const say = (message: string): void => useAppStore.getState().say(message);

/** Calls `go` once the open plan is stored. If the browser does not store it, asks the user first. */
async function leaveThen(go: () => void | Promise<void>): Promise<void> {
  const why = await storeOpenPlan();
  if (why) showDialog({ kind: 'leave', why, go: () => void go() });
  else await go();
}

export function newSheet(): Promise<void> {
  return leaveThen(() => {
    const had = hasWork(useAppStore.getState().plan);
    forgetPlace();
    takeSheet(freshId(), null, () => useAppStore.getState().newPlan());
    showAddress({ shows: 'new' }, addressStep());
    showDialog(null);
    openStage('draw');
    unfoldFirst('job');
    if (had) say('A new plan. The previous plan is in Plans.');
  });
}

/** Opens the plan made from the answers of the quick card as a new plan; the dialog stays open. */
export function openMadePlan(plan: Plan): Promise<void> {
  return leaveThen(() => {
    forgetPlace();
    const id = freshId();
    takeSheet(id, null, () => useAppStore.getState().openPlan(plan));
    showAddress({ shows: 'plan', id }, addressStep());
    lookAtOpened();
    showDialog({ kind: 'quick-card' });
  });
}

/** Opens one plan file; imports several files, or a library file, into the library. A refused file changes nothing. */
export async function openFiles(files: readonly File[]): Promise<void> {
  const [file] = files;
  if (!file) return;
  if (files.length > 1 || (await isLibraryFile(file))) {
    const part = await import('./import-plans.ts').catch(() => null);
    if (part) await part.importPlans(files, openLibrary);
    else say(PART_MISSING);
    return;
  }
  const opened = await readPlanFile(file);
  await show(opened, file.name);
  if (opened.ok) await sayRemark(opened.plan);
}

/** Adds to the message about the opened file which of its keys are unused, and which limits it exceeds. */
async function sayRemark(plan: Plan): Promise<void> {
  const part = await import('../../geometry/planfile/limits.ts').catch(() => null);
  const words = part?.describeFile(plan);
  if (words && useAppStore.getState().plan === plan) say(`${useAppStore.getState().message} ${words}`);
}

export async function openSample(sample: Sample): Promise<void> {
  const message = `${sample.title}: an invented house. Change what you like.`;
  await show(readPlanText(await sample.load(), sample.title), sample.title, message);
}

async function show(opened: OpenedFile, name: string, message?: string): Promise<void> {
  if (!opened.ok) {
    showDialog({ kind: 'refused', name: opened.name, problems: opened.problems });
    return;
  }
  const same = await sameInLibrary(textHash(planText(opened.plan))).catch(() => undefined);
  await leaveThen(async () => {
    forgetPlace();
    const there = same ? await openSame(same) : '';
    if (!there) {
      const id = freshId();
      takeSheet(id, null, () => useAppStore.getState().openPlan(opened.plan));
      showAddress({ shows: 'plan', id }, addressStep());
    }
    lookAtOpened();
    say(message ?? `${name} is open.${there}`);
  });
}

/** Opens a plan that is already in the library, so that it is not added twice. Returns where it was, in words; empty if it cannot be opened. */
async function openSame({ id, binnedAt }: PlanSummary): Promise<string> {
  if (binnedAt !== null) await setTrashed([id], null).catch(() => undefined);
  if ((await openStored(id)) !== 'open') return '';
  showAddress({ shows: 'plan', id }, addressStep());
  return binnedAt === null ? ' It was already in Plans.' : ' It was deleted, and is in Plans again.';
}

/** Opens a plan of the library. `how` says how the address changes; 'none' if it has changed already. */
export function openFromLibrary(id: string, how: 'push' | 'replace' | 'none' = addressStep()): Promise<void> {
  if (id === useLibrary.getState().openId) {
    if (how !== 'none') showAddress({ shows: 'plan', id }, 'replace');
    showDialog(null);
    return Promise.resolve();
  }
  return leaveThen(async () => {
    const found = await openStored(id);
    if (found !== 'open') {
      say(found === 'gone' ? GONE : 'That plan could not be read. It can be saved as a file in Plans.');
      showOpenAddress('replace');
      return;
    }
    forgetPlace();
    if (how !== 'none') showAddress({ shows: 'plan', id }, how);
    lookAtOpened();
  });
}

const GONE = 'That plan is no longer in this browser.';

/** Shows the level, stage and column in which the user most likely continues. */
function lookAtOpened(): void {
  const { plan, levelId } = useAppStore.getState();
  const level = firstToShow(plan);
  if (level && level.id !== levelId && useAppStore.getState().selection.length === 0) {
    useAppStore.getState().setLevel(level.id);
  }
  showDialog(null);
  const placed = plan.levels.some(({ detectors }) => detectors.length > 0);
  openStage(placed ? 'place' : 'draw');
  unfoldFirst(placed ? 'side' : 'job');
}

/** Opening a plan from the library replaces the address of the library: Back then leads to the page before it. */
function addressStep(): 'push' | 'replace' {
  return readAddress().shows === 'plans' ? 'replace' : 'push';
}

function showOpenAddress(how: 'push' | 'replace'): void {
  const { openId: id, inLibrary } = useLibrary.getState();
  showAddress(inLibrary ? { shows: 'plan', id } : { shows: 'new' }, how);
}

/** Shows the library, as a step that Back undoes. */
export function openLibrary(): void {
  showAddress({ shows: 'plans' }, 'push', useLibrary.getState().openId);
  showDialog({ kind: 'plans' });
}

/** Closes the library. */
export function closeLibrary(): void {
  showDialog(null);
  if (readAddress().shows !== 'plans') return;
  const { from } = (window.history.state ?? {}) as { from?: string };
  // The previous history entry shows the plan that was left. If another plan is open now, its address replaces that of the library.
  if (from === useLibrary.getState().openId) window.history.back();
  else showOpenAddress('replace');
}

/** Starts following changes of the address: Back, Forward, or a typed address of a plan. */
export function startAddress(): void {
  window.addEventListener('popstate', follow);
  if (readAddress().shows === 'plans') showDialog({ kind: 'plans' });
}

function follow(): void {
  const address = readAddress();
  if (address.shows === 'plans') showDialog({ kind: 'plans' });
  else if (usePanels.getState().dialog?.kind === 'plans') showDialog(null);
  const { openId: id, inLibrary } = useLibrary.getState();
  if (address.shows === 'plan' && address.id !== id) void openFromLibrary(address.id, 'none');
  if (address.shows === 'new' && inLibrary) void newSheet();
}

/** Saves the whole plan without asking about pictures: for a plan that is stored nowhere else. */
export const saveWhole = (): Promise<void> => save(() => useAppStore.getState().plan);

/** Saves the plan; if it has pictures, asks first whether to include them. */
export const saveFile = (): Promise<void> => save(planToSave);

export const saveFileTo = (): Promise<void> => save(planToSave, savePlanTo);

async function save(
  find: () => Plan | Promise<Plan>,
  write: (plan: Plan) => Promise<SaveResult | null> = savePlanFile,
): Promise<void> {
  const isSame = samePlan();
  const saved = await find();
  const result = await write(saved);
  if (!result) return;
  if (!result.ok) {
    say(result.reason);
    return;
  }
  const place = result.how === 'written' ? `Written to ${result.name}` : `${result.name} is in your downloads`;
  say(`${place}${pictureWords(saved)}.`);
  // The state that is saved as a file is also kept as a version.
  await saveNow();
  if (!isSame()) return;
  if (await markVersion(useLibrary.getState().openId, 'file')) announceLibraryChange();
}
