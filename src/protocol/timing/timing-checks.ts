import type { Plan } from '../../../geometry/plan/model.ts';
import { closedCheck } from './closed-building.ts';
import { exposureCheck } from './exposure.ts';
import { laboratoryCheck } from './laboratory.ts';
import { mitigationCheck } from './mitigation.ts';
import type { TimingCheck } from './timing-check.ts';
import { visitTimes } from './visit-times.ts';
import { weatherCheck } from './weather-check.ts';

/** Returns the check of every time limit, in the order of the visit. */
export function timingChecks(plan: Plan): readonly TimingCheck[] {
  const times = visitTimes(plan);
  return [
    closedCheck(plan, times),
    mitigationCheck(plan, times),
    exposureCheck(plan, times),
    weatherCheck(plan, times),
    laboratoryCheck(plan, times),
  ];
}
