import type { Plan } from '../../../geometry/plan/model.ts';
import type { Kit } from '../../../geometry/plan/test-record.ts';
import { evaluateResults } from '../results/evaluate-results.ts';
import { isRetest } from '../results/next-steps.ts';
import { visitIssues } from '../validity/test-state.ts';
import { testStateFrom } from '../validity/validity.ts';
import { kitWindow } from './exposure-window.ts';

/** What the next date of a test hangs on. A few plain values, so that a list of plans knows it without the plans. */
export interface VisitFacts {
  /** IANA zone of the site. */
  readonly zone: string;
  readonly kit: Pick<Kit, 'minimumHours' | 'maximumHours' | 'labDays'>;
  /** The pick-up as planned; left out by an earlier Stillspot. */
  readonly plannedEnd?: string | null;
  /** Why the results in hand are not the end of it: "Test again", say; empty or left out where nothing speaks against them. */
  readonly retestReason?: string;
  readonly posted: string | null;
  readonly received: string | null;
  /** Read on site: nothing goes to a laboratory. */
  readonly monitor: boolean;
  /** Whether a result is in. */
  readonly read: boolean;
}

export function visitFacts(plan: Plan): VisitFacts {
  const { site, kit, visit, readings } = plan;
  const { labDays } = kit;
  const { minimumHours, maximumHours } = kitWindow(plan);
  return {
    zone: site.timeZone,
    kit: { minimumHours, maximumHours, labDays },
    plannedEnd: visit.plannedEnd ?? null,
    retestReason: retestReason(plan),
    posted: visit.posted ?? null,
    received: visit.received ?? null,
    monitor: visit.device === 'monitor',
    read: readings.length > 0,
  };
}

/**
 * Why a test has to be done again, in a few words for a list of plans; empty where nothing that times, house and results tell asks for
 * it. Placement is left out: a list does not look at drawings.
 */
function retestReason(plan: Plan): string {
  if (plan.visit.end === null) return '';
  if (testStateFrom(visitIssues(plan)).validity === 'not-evaluated') return 'Not evaluated: test again';
  const steps = evaluateResults(plan, testStateFrom([])).map(({ next }) => next.id);
  if (steps.some(isRetest)) return 'The results do not agree: test again';
  return '';
}
