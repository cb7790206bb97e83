import { createStore, useStore } from 'zustand';
import { selectReports } from '../state/selectors.ts';
import { type AppState, useAppStore } from '../state/store.ts';

/** While something is carried or pulled the panels follow at most so often, ms: figures that change faster cannot be read. */
const FOLLOW_MS = 100;

/** The state as the panels show it: behind the hand by `FOLLOW_MS` at most, and never with a verdict that holds no more. */
const calm = createStore<AppState>()(() => useAppStore.getState());

let waiting: ReturnType<typeof setTimeout> | undefined;

const follow = () => {
  clearTimeout(waiting);
  waiting = undefined;
  calm.setState(useAppStore.getState(), true);
};

useAppStore.subscribe((state, before) => {
  if (state === before) return;
  const underWay = state.live !== null || state.draft !== null;
  const begins = calm.getState().live === null && calm.getState().draft === null;
  if (!underWay || begins || !sameVerdicts(state, calm.getState())) follow();
  else waiting ??= setTimeout(follow, FOLLOW_MS);
});

function sameVerdicts(a: AppState, b: AppState): boolean {
  const [now, shown] = [selectReports(a), selectReports(b)];
  return (
    now.length === shown.length &&
    now.every(({ id, verdict }, i) => shown[i]?.id === id && shown[i].verdict === verdict)
  );
}

/** What a panel shows of the plan. Where a press must act on what is so now, `useAppStore.getState()` says it. */
export function useCalm<T>(select: (state: AppState) => T): T {
  return useStore(calm, select);
}
