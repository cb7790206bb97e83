import type { Plan } from '../../../geometry/plan/model.ts';
import { type Ms, msOf } from '../timing/clock.ts';

/** Returns the detectors that are placed in the house, by the log: from then on each is measuring where it is. A start alone can be a plan. */
export function placedDetectors({ log = [], visit }: Plan): readonly string[] {
  return log
    .filter(({ placed, placedBy }) => placedBy.trim() !== '' || (placed === true && visit.start !== null))
    .map(({ detector }) => detector);
}

/** Returns the start where it is only planned: it lies ahead, and no detector is recorded as placed. Null for any other. */
export function plannedStart(plan: Plan, now: Ms): Ms | null {
  const start = msOf(plan.visit.start);
  return start !== null && start > now && placedDetectors(plan).length === 0 ? start : null;
}
