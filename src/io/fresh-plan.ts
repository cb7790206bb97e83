import type { Plan } from '../../geometry/plan/model.ts';
import { emptyPlan } from '../engine.ts';

/** An empty plan in the time zone of this computer: most tests are run where the tester lives. */
export function freshPlan(): Plan {
  const plan = emptyPlan();
  const { timeZone } = new Intl.DateTimeFormat().resolvedOptions();
  return { ...plan, site: { ...plan.site, timeZone } };
}
