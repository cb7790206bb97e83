import type { Plan } from '../../geometry/plan/model.ts';
import { emptyPlan } from '../../geometry/planfile/empty.ts';

/** An empty plan in the time zone of this device: most jobs are where the tester is. Why it is tested, who lives there, what is under it and what the kit allows is asked, not assumed. */
export function freshPlan(): Plan {
  const plan = emptyPlan();
  const { timeZone } = Intl.DateTimeFormat().resolvedOptions();
  return {
    ...plan,
    site: { ...plan.site, ...(timeZone ? { timeZone } : {}), purposeAnswered: false, northAnswered: false },
    kit: { ...plan.kit, kind: '', hoursAnswered: false },
    levels: plan.levels.map((level) => ({
      ...level,
      ceilingAnswered: false,
      livingAnswered: false,
      groundAnswered: false,
    })),
  };
}
