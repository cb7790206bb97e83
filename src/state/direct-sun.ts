import type { LevelModel } from '../../geometry/level/types.ts';
import { type Heights, keepSunFloor, type Swept, setSunSource } from '../../geometry/sun/sun-floor.ts';
import { sweptArea, sweptAreaSteps } from '../../geometry/sun/swept.ts';
import type { SunTimes } from '../../geometry/sun/times.ts';
import { sunOnSpot } from '../advice/sun-on-spot.ts';
import { isGestureUnderWay } from './selectors.ts';
import { useAppStore } from './store.ts';
import { setSunWords } from './why-not.ts';

/*
 * Computes direct sun in the background, one opening at a time, and not during a drag. Until it is computed it is "unknown" in every
 * verdict. Loaded after the start, with the sun engine.
 */

interface Request {
  readonly model: LevelModel;
  readonly times: SunTimes;
  readonly heights: Heights;
}

/** Most time in one slice, ms: half a frame. */
const BUDGET_MS = 8;
/** Most waiting requests: more heights and levels than anything on the screen asks for. */
const MOST_WAITING = 200;

const waiting = new Map<string, Request>();
let steps: Generator<void, Swept> | null = null;
let current: Request | null = null;
let isScheduled = false;
let isStarted = false;
let isAtOnce = false;

/** A waiting caller: the keys of the requests that are not done, and the function to call when none is left. */
interface Awaited {
  readonly keys: Set<string>;
  readonly done: () => void;
}
let awaited: Awaited[] = [];
let asking: Set<string> | null = null;

/** Starts the computation of direct sun, and updates what was shown without it. */
export function startSun(): void {
  if (isStarted) return;
  isStarted = true;
  setSunWords(sunOnSpot);
  setSunSource((model, times, heights) =>
    isAtOnce ? sweptArea(model, times, heights) : later({ model, times, heights }),
  );
  useAppStore.subscribe((now, before) => {
    if (isGestureUnderWay(before) && !isGestureUnderWay(now)) schedule();
  });
  useAppStore.getState().sunChanged();
}

/** Runs `work` and returns its result, with every swept area that it asks for computed at once: for files, which must not lack any. */
export function sunAtOnce<T>(work: () => T): T {
  isAtOnce = true;
  try {
    return work();
  } finally {
    isAtOnce = false;
  }
}

/** Whether a requested area is not computed yet. */
const isSunPending = (): boolean => current !== null || waiting.size > 0;

/** Resolves when everything that was requested until now is computed. */
export const sunSettled = (): Promise<void> =>
  whenDone(new Set([...waiting.keys(), ...(current ? [keyOf(current)] : [])]));

/** Resolves when every swept area that `ask` requests is computed. They are computed before all others. */
export function sunSettledFor(ask: () => void): Promise<void> {
  const keys = new Set<string>();
  asking = keys;
  try {
    ask();
  } finally {
    asking = null;
  }
  return whenDone(keys);
}

function whenDone(keys: Set<string>): Promise<void> {
  return new Promise((done) => {
    awaited.push({ keys, done });
    settle();
  });
}

/** Calls the waiting callers that have no request left. Returns whether there were any. */
function settle(): boolean {
  const ready = awaited.filter(({ keys }) => keys.size === 0);
  awaited = awaited.filter(({ keys }) => keys.size > 0);
  for (const { done } of ready) done();
  return ready.length > 0;
}

/** Removes a request from all waiting callers, since it is computed or was dropped. */
function strike(key: string): void {
  for (const { keys } of awaited) keys.delete(key);
}

function later(request: Request): null {
  const key = keyOf(request);
  asking?.add(key);
  // The newest request is last, and is computed first.
  waiting.delete(key);
  waiting.set(key, request);
  for (const oldest of waiting.keys()) {
    if (waiting.size <= MOST_WAITING) break;
    waiting.delete(oldest);
    strike(oldest);
  }
  schedule();
  return null;
}

/** One request per level, times and heights: for a wall that is dragged only its last position is computed. */
function keyOf({ model, times, heights }: Request): string {
  return JSON.stringify([model.level.id, times, heights.base, heights.tall]);
}

function schedule(): void {
  if (isScheduled || !isSunPending()) return;
  isScheduled = true;
  setTimeout(work, 0);
}

function work(): void {
  isScheduled = false;
  if (isGestureUnderWay(useAppStore.getState())) return;
  const until = performance.now() + BUDGET_MS;
  let isKept = false;
  // Stops once a waiting caller was called, so that it runs before later requests.
  for (let isSettled = false; isSunPending() && !isSettled && performance.now() < until; isSettled = settle())
    isKept = workOn() || isKept;
  if (isSunPending()) schedule();
  if (!isSunPending() || isKept) useAppStore.getState().sunChanged();
  settle();
}

/** Returns whether an area was completed. */
function workOn(): boolean {
  if (!current || !steps) {
    const key = nextKey();
    const next = key === undefined ? undefined : waiting.get(key);
    if (key === undefined || !next) return false;
    waiting.delete(key);
    current = next;
    steps = sweptAreaSteps(current.model, current.times, current.heights);
  }
  const step = steps.next();
  if (!step.done) return false;
  keepSunFloor(current.model, current.times, current.heights, step.value);
  const key = keyOf(current);
  // Verdicts that were shown meanwhile may have requested this area again.
  const again = waiting.get(key);
  if (again && isSameDrawing(again.model, current.model)) waiting.delete(key);
  if (!waiting.has(key)) strike(key);
  current = null;
  steps = null;
  return true;
}

/** Returns the key of a request that a caller waits for, else of the latest request. */
function nextKey(): string | undefined {
  const first = awaited.flatMap(({ keys }) => [...keys]).find((key) => waiting.has(key));
  return first ?? [...waiting.keys()].at(-1);
}

const isSameDrawing = (one: LevelModel, two: LevelModel): boolean =>
  one.pieces === two.pieces && one.openings === two.openings;
