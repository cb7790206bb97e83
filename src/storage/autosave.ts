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

/** A copy is written when nothing has changed for `REST_MS`; the first change after a pause is written after `FIRST_MS`. */
const REST_MS = 250;
const FIRST_MS = 40;
/**
 * A change waits no longer than this, even if others follow it, ms: a held key changes the plan thirty times a second, and a browser that is
 * killed may lose no more than half a second of work.
 */
const LONGEST_WAIT_MS = 300;
/** Interval at which changes are copied while another tab holds up saving, ms. */
const COPY_HELD_MS = 1500;

const tab = freshId();
let lastSeen: number | null = null;
let lastWrittenAt = Number.NEGATIVE_INFINITY;
/** Time of the first unwritten change, ms of `performance.now()`; null for none. */
let waitingSince: number | null = null;
/** Whether a copy of held changes is scheduled. */
let isCopyDue = false;
let timer: ReturnType<typeof setTimeout> | undefined;
let writing: Promise<void> = Promise.resolve();
/** Whether there are unwritten changes because another tab has written the plan since. */
let changedWhileHeld = false;
/** Number of changes, and how many of them the store has confirmed: closing the page interrupts a write in progress. */
let changes = 0;
let written = 0;

/** Starts copying every change into the browser's store shortly after it is made. Returns the function that stops it. */
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

/** Stops saving because another tab has written the plan first, at `at`. */
function hold(at: number): void {
  showSaveStatus({ state: 'held', at });
  if (changes !== written) noteHeldChange();
}

/** Schedules a copy of the changes: it becomes a version if the page is closed before the user has chosen between the tabs. */
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

/** Writes the plan without waiting; `force` also overwrites what another tab has written. Never rejects: the save status shows a failure. */
export function saveNow(force = false): Promise<void> {
  clearTimeout(timer);
  timer = undefined;
  waitingSince = null;
  // An unexpected failure is shown as well, and does not prevent the next write.
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
    // A change made meanwhile has its own write, scheduled or queued, which then shows "saved".
    if (changes === written) showSaveStatus({ state: 'saved', at: work.savedAt });
    return;
  }
  if (result.other !== null) hold(result.other);
  else showSaveStatus({ state: 'failed', reason: result.reason });
}

/** Whether nothing was ever drawn on the sheet: it is then not stored. */
function isBare(): boolean {
  const { plan, chain } = useAppStore.getState();
  return !useLibrary.getState().inLibrary && chain.corners.length === 0 && !hasWork(plan);
}

/**
 * Stores the open plan before another one is opened; if another tab has written it since, stores it as one of its versions.
 * Returns why that failed, in words; empty if the plan is stored.
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

/** Stores changes that another tab holds up as a version of the plan. Returns whether that succeeded; true if there are none. */
export async function keepHeld(): Promise<boolean> {
  if (!changedWhileHeld) return true;
  const { id, text, savedAt } = workNow();
  const kept = await keepTextAsVersion(id, text, savedAt, 'other-tab');
  if (kept) clearUnsavedCopies(tab);
  return kept;
}

/**
 * Makes `id` the open plan, as it was written at `savedAt` (ms since 1970; null if it is not stored: it is then stored now, or with its
 * first change if nothing is drawn on it). `show` opens it. The previous plan must be stored already (`storeOpenPlan`).
 */
export function takeSheet(id: string, savedAt: number | null, show: () => void): void {
  useLibrary.setState({ openId: id, inLibrary: savedAt !== null });
  lastSeen = savedAt;
  changedWhileHeld = false;
  showSaveStatus({ state: 'resting' });
  show();
  // The subscription has counted the opened plan as a change, but the store has it already.
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
  // Always later than the last seen time, even if the clock was set back: the later of two states is the one that is opened.
  const savedAt = Math.max(Date.now(), (lastSeen ?? 0) + 1);
  return { id, plan, text: planText(plan), savedAt, tab, view };
}

function heard({ id, savedAt, hash }: TabNews): void {
  if (id !== useLibrary.getState().openId || typeof savedAt !== 'number' || savedAt === lastSeen) return;
  // The plans are equal: only view or selection differ in the other tab, so nothing here is held up.
  if (changes === written && hash === textHash(planText(useAppStore.getState().plan))) lastSeen = savedAt;
  else hold(savedAt);
}
