import type { LevelModel } from '../../geometry/level/types.ts';
import { type Heights, keepSunFloor, type Swept, setSunSource } from '../../geometry/sun/sun-floor.ts';
import { sweptArea, sweptAreaSteps } from '../../geometry/sun/swept.ts';
import type { SunTimes } from '../../geometry/sun/times.ts';
import { sunOnSpot } from '../advice/sun-on-spot.ts';
import { isGestureUnderWay } from './selectors.ts';
import { useAppStore } from './store.ts';
import { setSunWords } from './why-not.ts';

/*
 * Works direct sun out where nobody waits for it: an opening at a time, and nothing during a drag. What is not worked out yet is
 * "unknown" in every verdict. Loaded after the start, with the engine of the sun.
 */

interface Request {
  readonly model: LevelModel;
  readonly times: SunTimes;
  readonly heights: Heights;
}

/** Time in one go, ms: half a frame. */
const BUDGET_MS = 8;
/** More heights and levels than anything on the screen asks for. */
const MOST_WAITING = 200;

const waiting = new Map<string, Request>();
let steps: Generator<void, Swept> | null = null;
let current: Request | null = null;
let isScheduled = false;
let isStarted = false;
let isAtOnce = false;

/** What somebody waits for: the keys of the requests, and whom to call when none is left. */
interface Awaited {
  readonly keys: Set<string>;
  readonly done: () => void;
}
let awaited: Awaited[] = [];
let asking: Set<string> | null = null;

/** From now on direct sun is worked out, and what was shown without it is shown again. */
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

/** Returns what `work` returns, with every swept area that it asks for worked out at once: for files, which must not lack it. */
export function sunAtOnce<T>(work: () => T): T {
  isAtOnce = true;
  try {
    return work();
  } finally {
    isAtOnce = false;
  }
}

/** Returns whether something that was asked for is not worked out yet. */
const isSunPending = (): boolean => current !== null || waiting.size > 0;

/** Resolves when everything that was asked for until now is worked out. */
export const sunSettled = (): Promise<void> =>
  whenDone(new Set([...waiting.keys(), ...(current ? [keyOf(current)] : [])]));

/** Resolves when every swept area that `ask` asks for is worked out. They come before all others. */
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

/** Calls those for whom nothing is left. Returns whether there were any. */
function settle(): boolean {
  const ready = awaited.filter(({ keys }) => keys.size === 0);
  awaited = awaited.filter(({ keys }) => keys.size > 0);
  for (const { done } of ready) done();
  return ready.length > 0;
}

/** Nobody waits for a request any more: it is worked out, or was dropped. */
function strike(key: string): void {
  for (const { keys } of awaited) keys.delete(key);
}

function later(request: Request): null {
  const key = keyOf(request);
  asking?.add(key);
  // The newest last: it is worked out first.
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

/** One request per level, times and heights: of a wall that is dragged only the last place is worked out. */
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
  // Whoever waited has a turn before what is asked for later.
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
  // Verdicts that were shown meanwhile asked again for the area that was under way.
  const again = waiting.get(key);
  if (again && isSameDrawing(again.model, current.model)) waiting.delete(key);
  if (!waiting.has(key)) strike(key);
  current = null;
  steps = null;
  return true;
}

/** Returns what somebody waits for, else what was asked for last. */
function nextKey(): string | undefined {
  const first = awaited.flatMap(({ keys }) => [...keys]).find((key) => waiting.has(key));
  return first ?? [...waiting.keys()].at(-1);
}

const isSameDrawing = (one: LevelModel, two: LevelModel): boolean =>
  one.pieces === two.pieces && one.openings === two.openings;
