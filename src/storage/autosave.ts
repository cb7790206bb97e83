import type { AppState } from '../state/app-state.ts';
import { useAppStore } from '../state/store.ts';
import { readAddress, showAddress } from './address.ts';
import { freshId } from './fresh-id.ts';
import { troubleInWords } from './library/database.ts';
import { type Work, writeWork } from './library/plans.ts';
import { keepTextAsVersion } from './library/versions.ts';
import { showSaveStatus, useLibrary } from './library-state.ts';
import { textHash } from './long-texts.ts';
import { announceLibraryChange, hasWork, listenToTabs, planText, type TabNews } from './open-plan.ts';
import { clearUnsavedCopies, keepUnsavedCopy } from './unsaved-copy.ts';

/** A copy is written when nothing has changed for this long, ms; the first change after a pause is written almost at once. */
const REST_MS = 250;
const FIRST_MS = 40;
/**
 * A change waits no longer than this, however many follow it: a key that is held changes the plan thirty times a second, and a browser that is
 * killed may lose half a second of work.
 */
const LONGEST_WAIT_MS = 300;
/** Changes that another tab holds up are copied so often, ms. */
const COPY_HELD_MS = 1500;

const tab = freshId();
let lastSeen: number | null = null;
let lastWrittenAt = Number.NEGATIVE_INFINITY;
/** When the first change that is not written was made, by the clock of the page; null for none. */
let waitingSince: number | null = null;
/** Whether a copy of changes that another tab holds up is about to be made. */
let isCopyDue = false;
let timer: ReturnType<typeof setTimeout> | undefined;
let writing: Promise<void> = Promise.resolve();
/** Changes that are not written yet because another tab has written the plan since. */
let changedWhileHeld = false;
/** Counts the changes, and those that have reached the store: closing the page cuts off a write that is under way. */
let changes = 0;
let written = 0;

/** Starts copying every change into the browser's store shortly after it is made. */
export function startAutosave(): () => void {
  const deaf = listenToTabs(heard);
  const stop = useAppStore.subscribe((state, before) => {
    const drawn = state.plan !== before.plan || state.chain !== before.chain;
    if (drawn || state.levelId !== before.levelId || state.selection !== before.selection) schedule(drawn);
  });
  const leave = () => {
    const held = useLibrary.getState().saveStatus.state === 'held';
    if (isBare() || (changes === written && !(held && changedWhileHeld))) return;
    keepUnsavedCopy(workNow(), held);
    void saveNow();
  };
  const hide = () => {
    if (document.visibilityState === 'hidden') leave();
  };
  window.addEventListener('pagehide', leave);
  document.addEventListener('visibilitychange', hide);
  return () => {
    stop();
    deaf();
    window.removeEventListener('pagehide', leave);
    document.removeEventListener('visibilitychange', hide);
  };
}

function schedule(drawn: boolean): void {
  if (useLibrary.getState().saveStatus.state === 'held') {
    if (drawn) noteHeldChange();
    return;
  }
  if (!drawn && !useLibrary.getState().inLibrary) return;
  changes += 1;
  if (drawn) showSaveStatus({ state: 'saving' });
  clearTimeout(timer);
  const now = performance.now();
  waitingSince ??= now;
  const rest = drawn && now - lastWrittenAt > LONGEST_WAIT_MS ? FIRST_MS : REST_MS;
  timer = setTimeout(() => void saveNow(), Math.max(0, Math.min(rest, waitingSince + LONGEST_WAIT_MS - now)));
}

/** The other tab's write came first: what is not written here yet is held up. */
function hold(at: number): void {
  showSaveStatus({ state: 'held', at });
  if (changes !== written) noteHeldChange();
}

/** The library is the other tab's until the user has chosen; a copy becomes a version if the page is lost before. */
function noteHeldChange(): void {
  changedWhileHeld = true;
  if (isCopyDue) return;
  isCopyDue = true;
  setTimeout(copyHeld, COPY_HELD_MS);
}

function copyHeld(): void {
  isCopyDue = false;
  if (useLibrary.getState().saveStatus.state === 'held' && changedWhileHeld) keepUnsavedCopy(workNow(), true);
}

