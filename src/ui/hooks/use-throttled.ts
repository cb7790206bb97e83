import { createStore, useStore } from 'zustand';
import type { DetectorReport } from '../../../geometry/check/types.ts';
import { toneOf } from '../../../geometry/messages/tone.ts';
import type { AppState } from '../../state/app-state.ts';
import { isGestureUnderWay } from '../../state/selectors.ts';
import { shownReports } from '../../state/shown-results.ts';
import { useAppStore } from '../../state/store.ts';

/** During a drag the panels update at most this often, ms: figures that change faster cannot be read. */
const FOLLOW_MS = 100;

/** The state as the panels show it: at most `FOLLOW_MS` behind a drag, and never with an outdated verdict. */
const throttled = createStore<AppState>()(() => useAppStore.getState());

let waiting: ReturnType<typeof setTimeout> | undefined;
/** The reports at the last update: those of an outdated plan would be computed again. */
let shown: readonly DetectorReport[] = [];

const follow = () => {
  clearTimeout(waiting);
  waiting = undefined;
  const state = useAppStore.getState();
  if (isGestureUnderWay(state)) shown = shownReports(state);
  throttled.setState(state, true);
};

useAppStore.subscribe((state) => {
  const begins = !isGestureUnderWay(throttled.getState());
  if (!isGestureUnderWay(state) || begins || !sameVerdicts(shownReports(state), shown)) follow();
  else waiting ??= setTimeout(follow, FOLLOW_MS);
});

function sameVerdicts(a: readonly DetectorReport[], b: readonly DetectorReport[]): boolean {
  return a.length === b.length && a.every((each, i) => b[i]?.id === each.id && toneOf(b[i]) === toneOf(each));
}

/** Returns what a panel shows of the state, throttled during a drag. What acts on a press reads `useAppStore.getState()`. */
export function useThrottled<T>(select: (state: AppState) => T): T {
  return useStore(throttled, select);
}
