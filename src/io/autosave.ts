import type { Plan } from '../../geometry/plan/model.ts';
import { parsePlan, writePlan } from '../engine.ts';
import { type AppState, useAppStore } from '../state/store.ts';
import { isStoredPlan, putOnShelf, readWork, type StoredPlan, troubleInWords, writeWork } from './cabinet.ts';
import { clearLastWords, leaveLastWords, takeLastWords } from './last-words.ts';
import { showSign, useSavedSign } from './saved-sign.ts';

/** How long the hand must rest before a copy is written, ms. */
const REST_MS = 300;
const CHANNEL = 'stillspot-plan';

const tab = crypto.randomUUID();
let lastSeen: number | null = null;
let timer: ReturnType<typeof setTimeout> | undefined;
let writing: Promise<void> = Promise.resolve();
/** Changes that are written nowhere yet, because another tab came first. */
let changedWhileHeld = false;
let channel: BroadcastChannel | null = null;

/** What was found when the page opened. */
export type Restored =
  | { readonly found: 'nothing' }
  | { readonly found: 'plan' }
  | { readonly found: 'unreadable'; readonly kept: boolean }
  | { readonly found: 'no-store'; readonly reason: string };

/** Puts the plan of last time back on the sheet. What cannot be read is kept aside, never thrown away. */
export async function restoreWork(): Promise<Restored> {
  let stored: unknown;
  try {
    stored = await readWork();
  } catch (error) {
    const reason = troubleInWords(error);
    showSign({ state: 'failed', reason });
    return { found: 'no-store', reason };
  }
  const last = takeLastWords();
  if (last?.held) await shelveStored(last.plan);
  else if (last && (!isStoredPlan(stored) || last.plan.savedAt > stored.savedAt)) {
    if (isStoredPlan(stored)) lastSeen = stored.savedAt;
    stored = last.plan;
  }
  if (stored === undefined) return { found: 'nothing' };
  const read = isStoredPlan(stored) ? parsePlan(stored.text) : null;
  if (!isStoredPlan(stored) || !read?.ok) {
    const text = isStoredPlan(stored) ? stored.text : JSON.stringify(stored);
    const kept = await putOnShelf({ title: 'Could not be read', text, putAwayAt: Date.now(), readable: false });
    return { found: 'unreadable', kept };
  }
  showStored(read.plan, stored);
  return { found: 'plan' };
}

/** From now on every change is copied into the browser's store shortly after it is made. */
export function startAutosave(): () => void {
  if (typeof BroadcastChannel !== 'undefined') {
    channel = new BroadcastChannel(CHANNEL);
    channel.onmessage = ({ data }: MessageEvent<unknown>) => heard(data);
  }
  const stop = useAppStore.subscribe((state, before) => {
    const drawn = state.plan !== before.plan || state.chain !== before.chain;
    if (drawn || state.levelId !== before.levelId || state.selection !== before.selection) schedule(drawn);
  });
  const leave = () => {
    const held = useSavedSign.getState().sign.state === 'held';
    if (timer === undefined && !(held && changedWhileHeld)) return;
    leaveLastWords({ plan: storedFrom(useAppStore.getState(), Date.now()), held });
    void saveNow();
  };
  const hide = () => {
    if (document.visibilityState === 'hidden') leave();
  };
  window.addEventListener('pagehide', leave);
  document.addEventListener('visibilitychange', hide);
  return () => {
    stop();
    window.removeEventListener('pagehide', leave);
    document.removeEventListener('visibilitychange', hide);
    channel?.close();
    channel = null;
  };
}

function schedule(drawn: boolean): void {
  if (useSavedSign.getState().sign.state === 'held') {
    changedWhileHeld ||= drawn;
    return;
  }
  if (drawn) showSign({ state: 'saving' });
  clearTimeout(timer);
  timer = setTimeout(() => void saveNow(), REST_MS);
}

/** Writes the copy without waiting; `force` also over what another tab has written. */
export function saveNow(force = false): Promise<void> {
  clearTimeout(timer);
  timer = undefined;
  writing = writing.then(() => write(force));
  return writing;
}

async function write(force: boolean): Promise<void> {
  if (!force && useSavedSign.getState().sign.state === 'held') return;
  const state = useAppStore.getState();
  const savedAt = Date.now();
  const result = await writeWork(storedFrom(state, savedAt), lastSeen, force);
  if (result.ok) {
    lastSeen = savedAt;
    changedWhileHeld = false;
    clearLastWords();
    channel?.postMessage({ savedAt });
    // A change made meanwhile has set the timer again: its own write will say "saved".
    if (timer === undefined) showSign({ state: 'saved', at: savedAt });
    return;
  }
  if (result.other) showSign({ state: 'held', at: result.other.savedAt });
  else showSign({ state: 'failed', reason: result.reason });
}

/** Takes over what the other tab has written; what is open here goes on the shelf. */
export async function takeOther(): Promise<boolean> {
  const stored = await readWork().catch(() => undefined);
  const read = isStoredPlan(stored) ? parsePlan(stored.text) : null;
  if (!isStoredPlan(stored) || !read?.ok) return false;
  changedWhileHeld = false;
  useAppStore.getState().endChain();
  await shelveStored(storedFrom(useAppStore.getState(), Date.now()));
  showStored(read.plan, stored);
  return true;
}

function showStored(plan: Plan, stored: StoredPlan): void {
  const { view } = stored;
  useAppStore.getState().openPlan(plan);
  const level = plan.levels.find(({ id }) => id === view.levelId) ?? plan.levels[0];
  if (level) useAppStore.setState({ levelId: level.id, selection: selectionOn(level, view.selection) });
  if (view.corners && view.corners.length > 0) {
    useAppStore.setState({ tool: { kind: 'wall' }, chain: { corners: view.corners, takenBack: [] } });
  }
  // The subscription saw the plan change; it is what lies in the store already.
  clearTimeout(timer);
  timer = undefined;
  lastSeen = stored.savedAt;
  showSign({ state: 'saved', at: stored.savedAt });
}

function selectionOn(level: Plan['levels'][number], ids: readonly string[]): readonly string[] {
  const there = new Set(
    [level.walls, level.openings, level.rooms, level.fixtures, level.objects, level.detectors].flatMap((items) =>
      items.map(({ id }) => id),
    ),
  );
  return ids.filter((id) => there.has(id));
}

function storedFrom({ plan, levelId, selection, viewport, chain }: AppState, savedAt: number): StoredPlan {
  return { text: writePlan(plan), savedAt, tab, view: { levelId, selection, viewport, corners: chain.corners } };
}

function shelveStored({ text, savedAt }: StoredPlan): Promise<boolean> {
  const read = parsePlan(text);
  return putOnShelf({ title: read.ok ? read.plan.title : '', text, putAwayAt: savedAt, readable: read.ok });
}

function heard(data: unknown): void {
  const savedAt = typeof data === 'object' && data !== null ? (data as { savedAt?: unknown }).savedAt : undefined;
  if (typeof savedAt === 'number' && savedAt !== lastSeen) showSign({ state: 'held', at: savedAt });
}