/** Writes the copy without waiting; `force` also over what another tab has written. */
export function saveNow(force = false): Promise<void> {
  clearTimeout(timer);
  timer = undefined;
  waitingSince = null;
  // A write that fails in a way of its own is shown, and the next one is tried all the same.
  writing = writing
    .then(() => write(force))
    .catch((error) => showSaveStatus({ state: 'failed', reason: troubleInWords(error) }));
  return writing;
}

async function write(force: boolean): Promise<void> {
  if (!force && useLibrary.getState().saveStatus.state === 'held') return;
  if (isBare()) {
    showSaveStatus({ state: 'resting' });
    return;
  }
  const { inLibrary } = useLibrary.getState();
  const work = workNow();
  const upTo = changes;
  lastWrittenAt = performance.now();
  const result = await writeWork(work, lastSeen, force);
  if (result.ok) {
    lastSeen = work.savedAt;
    changedWhileHeld = false;
    written = upTo;
    if (!inLibrary) useLibrary.setState({ inLibrary: true });
    if (!inLibrary && readAddress().shows !== 'plans') showAddress({ shows: 'plan', id: work.id }, 'replace');
    if (changes === written) clearUnsavedCopies(tab);
    announceLibraryChange({ id: work.id, savedAt: work.savedAt, hash: result.hash });
    // A change made meanwhile has a write of its own, which says "saved" then: it may wait for its time or behind this one.
    if (changes === written) showSaveStatus({ state: 'saved', at: work.savedAt });
    return;
  }
  if (result.other !== null) hold(result.other);
  else showSaveStatus({ state: 'failed', reason: result.reason });
}

/** A sheet on which nothing was ever drawn is not stored. */
function isBare(): boolean {
  const { plan, chain } = useAppStore.getState();
  return !useLibrary.getState().inLibrary && chain.corners.length === 0 && !hasWork(plan);
}

/**
 * Stores the open plan before another one is opened; where another tab has written it since, as one of its versions.
 * Returns why that failed, in words; empty when the plan is stored.
 */
export async function storeOpenPlan(): Promise<string> {
  useAppStore.getState().endChain();
  const { saveStatus } = useLibrary.getState();
  if (saveStatus.state === 'held') return (await keepHeld()) ? '' : 'The browser did not store the copy.';
  do await saveNow();
  while (timer !== undefined);
  const after = useLibrary.getState().saveStatus;
  return after.state === 'failed' && hasWork(useAppStore.getState().plan) ? after.reason : '';
}

/** Stores changes that another tab's write has overtaken as a version of the plan; does nothing where there are none. */
export async function keepHeld(): Promise<boolean> {
  if (!changedWhileHeld) return true;
  const { id, text, savedAt } = workNow();
  const kept = await keepTextAsVersion(id, text, savedAt, 'other-tab');
  if (kept) clearUnsavedCopies(tab);
  return kept;
}

/**
 * The open plan is now `id`, as it was written at `savedAt` (null: not stored yet; it is written with its first change).
 * `show` opens it. The plan before must be stored already (`storeOpenPlan`).
 */
export function takeSheet(id: string, savedAt: number | null, show: () => void): void {
  useLibrary.setState({ openId: id, inLibrary: savedAt !== null });
  lastSeen = savedAt;
  changedWhileHeld = false;
  showSaveStatus({ state: 'resting' });
  show();
  // The subscription saw the plan change, but it is what the store holds already.
  clearTimeout(timer);
  timer = undefined;
  written = changes;
  if (savedAt === null) {
    changes += 1;
    void saveNow();
  } else showSaveStatus({ state: 'saved', at: savedAt });
}

function workNow(): Work {
  const { plan, levelId, selection, viewport, chain }: AppState = useAppStore.getState();
  const { openId: id } = useLibrary.getState();
  const view = { levelId, selection, viewport, corners: chain.corners };
  // Later than what was seen before, also where the clock was set back: the later of two states is the one that is opened.
  const savedAt = Math.max(Date.now(), (lastSeen ?? 0) + 1);
  return { id, plan, text: planText(plan), savedAt, tab, view };
}

function heard({ id, savedAt, hash }: TabNews): void {
  if (id !== useLibrary.getState().openId || typeof savedAt !== 'number' || savedAt === lastSeen) return;
  // The other tab shows another part of the same plan, or has something else selected: nothing of this one is overtaken.
  if (changes === written && hash === textHash(planText(useAppStore.getState().plan))) lastSeen = savedAt;
  else hold(savedAt);
}
