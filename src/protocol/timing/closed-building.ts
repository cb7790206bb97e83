import type { Plan } from '../../../geometry/plan/model.ts';
import { HOUR, type Ms } from './clock.ts';
import {
  hoursAreKnown,
  isLongTerm,
  kitWindow,
  LONG_TERM_SOURCES,
  leastExposure,
  leastOfTerm,
} from './exposure-limits.ts';
import { formatDuration, formatInstant } from './format-time.ts';
import { CLOSED_BEFORE, limitWords, MONITOR_HOURS, SHORT_TEST } from './limits.ts';
import type { TimingCheck } from './timing-check.ts';
import type { VisitTimes } from './visit-times.ts';

/** Returns the check of closed-building conditions before and during a short-term test. */
export function closedCheck(plan: Plan, times: VisitTimes): TimingCheck {
  const check = (verdict: TimingCheck['verdict'], detail: string): TimingCheck => ({
    rule: 'closed-building',
    verdict,
    detail,
    sources: [...CLOSED_BEFORE.sources, ...SHORT_TEST.sources],
  });
  if (isLongTerm(plan)) {
    return {
      ...check('not-run', 'A long-term test requires no closed-building conditions.'),
      sources: LONG_TERM_SOURCES,
    };
  }
  const { closed, start } = times;
  if (start === null)
    return check('unknown', 'The start is not recorded, so the closed hours before it are not known.');
  // Checked before missing times: a recorded opening decides, whatever else is unknown.
  const opened = describeOpening(plan, times, start);
  if (opened) return check('blocked', opened);
  const zone = plan.site.timeZone;
  if (closed === null) {
    return check(
      'unknown',
      `Since when the house was closed is not recorded. It must be by ${formatInstant(start - CLOSED_BEFORE.duration, zone)}.`,
    );
  }
  const lead =
    start >= closed
      ? `Closed for ${formatDuration(start - closed)} before the start`
      : `Closed ${formatDuration(closed - start)} after the start`;
  if (start - closed >= CLOSED_BEFORE.duration) return check('clear', `${lead}.`);
  return lateCheck(plan, times, { closed, start, lead }, check);
}

interface Late {
  readonly closed: Ms;
  readonly start: Ms;
  readonly lead: string;
}

/** For a house closed less than 12 h before the start: a longer test compensates, or the later hours of a continuous monitor do. */
function lateCheck(
  plan: Plan,
  { end }: VisitTimes,
  { closed, start, lead }: Late,
  check: (verdict: TimingCheck['verdict'], detail: string) => TimingCheck,
): TimingCheck {
  const zone = plan.site.timeZone;
  if (end !== null && end >= extendedUntil(closed, start)) {
    const whole = formatDuration(end - Math.max(closed, start));
    return check(
      'clear',
      `${lead}, and then ${whole} under closed-building conditions: a test of 4 days or more requires no lead time.`,
    );
  }
  if (end !== null && plan.visit.device === 'monitor' && end >= averagedUntil(closed, start)) {
    const from = closed + CLOSED_BEFORE.duration;
    const first = formatInstant(from, zone);
    // The plan does not record which hours a result is the average of.
    const way =
      end - from >= leastOfTerm(plan).duration
        ? `average those, and record ${first} as the start.`
        : 'whether the result is their average is not recorded, and a certified or licensed professional decides.';
    return check(
      'unknown',
      `${lead}. Of the monitor's hours those from ${first} on count, at least ${limitWords(MONITOR_HOURS)} in one run: ${way}`,
    );
  }
  return check(
    'blocked',
    `${lead}, ${limitWords(CLOSED_BEFORE)} required before a test of less than ${limitWords(SHORT_TEST)}. ${describeOptions(plan, closed, start)}`,
  );
}

/** Returns the earliest end of a test with 96 h under closed-building conditions: ANSI/AARST MAH-2019, 6.1.2(b). */
const extendedUntil = (closed: Ms, start: Ms): Ms => Math.max(closed, start) + SHORT_TEST.duration;

/** Returns the earliest end for a monitor, whose first hours may be left out: ANSI/AARST MAH-2019, 6.1.2(c). */
const averagedUntil = (closed: Ms, start: Ms): Ms =>
  Math.max(start, closed + CLOSED_BEFORE.duration) + MONITOR_HOURS.duration;

/** Options if the building was closed too late. */
export interface LateClosingOptions {
  /** The earliest start with 12 h of closed-building conditions before it. */
  readonly startFrom: Ms;
  /** The earliest pick-up that makes the test long enough; null if the kit does not allow it. */
  readonly leaveUntil: Ms | null;
}

/** Returns the options of ANSI/AARST MAH-2019, 6.1.2: start later, or extend the exposure. */
export function lateClosingOptions(plan: Plan, closed: Ms, start: Ms): LateClosingOptions {
  const { visit } = plan;
  const soonest =
    visit.device === 'monitor'
      ? Math.min(extendedUntil(closed, start), averagedUntil(closed, start))
      : extendedUntil(closed, start);
  const until = Math.max(soonest, start + leastExposure(kitWindow(plan)));
  const possible = !hoursAreKnown(plan) || until <= start + kitWindow(plan).maximumHours * HOUR;
  return { startFrom: closed + CLOSED_BEFORE.duration, leaveUntil: possible ? until : null };
}

function describeOptions(plan: Plan, closed: Ms, start: Ms): string {
  const { startFrom, leaveUntil } = lateClosingOptions(plan, closed, start);
  const zone = plan.site.timeZone;
  const wait = `Start no earlier than ${formatInstant(startFrom, zone)}`;
  if (leaveUntil === null) return `${wait}: this kit may not be exposed long enough to make up for it.`;
  const last = start + kitWindow(plan).maximumHours * HOUR;
  const until = formatInstant(leaveUntil, zone);
  const open = plan.visit.end === null ? '' : ', where it is not picked up yet,';
  if (!hoursAreKnown(plan))
    return `${wait}, or${open} leave it in place until ${until} or later, where the instructions of the kit allow it.`;
  const fetch =
    leaveUntil === last
      ? `pick it up at ${until}, to the minute: the kit may not be exposed longer`
      : `leave it in place until ${until} or later, and not past ${formatInstant(last, zone)}`;
  return `${wait}, or${open} ${fetch}.`;
}

/** Returns the effect of an opening before or during the test; empty for none, if the building was closed again, or after the pick-up. */
function describeOpening({ site }: Plan, { closed, opened, end }: VisitTimes, start: Ms): string {
  if (opened === null || (closed !== null && opened < closed) || (end !== null && opened >= end)) return '';
  const at = formatInstant(opened, site.timeZone);
  // Nothing was measured yet: no test has to be repeated.
  if (opened <= start) {
    return `The house was opened at ${at}, before the start. Close it again, record since when, and start later: ${limitWords(CLOSED_BEFORE)} after that.`;
  }
  return `The house was opened at ${at}, before the pick-up. The test is invalid.`;
}
