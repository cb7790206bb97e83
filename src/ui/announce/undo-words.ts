import type { Plan } from '../../../geometry/plan/model.ts';
import type { Stage } from '../../advice/stages.ts';
import { isPlanInView, usePanels } from '../../commands/panels.ts';
import { useAppStore } from '../../state/store.ts';
import { planNews, seenHistory } from './plan-news.ts';

/** Stage that shows each part of a plan; the title and the units of length are at the top of every page. */
const STAGE_OF = {
  site: 'site',
  protocol: 'site',
  tapeTolerance: 'site',
  kit: 'time',
  visit: 'time',
  practice: 'time',
  conditions: 'house',
  agreement: 'house',
  log: 'log',
  weather: 'log',
  readings: 'read',
  earlier: 'read',
  report: 'sheet',
} as const satisfies Partial<Record<keyof Plan, Stage>>;

/** Stages whose parts the page of the two visits shows too. */
const ON_VISIT: readonly Stage[] = ['time', 'house', 'log'];

/** Shows in the message line what was undone or done again, if the change itself is not in view. */
export function startUndoWords(): void {
  let seen = seenHistory();
  useAppStore.temporal.subscribe(() => {
    seen = seenHistory();
  });
  useAppStore.subscribe(({ plan }, { plan: before }) => {
    if (plan === before || !(seen.past.has(plan) || seen.future.has(plan)) || isInView(plan, before)) return;
    const words = planNews({ ...seen, plan: before });
    // Later, because undo and redo clear the message line after they have changed the plan.
    queueMicrotask(() => {
      const { message, say } = useAppStore.getState();
      if (!message) say(words);
    });
  });
}

/** Returns whether the page shows all differences between two plans. */
function isInView(plan: Plan, before: Plan): boolean {
  const panels = usePanels.getState();
  const onPlan = isPlanInView(panels);
  if (plan.levels !== before.levels && !onPlan) return false;
  const shown: readonly Stage[] = panels.visitOpen ? ON_VISIT : [onPlan ? panels.planStage : panels.stage];
  return (Object.keys(STAGE_OF) as (keyof typeof STAGE_OF)[])
    .filter((key) => plan[key] !== before[key])
    .every((key) => shown.includes(STAGE_OF[key]));
}
