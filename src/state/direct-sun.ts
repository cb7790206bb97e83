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
let settled: (() => void)[] = [];

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

/** Resolves when everything that was asked for is worked out. */
export const sunSettled = (): Promise<void> =>
  isSunPending() ? new Promise((done) => settled.push(done)) : Promise.resolve();

function later(request: Request): null {
  const key = keyOf(request);
  // The newest last: it is worked out first.
  waiting.delete(key);
  waiting.set(key, request);
  for (const oldest of waiting.keys()) {
    if (waiting.size <= MOST_WAITING) break;
    waiting.delete(oldest);
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
  while (isSunPending() && performance.now() < until) isKept = workOn() || isKept;
  if (isSunPending()) schedule();
  if (!isSunPending() || isKept) useAppStore.getState().sunChanged();
  if (isSunPending()) return;
  for (const done of settled) done();
  settled = [];
}

/** Returns whether an area was completed. */
function workOn(): boolean {
  if (!current || !steps) {
    const next = [...waiting].at(-1);
    if (!next) return false;
    waiting.delete(next[0]);
    current = next[1];
    steps = sweptAreaSteps(current.model, current.times, current.heights);
  }
  const step = steps.next();
  if (!step.done) return false;
  keepSunFloor(current.model, current.times, current.heights, step.value);
  current = null;
  steps = null;
  return true;
}
