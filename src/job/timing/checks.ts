import type { Verdict } from '../../../geometry/check/types.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import type { Source } from '../../../geometry/rules/types.ts';
import { DAY, HOUR, type Ms, msOf, saidDuration, saidInstant } from './clock.ts';
import { laboratoryCheck } from './laboratory.ts';
import {
  AFTER_MITIGATION_WITHIN,
  CLOSED_BEFORE,
  LEAST_EXPOSURE,
  MITIGATION_BEFORE,
  MONITOR_HOURS,
  SHORT_TEST,
} from './limits.ts';
import { hasMitigation } from './mitigation.ts';
import { weatherCheck } from './weather.ts';

export type TimingRule = 'exposure' | 'closed-building' | 'mitigation-system' | 'weather' | 'laboratory';

/** What each rule is called, on screen and in print. */
export const TIMING_NAME: Readonly<Record<TimingRule, string>> = {
  'closed-building': 'Closed house',
  'mitigation-system': 'Mitigation system',
  exposure: 'Time laid out',
  weather: 'Weather',
  laboratory: 'Laboratory',
};

/** One limit of time and how the visit keeps it. */
export interface TimingCheck {
  readonly rule: TimingRule;
  /** "not-run": nothing to look at yet, and never a pass. */
  readonly verdict: Verdict | 'not-run';
  /** What was found, what is needed, and the way out. */
  readonly detail: string;
  readonly sources: readonly Source[];
}

/** The instants of a visit, ms; null for those that are not known. */
export interface VisitTimes {
  readonly closed: Ms | null;
  readonly opened: Ms | null;
  readonly mitigation: Ms | null;
  readonly start: Ms | null;
  readonly end: Ms | null;
  readonly posted: Ms | null;
  readonly received: Ms | null;
}

