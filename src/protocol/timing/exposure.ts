import type { Plan } from '../../../geometry/plan/model.ts';
import { capital } from '../../../geometry/plan/nouns.ts';
import { DAY, HOUR, type Ms } from './clock.ts';
import { hoursAreKnown, leastOfTerm, mostOfTerm } from './exposure-limits.ts';
import { formatDuration } from './format-time.ts';
import type { TimingCheck } from './timing-check.ts';
import type { VisitTimes } from './visit-times.ts';

/** Returns the check of the exposure time against the kit's limits and the least exposure of the plan's profile. */
export function exposureCheck(plan: Plan, { start, startPlanned, end, planned }: VisitTimes): TimingCheck {
  const term = leastOfTerm(plan);
  const check = (verdict: TimingCheck['verdict'], detail: string): TimingCheck => ({
    rule: 'exposure',
    verdict,
    detail,
    sources: term.sources,
  });
  const { minimumHours, maximumHours } = plan.kit;
  const isAnswered = hoursAreKnown(plan);
  const [least, most] = [minimumHours * HOUR, maximumHours * HOUR];
  const longest = mostOfTerm(plan);
  const window = `${formatDuration(least)} to ${formatDuration(most)}`;
  if (isAnswered && most < term.duration) {
    return check(
      'blocked',
      `The kit may be exposed for ${formatDuration(most)} at most, and ${term.name} takes ${formatDuration(term.duration)} at least. Choose another kit.`,
    );
  }
  if (isAnswered && least > longest) {
    return check(
      'blocked',
      `The kit is exposed for ${formatDuration(least)} at least, and ${term.name} takes ${mostWords(longest)} at most. Choose another kit, or the list of a long-term test.`,
    );
  }
  if (start === null || end === null) {
    const needs = isAnswered ? `The kit requires ${window}.` : HOURS_NEEDED;
    return check('unknown', `Start and pick-up must both be recorded, to the minute. ${needs}`);
  }
  if (startPlanned && !planned) return check('unknown', START_NOT_RECORDED);
  const exposure = end - start;
  if (exposure < 0)
    return check('blocked', 'The pick-up is recorded before the start: one of them is wrong. Review both times.');
  const lay = planned ? `Planned exposure of ${formatDuration(exposure)}` : `Exposed for ${formatDuration(exposure)}`;
  const verdictOf = planned ? 'Plan another pick-up.' : 'The test is invalid; keep the record and test again.';
  const fault = isAnswered ? outsideOf(exposure, least, most) : '';
  if (fault) return check('blocked', `${lay}, ${fault}. ${verdictOf}`);
  // The published minimum applies to any kit.
  if (exposure < term.duration) {
    const allowed = isAnswered ? `The kit allows it, and ${term.name}` : capital(term.name);
    return check(
      'blocked',
      `${lay}. ${allowed} of less than ${formatDuration(term.duration)} is not accepted. ${verdictOf}`,
    );
  }
  if (exposure > longest) {
    const allowed = isAnswered ? `The kit allows it, and ${term.name}` : capital(term.name);
    return check('blocked', `${lay}. ${allowed} of more than ${mostWords(longest)} is not accepted. ${verdictOf}`);
  }
  return isAnswered
    ? check('clear', `${lay}: within the kit's ${window}.`)
    : check('unknown', `${lay}. ${HOURS_NEEDED}`);
}

const mostWords = (limit: Ms): string => `${formatDuration(limit)} (${limit / DAY} days)`;

/** Returns how far an exposure is outside the limits of a kit, all in ms; empty where it is within them. */
function outsideOf(exposure: Ms, least: Ms, most: Ms): string {
  if (exposure < least) return `${formatDuration(least - exposure)} short of the kit's ${formatDuration(least)}`;
  return exposure > most ? `${formatDuration(exposure - most)} past the kit's ${formatDuration(most)}` : '';
}

/** Whether detectors were placed at the planned time is not certain: a planned time is no exposure. */
const START_NOT_RECORDED =
  'When the detectors were placed is not recorded: the time of placement is only a planned one. Record it, to the minute.';

const HOURS_NEEDED = 'How long the kit may be exposed is not entered: copy its hours from its instructions.';
