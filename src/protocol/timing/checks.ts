import type { Plan } from '../../../geometry/plan/model.ts';
import type { Source } from '../../../geometry/rules/types.ts';
import { DAY, HOUR, type Ms, msOf } from './clock.ts';
import { closedCheck } from './closed.ts';
import { formatDuration, formatInstant } from './format-time.ts';
import { laboratoryCheck } from './laboratory.ts';
import { AFTER_MITIGATION_WITHIN, MITIGATION_BEFORE, MITIGATION_BEFORE_ITS_TEST } from './limits.ts';
import { hasMitigation } from './mitigation.ts';
import { isLongTerm, leastOfTerm } from './term.ts';
import type { TimingCheck, TimingRule, VisitTimes } from './types.ts';
import { weatherCheck } from './weather.ts';

/** What each rule is called, on screen and in print. */
export const TIMING_NAME: Readonly<Record<TimingRule, string>> = {
  'closed-building': 'Closed house',
  'mitigation-system': 'Mitigation system',
  exposure: 'Time laid out',
  weather: 'Weather',
  laboratory: 'Laboratory',
};

export function visitTimes({ visit }: Plan): VisitTimes {
  return {
    closed: msOf(visit.closedSince),
    opened: msOf(visit.closedUntil),
    mitigation: msOf(visit.mitigationOnSince),
    start: msOf(visit.start),
    end: msOf(visit.end) ?? msOf(visit.plannedEnd),
    planned: visit.end === null && msOf(visit.plannedEnd) !== null,
    posted: msOf(visit.posted),
    received: msOf(visit.received),
  };
}

/** Every limit of time that the plan's visit is held against, in the order of the job. */
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

function exposureCheck(plan: Plan, { start, end, planned }: VisitTimes): TimingCheck {
  const term = leastOfTerm(plan);
  const check = (verdict: TimingCheck['verdict'], detail: string): TimingCheck => ({
    rule: 'exposure',
    verdict,
    detail,
    sources: term.sources,
  });
  const { minimumHours, maximumHours } = plan.kit;
  const [least, most] = [minimumHours * HOUR, maximumHours * HOUR];
  const window = `${formatDuration(least)} to ${formatDuration(most)}`;
  if (most < term.duration) {
    return check(
      'blocked',
      `The kit may lie out for ${formatDuration(most)} at most, and ${term.name} takes ${formatDuration(term.duration)} at least. Choose another kit.`,
    );
  }
  if (start === null || end === null) {
    return check('unknown', `Start and pick-up must both be written down, to the minute. The kit asks for ${window}.`);
  }
  const exposure = end - start;
  if (exposure < 0)
    return check('blocked', 'The pick-up is written down before the start: one of them is wrong. Look at both times.');
  const lay = planned
    ? `As planned the detector lies out for ${formatDuration(exposure)}`
    : `The detector lay out for ${formatDuration(exposure)}`;
  const verdictOf = planned ? 'Plan another pick-up.' : 'The test is not evaluated; keep the record and test again.';
  if (exposure < least)
    return check(
      'blocked',
      `${lay}, ${short(least - exposure)} short of the kit's ${formatDuration(least)}. ${verdictOf}`,
    );
  if (exposure > most)
    return check('blocked', `${lay}, ${short(exposure - most)} past the kit's ${formatDuration(most)}. ${verdictOf}`);
  if (exposure < term.duration) {
    return check(
      'blocked',
      `${lay}. The kit allows it, and ${term.name} of less than ${formatDuration(term.duration)} is not accepted. ${verdictOf}`,
    );
  }
  return check('clear', `${lay}: within the kit's ${window}.${planned ? '' : ''}`);
}

/** Never "0 min" for what is a few seconds. */
const short = (by: Ms) => (by < 60_000 ? 'less than a minute' : formatDuration(by));

/** The clause on the hours after activation is for the test after mitigation; so are the 30 days. */
function mitigationSources({ site }: Plan): readonly Source[] {
  if (site.purpose !== 'after-mitigation') return MITIGATION_BEFORE.sources;
  return [...MITIGATION_BEFORE_ITS_TEST.sources, ...AFTER_MITIGATION_WITHIN.sources];
}

function mitigationCheck(plan: Plan, { mitigation, start }: VisitTimes): TimingCheck {
  const { timeZone } = plan.site;
  const check = (verdict: TimingCheck['verdict'], detail: string): TimingCheck => ({
    rule: 'mitigation-system',
    verdict,
    detail,
    sources: mitigationSources(plan),
  });
  if (!hasMitigation(plan)) return check('not-run', 'No mitigation system is drawn or noted.');
  if (start === null)
    return check('unknown', 'The start is not written down, so the running hours before it cannot be told.');
  if (mitigation === null) {
    return check(
      'unknown',
      `Since when the system runs is not written down. It must by ${formatInstant(start - MITIGATION_BEFORE.duration, timeZone)}.`,
    );
  }
  const ran = start - mitigation;
  if (isLongTerm(plan)) {
    return ran >= 0
      ? check('clear', `The system ran for ${formatDuration(ran)} before the start.`)
      : check('blocked', 'The system was switched on after the start: the test measured the house without it.');
  }
  if (ran < MITIGATION_BEFORE.duration) {
    const wait = formatInstant(mitigation + MITIGATION_BEFORE.duration, timeZone);
    const so = ran >= 0 ? `The system ran for ${formatDuration(ran)}` : 'The system was switched on after the start';
    return check('blocked', `${so}, needs 24 h before the start. Start no earlier than ${wait}.`);
  }
  if (plan.site.purpose === 'after-mitigation' && ran > AFTER_MITIGATION_WITHIN.duration) {
    return check(
      'tight',
      `The system has run for ${Math.floor(ran / DAY)} days. A test after mitigation is usually done within 30.`,
    );
  }
  return check('clear', `The system ran for ${formatDuration(ran)} before the start.`);
}
