import type { Plan } from '../../../geometry/plan/model.ts';
import type { Visit } from '../../../geometry/plan/test-record.ts';
import { type Ms, msOf } from '../timing/clock.ts';

/** Returns the ids of the detectors that the log records as placed. A start alone does not count: it can be planned. */
export function placedDetectors({ log = [], visit }: Plan): readonly string[] {
  return log
    .filter(({ placed, placedBy }) => placedBy.trim() !== '' || (placed === true && visit.start !== null))
    .map(({ detector }) => detector);
}

/**
 * Returns the start if it is only planned, else null. It is planned if it is marked so, even when its time has passed, or if it is in the
 * future and no detector is recorded as placed.
 */
export function plannedStart(plan: Plan, now: Ms): Ms | null {
  const start = msOf(plan.visit.start);
  if (start === null || plan.visit.startPlanned) return start;
  return start > now && placedDetectors(plan).length === 0 ? start : null;
}

/** Returns the recorded start; null if there is none, or only a planned one. */
export const recordedStart = ({ start, startPlanned }: Visit): string | null => (startPlanned ? null : start);

/** Returns the visit with another start, planned or recorded. */
export function withVisitStart({ startPlanned: _, ...visit }: Visit, start: string | null, isPlanned: boolean): Visit {
  return { ...visit, start, ...(start !== null && isPlanned ? { startPlanned: true } : {}) };
}
