import type { Plan } from '../../../geometry/plan/model.ts';
import type { Kit } from '../../../geometry/plan/test-record.ts';
import { evaluateResults } from '../results/evaluate-results.ts';
import { isRetest } from '../results/next-steps.ts';
import { visitIssues } from '../validity/test-state.ts';
import { testStateFrom } from '../validity/validity.ts';
import { hoursAreKnown, kitWindow, labDaysAreKnown } from './exposure-limits.ts';

/** The values that the next due date depends on, for a list of plans that does not load the plans. */
export interface VisitFacts {
  /** IANA zone of the site. */
  readonly zone: string;
  readonly kit: Pick<Kit, 'minimumHours' | 'maximumHours' | 'labDays' | 'hoursAnswered' | 'labDaysAnswered'>;
  /** Whether the start is only planned, not recorded; left out if it is not. */
  readonly startPlanned?: boolean;
  /** The planned pick-up; earlier versions left it out. */
  readonly plannedEnd?: string | null;
  /** Why a retest is needed, in a few words; empty or left out if none is. */
  readonly retestReason?: string;
  readonly posted: string | null;
  readonly received: string | null;
  /** A continuous monitor, read on site: nothing is sent to a laboratory. */
  readonly monitor: boolean;
  /** Whether there is a result. */
  readonly read: boolean;
}

/** Returns the values of a plan, with the exposure hours that both the kit and the profile allow. */
export function visitFacts(plan: Plan): VisitFacts {
  const { site, kit, visit, readings } = plan;
  const { labDays } = kit;
  const { minimumHours, maximumHours } = kitWindow(plan);
  return {
    zone: site.timeZone,
    kit: {
      minimumHours,
      maximumHours,
      labDays,
      ...(hoursAreKnown(plan) ? {} : { hoursAnswered: false }),
      ...(labDaysAreKnown(plan) === hoursAreKnown(plan) ? {} : { labDaysAnswered: labDaysAreKnown(plan) }),
    },
    ...(visit.startPlanned ? { startPlanned: true } : {}),
    plannedEnd: visit.plannedEnd ?? null,
    retestReason: retestReason(plan),
    posted: visit.posted ?? null,
    received: visit.received ?? null,
    monitor: visit.device === 'monitor',
    read: readings.length > 0,
  };
}

/**
 * Returns why a retest is needed, in a few words; empty if timing, conditions and results call for none. Placement is left out: it would
 * need the drawing.
 */
function retestReason(plan: Plan): string {
  if (plan.visit.end === null) return '';
  if (testStateFrom(visitIssues(plan)).validity === 'not-evaluated') return 'Invalid: test again';
  const steps = evaluateResults(plan, testStateFrom([])).map(({ next }) => next.id);
  if (steps.some(isRetest)) return 'The results do not agree: test again';
  return '';
}
