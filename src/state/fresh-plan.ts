import { emptyPlan } from '../../geometry/plan/empty.ts';
import type { Plan } from '../../geometry/plan/model.ts';

/** An empty plan in the time zone of this device: most jobs are where the tester is. */
export function freshPlan(): Plan {
  const plan = emptyPlan();
  const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
  return timeZone ? { ...plan, site: { ...plan.site, timeZone } } : plan;
}
