import type { Plan } from '../../../geometry/plan/model.ts';
import { type Ms, msOf } from './clock.ts';

/** The instants of a visit, ms; null if not known. */
export interface VisitTimes {
  readonly closed: Ms | null;
  readonly opened: Ms | null;
  readonly mitigation: Ms | null;
  readonly start: Ms | null;
  /** Whether `start` is only planned. */
  readonly startPlanned: boolean;
  /** The recorded pick-up, else the planned one. */
  readonly end: Ms | null;
  /** Whether `end` is only planned. */
  readonly planned: boolean;
  readonly posted: Ms | null;
  readonly received: Ms | null;
}

/** Returns the instants of a plan's visit. */
export function visitTimes({ visit }: Plan): VisitTimes {
  return {
    closed: msOf(visit.closedSince),
    opened: msOf(visit.closedUntil),
    mitigation: msOf(visit.mitigationOnSince),
    start: msOf(visit.start),
    startPlanned: visit.startPlanned === true,
    end: msOf(visit.end) ?? msOf(visit.plannedEnd),
    planned: visit.end === null && msOf(visit.plannedEnd) !== null,
    posted: msOf(visit.posted),
    received: msOf(visit.received),
  };
}
