import { describeEdit } from '../../../geometry/messages/edit.ts';
import { capital } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { modelOf } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';
import { describeRecordEdit } from './record-news.ts';

/** The plan and its history as they were announced last. */
export interface SeenHistory {
  readonly plan: Plan;
  readonly past: ReadonlySet<Plan | undefined>;
  readonly future: ReadonlySet<Plan | undefined>;
}

export function seenHistory(): SeenHistory {
  const { pastStates, futureStates } = useAppStore.temporal.getState();
  const plans = (states: typeof pastStates) => new Set(states.map(({ plan }) => plan));
  return { plan: useAppStore.getState().plan, past: plans(pastStates), future: plans(futureStates) };
}

/** Returns what was changed, undone or done again since, as a sentence; empty if the plan is the same. */
export function planNews(seen: SeenHistory): string {
  const { plan } = useAppStore.getState();
  if (plan === seen.plan) return '';
  // An undone step is described by the change that it had made.
  if (seen.past.has(plan)) return `Undone: ${editWords(plan, seen.plan, true) || 'a step'}.`;
  if (seen.future.has(plan)) return `Done again: ${editWords(seen.plan, plan, true) || 'a step'}.`;
  const done = editWords(seen.plan, plan, false);
  return done && `${capital(done)}.`;
}

function editWords(before: Plan, after: Plan, whole: boolean): string {
  const drawn = describeEdit(before, after, modelOf);
  return [drawn, describeRecordEdit(before, after, whole)].filter(Boolean).join(', ');
}
