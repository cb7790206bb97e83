import type { Plan } from '../../geometry/plan/model.ts';
import { emptyPlan } from '../../geometry/planfile/empty.ts';

/**
 * Returns an empty plan in the time zone of this device: most jobs are where the tester is. The purpose, north, the kit and each level's
 * ceiling, use and ground are marked as not answered, so that they are asked for, not assumed.
 */
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
