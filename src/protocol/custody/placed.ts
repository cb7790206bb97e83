import type { Plan } from '../../../geometry/plan/model.ts';
import type { Visit } from '../../../geometry/plan/test-record.ts';
import { type Ms, msOf } from '../timing/clock.ts';

/** Returns the detectors that are placed in the house, by the log: from then on each is measuring where it is. A start alone can be a plan. */
export function placedDetectors({ log = [], visit }: Plan): readonly string[] {
  return log
    .filter(({ placed, placedBy }) => placedBy.trim() !== '' || (placed === true && visit.start !== null))
    .map(({ detector }) => detector);
}

/**
 * Returns the start where it is only planned: it is marked so, also once its time has passed, or it lies ahead and no detector is recorded as
 * placed. Null for any other.
 */
export function plannedStart(plan: Plan, now: Ms): Ms | null {
  const start = msOf(plan.visit.start);
  if (start === null || plan.visit.startPlanned) return start;
  return start > now && placedDetectors(plan).length === 0 ? start : null;
}

/** Returns the start that was recorded; null where there is none, or only a planned one. */
export const recordedStart = ({ start, startPlanned }: Visit): string | null => (startPlanned ? null : start);

/** Returns the visit with another start, planned or recorded. */
export function withVisitStart({ startPlanned: _, ...visit }: Visit, start: string | null, isPlanned: boolean): Visit {
  return { ...visit, start, ...(start !== null && isPlanned ? { startPlanned: true } : {}) };
}
