import { createStore, useStore } from 'zustand';
import type { DetectorReport } from '../../../geometry/check/types.ts';
import { toneOf } from '../../../geometry/messages/tone.ts';
import type { AppState } from '../../state/app-state.ts';
import { isGestureUnderWay } from '../../state/selectors.ts';
import { shownReports } from '../../state/shown-results.ts';
import { useAppStore } from '../../state/store.ts';

/** During a drag the panels update at most this often, ms: figures that change faster cannot be read. */
const FOLLOW_MS = 100;
/** A drag that rests for so long, ms, shows its figures, however long an update takes. */
const REST_MS = 150;
/** Frames come first: on a slow device the panels have a part of this many of its time. */
const SHARE = 25;

/** The state as the panels show it: a little behind a drag, and never with an outdated verdict. */
const throttled = createStore<AppState>()(() => useAppStore.getState());

let waiting: ReturnType<typeof setTimeout> | undefined;
let resting: ReturnType<typeof setTimeout> | undefined;
/** How long the panels took over their last update, ms. */
let cost = 0;
/** The reports at the last update: those of an outdated plan would be computed again. */
let shown: readonly DetectorReport[] = [];

const follow = () => {
  clearTimeout(waiting);
  clearTimeout(resting);
  waiting = undefined;
  const state = useAppStore.getState();
  if (!isGestureUnderWay(state)) {
    throttled.setState(state, true);
    return;
  }
  shown = shownReports(state);
  const start = performance.now();
  throttled.setState(state, true);
  // React renders in a microtask that comes before this one.
  queueMicrotask(() => {
    cost = performance.now() - start;
  });
};

useAppStore.subscribe((state) => {
  const begins = !isGestureUnderWay(throttled.getState());
  if (!isGestureUnderWay(state) || begins || !sameVerdicts(shownReports(state), shown)) follow();
  else {
    waiting ??= setTimeout(follow, Math.max(FOLLOW_MS, SHARE * cost));
    clearTimeout(resting);
    resting = setTimeout(follow, Math.max(REST_MS, 4 * cost));
  }
});

function sameVerdicts(a: readonly DetectorReport[], b: readonly DetectorReport[]): boolean {
  return a.length === b.length && a.every((each, i) => b[i]?.id === each.id && toneOf(b[i]) === toneOf(each));
}

/** Returns what a panel shows of the state, throttled during a drag. What acts on a press reads `useAppStore.getState()`. */
export function useThrottled<T>(select: (state: AppState) => T): T {
  return useStore(throttled, select);
}
