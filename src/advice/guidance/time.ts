import type { Plan } from '../../../geometry/plan/model.ts';
import { plannedStart } from '../../protocol/custody/placed.ts';
import { type Ms, msOf } from '../../protocol/timing/clock.ts';
import { labDaysAreKnown } from '../../protocol/timing/exposure-limits.ts';
import { formatShortInstant } from '../../protocol/timing/format-time.ts';
import { nextDue } from '../../protocol/timing/next-due.ts';
import type { TimingRule } from '../../protocol/timing/timing-check.ts';
import { timingReport } from '../../protocol/timing/timing-report.ts';
import { visitFacts } from '../../protocol/timing/visit-facts.ts';
import { lacksForecast } from '../../protocol/timing/weather-check.ts';
import { visitIssues } from '../../protocol/validity/test-state.ts';
import { testStateFrom } from '../../protocol/validity/validity.ts';
import { type Hint, type SeenLevel, WEIGHT } from './hint.ts';

/** Returns hints about times that are missing or break a rule; none while the plan has no detector. */
export function timeHints(plan: Plan, levels: readonly SeenLevel[], now: Ms): readonly Hint[] {
  if (!hasDetectors(levels)) return [];
  const open = { kind: 'stage', label: 'Review the times', stage: 'time' } as const;
  if (plan.visit.start === null) {
    const text = 'When the house is closed and the detectors are placed is not recorded yet.';
    return [{ text, action: open, missing: false, weight: WEIGHT.time }];
  }
  const late = overdueWords(plan, now);
  const overdue: readonly Hint[] = late ? [{ text: late, action: open, missing: true, weight: WEIGHT.timeBroken }] : [];
  const checks = timingReport(plan).checks.flatMap(({ rule, verdict }): Hint[] => {
    if (verdict === 'blocked') return [{ text: BROKEN[rule], action: open, missing: true, weight: WEIGHT.timeBroken }];
    // Before the pick-up the exposure cannot be known.
    if (verdict !== 'unknown' || (rule === 'exposure' && (plan.visit.end === null || plan.visit.startPlanned)))
      return [];
    return [{ text: unknownText(plan, rule), action: open, missing: true, weight: WEIGHT.time }];
  });
  const forecast: readonly Hint[] = lacksForecast(plan)
    ? [
        {
          text: 'No weather forecast from before the start is recorded.',
          action: open,
          missing: false,
          weight: WEIGHT.time,
        },
      ]
    : [];
  const placing: readonly Hint[] = hasPlanPassed(plan, now)
    ? [{ text: PLACING_OPEN, action: open, missing: true, weight: WEIGHT.time }]
    : [];
  return [...overdue, ...placing, ...checks, ...forecast];
}

/** Short texts: the stage has the figures and the remedies. */
const BROKEN: Readonly<Record<TimingRule, string>> = {
  exposure: "The exposure is outside the kit's window: the test is invalid.",
  'closed-building': 'The house was not closed as a short-term test requires.',
  'mitigation-system': 'The mitigation system did not run for 24 h before the start.',
  weather: 'The forecast does not allow a short-term test.',
  laboratory: 'The detectors reach the laboratory too late.',
};
const UNKNOWN: Readonly<Record<TimingRule, string>> = {
  exposure: 'How long the kit may be exposed is not entered.',
  'closed-building': 'Since when the house was closed is not recorded.',
  'mitigation-system': 'Since when the mitigation system has run is not recorded.',
  weather: 'The forecast is incomplete, or was looked up too late.',
  laboratory: 'The times of mailing and receipt do not fit together.',
};

/** Returns why a check is open: a limit that is not entered, rather than times that contradict each other. */
function unknownText(plan: Plan, rule: TimingRule): string {
  const { end, received } = plan.visit;
  return rule === 'laboratory' && end !== null && received && !labDaysAreKnown(plan)
    ? 'Within how many days the laboratory must have the kit is not entered.'
    : UNKNOWN[rule];
}

const PLACING_OPEN = 'Whether the detectors were placed as planned is not recorded.';

/** Whether the time of a planned placement has passed, or the pick-up is recorded already. */
function hasPlanPassed({ visit }: Plan, now: Ms): boolean {
  return visit.startPlanned === true && (visit.end !== null || (msOf(visit.start) ?? now) < now);
}

/** Returns a sentence that detectors are overdue; empty if they are not, if their placement is not recorded, or if `now` is not finite. */
function overdueWords(plan: Plan, now: Ms): string {
  if (!Number.isFinite(now)) return '';
  const { start, end } = plan.visit;
  const { step, text } = nextDue({ start, end, visit: visitFacts(plan) }, now, plan.site.timeZone);
  return step === 'overdue' && !plan.visit.startPlanned ? `${text}.` : '';
}

/** Returns whether start, end and a required forecast are recorded, and no check of times is blocked or unknown; "not-run" is allowed. */
export function areTimesWhole(plan: Plan): boolean {
  const { start, end } = plan.visit;
  if (start === null || end === null || lacksForecast(plan)) return false;
  return timingReport(plan).checks.every(({ verdict }) => verdict !== 'blocked' && verdict !== 'unknown');
}

/** Returns whether any level has a detector. */
export const hasDetectors = (levels: readonly SeenLevel[]): boolean =>
  levels.some(({ model }) => model.level.detectors.length > 0);

/** Returns what is known of the times, in a few words; empty for nothing. */
export function timedInWords(plan: Plan, now: Ms): string {
  const { start, end } = plan.visit;
  if (start === null) return '';
  const planned = plannedStart(plan, now);
  if (planned !== null) return `Placement planned for ${formatShortInstant(planned, plan.site.timeZone, now)}.`;
  if (end === null) return plan.visit.plannedEnd ? 'Pick-up planned, not picked up yet.' : 'Placed, not picked up yet.';
  const { exposureHours } = timingReport(plan);
  const hours = `${Math.floor(exposureHours ?? 0)} h exposure`;
  return testStateFrom(visitIssues(plan)).validity === 'not-evaluated' ? `${hours}, invalid.` : `${hours}.`;
}
