import { createStore, useStore } from 'zustand';
import type { DetectorReport } from '../../../geometry/check/types.ts';
import { toneOf } from '../../../geometry/messages/tone.ts';
import type { AppState } from '../../state/app-state.ts';
import { isGestureUnderWay } from '../../state/selectors.ts';
import { shownReports } from '../../state/shown-results.ts';
import { useAppStore } from '../../state/store.ts';

/** Minimum time between two updates of the panels during a drag, ms: figures that change faster cannot be read. */
const FOLLOW_MS = 100;
/** The panels are updated when a drag has rested for this long, ms; longer if an update itself is slow. */
const REST_MS = 150;
/** Panels get at most 1/25 of the time on a slow device, since frames have priority. */
const SHARE = 25;

/** The state that the panels show: a little behind a drag, but never with an outdated verdict. */
const throttled = createStore<AppState>()(() => useAppStore.getState());

let waiting: ReturnType<typeof setTimeout> | undefined;
let resting: ReturnType<typeof setTimeout> | undefined;
/** Duration of the last update of the panels, ms. */
let cost = 0;
/** The reports at the last update, kept because asking for those of an outdated plan would compute them again. */
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
  // React renders in an earlier microtask than this one.
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

/** Returns a part of the state for a panel, throttled during a drag. Event handlers must read `useAppStore.getState()` instead. */
export function useThrottled<T>(select: (state: AppState) => T): T {
  return useStore(throttled, select);
}
