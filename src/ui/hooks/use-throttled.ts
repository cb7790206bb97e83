import { createStore, useStore } from 'zustand';
import type { DetectorReport } from '../../../geometry/check/types.ts';
import { toneOf } from '../../../geometry/messages/tone.ts';
import { selectReports } from '../../state/selectors.ts';
import { type AppState, useAppStore } from '../../state/store.ts';

/** While something is carried or pulled the panels follow at most so often, ms: figures that change faster cannot be read. */
const FOLLOW_MS = 100;

/** The state as the panels show it: behind the hand by `FOLLOW_MS` at most, and never with a verdict that holds no more. */
const calm = createStore<AppState>()(() => useAppStore.getState());

let waiting: ReturnType<typeof setTimeout> | undefined;
/** As they were when the panels followed last: reports of a plan that is gone by would be worked out again. */
let shown: readonly DetectorReport[] = [];

const follow = () => {
  clearTimeout(waiting);
  waiting = undefined;
  const state = useAppStore.getState();
  if (isUnderWay(state)) shown = selectReports(state);
  calm.setState(state, true);
};

useAppStore.subscribe((state) => {
  const begins = !isUnderWay(calm.getState());
  if (!isUnderWay(state) || begins || !sameVerdicts(selectReports(state), shown)) follow();
  else waiting ??= setTimeout(follow, FOLLOW_MS);
});

function isUnderWay({ live, draft }: AppState): boolean {
  return live !== null || draft !== null;
}

function sameVerdicts(a: readonly DetectorReport[], b: readonly DetectorReport[]): boolean {
  return a.length === b.length && a.every((each, i) => b[i]?.id === each.id && toneOf(b[i]) === toneOf(each));
}

/** What a panel shows of the plan. Where a press must act on what is so now, `useAppStore.getState()` says it. */
export function useThrottled<T>(select: (state: AppState) => T): T {
  return useStore(calm, select);
}