export function visitTimes({ visit }: Plan): VisitTimes {
  return {
    closed: msOf(visit.closedSince),
    opened: msOf(visit.closedUntil),
    mitigation: msOf(visit.mitigationOnSince),
    start: msOf(visit.start),
    end: msOf(visit.end),
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

function exposureCheck({ kit }: Plan, { start, end }: VisitTimes): TimingCheck {
  const check = (verdict: TimingCheck['verdict'], detail: string): TimingCheck => ({
    rule: 'exposure',
    verdict,
    detail,
    sources: LEAST_EXPOSURE.sources,
  });
  const [least, most] = [kit.minimumHours * HOUR, kit.maximumHours * HOUR];
  const window = `${saidDuration(least)} to ${saidDuration(most)}`;
  if (start === null || end === null) {
    return check('unknown', `Start and pick-up must both be written down, to the minute. The kit asks for ${window}.`);
  }
  const exposure = end - start;
  if (exposure < 0)
    return check('blocked', 'The pick-up is written down before the start: one of them is wrong. Look at both times.');
  const lay = `The detector lay out for ${saidDuration(exposure)}`;
  const verdictOf = 'The test is not evaluated; keep the record and test again.';
  if (exposure < least)
    return check(
      'blocked',
      `${lay}, ${short(least - exposure)} short of the kit's ${saidDuration(least)}. ${verdictOf}`,
    );
  if (exposure > most)
    return check('blocked', `${lay}, ${short(exposure - most)} past the kit's ${saidDuration(most)}. ${verdictOf}`);
  if (exposure < LEAST_EXPOSURE.duration) {
    return check(
      'blocked',
      `${lay}. The kit allows it, and no short-term test of less than 48 h is accepted. ${verdictOf}`,
    );
  }
  return check('clear', `${lay}: within the kit's ${window}.`);
}

/** Never "0 min" for what is a few seconds. */
const short = (by: Ms) => (by < 60_000 ? 'less than a minute' : saidDuration(by));

function closedCheck({ visit, site }: Plan, { closed, opened, start, end }: VisitTimes): TimingCheck {
  const check = (verdict: TimingCheck['verdict'], detail: string): TimingCheck => ({
    rule: 'closed-building',
    verdict,
    detail,
    sources: [...CLOSED_BEFORE.sources, ...SHORT_TEST.sources],
  });
  if (start === null)
    return check('unknown', 'The start is not written down, so the closed hours before it cannot be told.');
  // Before what is missing: an opening that is written down is no longer unknown.
  if (opened !== null && (end === null || opened < end)) {
    return check(
      'blocked',
      `The house was opened at ${saidInstant(opened, site.timeZone)}, before the pick-up. The test is not evaluated.`,
    );
  }
  if (closed === null) {
    return check(
      'unknown',
      `Since when the house was closed is not written down. It must have been by ${saidInstant(start - CLOSED_BEFORE.duration, site.timeZone)}.`,
    );
  }
  const before = start - closed;
  const lead =
    before >= 0
      ? `Closed for ${saidDuration(before)} before the start`
      : `Closed ${saidDuration(before)} after the start`;
  if (before >= CLOSED_BEFORE.duration) return check('clear', `${lead}.`);
  if (end === null) return check('blocked', `${lead}, needs 12 h. ${waysOut(closed, site.timeZone)}`);
  const whole = end - closed;
  if (whole >= SHORT_TEST.duration && end - start >= SHORT_TEST.duration) {
    return check(
      'clear',
      `${lead}, and then ${saidDuration(whole)} in the closed house: a test of 4 days or more needs no lead time.`,
    );
  }
  if (visit.device === 'monitor' && end - Math.max(start, closed + CLOSED_BEFORE.duration) >= MONITOR_HOURS.duration) {
    return check(
      'tight',
      `${lead}. Average the monitor's hours from ${saidInstant(closed + CLOSED_BEFORE.duration, site.timeZone)} on, at least 46 in one run.`,
    );
  }
  return check('blocked', `${lead}, needs 12 h before a test of less than 96 h. ${waysOut(closed, site.timeZone)}`);
}

/** ANSI/AARST MAH-2019, 6.1.2: wait, or extend. */
function waysOut(closed: Ms, zone: string): string {
  const wait = saidInstant(closed + CLOSED_BEFORE.duration, zone);
  const extend = saidInstant(closed + SHORT_TEST.duration, zone);
  return `Start no earlier than ${wait}, or leave it out until ${extend} or later, where the kit may lie so long.`;
}

function mitigationCheck(plan: Plan, { mitigation, start }: VisitTimes): TimingCheck {
  const { timeZone } = plan.site;
  const check = (verdict: TimingCheck['verdict'], detail: string): TimingCheck => ({
    rule: 'mitigation-system',
    verdict,
    detail,
    sources: [...MITIGATION_BEFORE.sources, ...AFTER_MITIGATION_WITHIN.sources],
  });
  if (!hasMitigation(plan)) return check('not-run', 'No mitigation system is drawn or noted.');
  if (start === null)
    return check('unknown', 'The start is not written down, so the running hours before it cannot be told.');
  if (mitigation === null) {
    return check(
      'unknown',
      `Since when the system runs is not written down. It must by ${saidInstant(start - MITIGATION_BEFORE.duration, timeZone)}.`,
    );
  }
  const ran = start - mitigation;
  if (ran < MITIGATION_BEFORE.duration) {
    const wait = saidInstant(mitigation + MITIGATION_BEFORE.duration, timeZone);
    const so = ran >= 0 ? `The system ran for ${saidDuration(ran)}` : 'The system was switched on after the start';
    return check('blocked', `${so}, needs 24 h before the start. Start no earlier than ${wait}.`);
  }
  if (plan.site.purpose === 'after-mitigation' && ran > AFTER_MITIGATION_WITHIN.duration) {
    return check(
      'tight',
      `The system has run for ${Math.floor(ran / DAY)} days. A test after mitigation is usually done within 30.`,
    );
  }
  return check('clear', `The system ran for ${saidDuration(ran)} before the start.`);
}
