import type { Plan } from '../../../geometry/plan/model.ts';
import type { Laboratory } from '../../../geometry/plan/report-facts.ts';
import type { LogEntry } from '../../../geometry/plan/test-record.ts';
import { LABORATORY } from '../custody/chain-types.ts';
import { isSameHolder } from '../custody/holder-names.ts';
import { DAY, type Ms, msOf, wallTime } from './clock.ts';
import { labDaysAreKnown } from './exposure-limits.ts';
import { formatDuration, formatInstant } from './format-time.ts';
import { POST_TAKES } from './limits.ts';
import type { TimingCheck } from './timing-check.ts';
import type { VisitTimes } from './visit-times.ts';

/** Returns when the laboratory must have a detector: `labDays` of 24 hours after the pick-up, regardless of clock changes. */
export const laboratoryBy = (pickUp: Ms, labDays: number): Ms => pickUp + labDays * DAY;

/** Returns the latest time to mail it for that deadline; the pick-up if the kit leaves no time. */
export const postBy = (pickUp: Ms, labDays: number): Ms =>
  Math.max(pickUp, laboratoryBy(pickUp, labDays) - POST_TAKES.duration);

/** Returns the check of the laboratory's deadline. Contradictory times are "unknown", never a pass. */
export function laboratoryCheck(
  { kit, site, visit, log = [], report }: Plan,
  { end: known, planned, posted, received }: VisitTimes,
): TimingCheck {
  const end = planned ? null : known;
  const check = (verdict: TimingCheck['verdict'], detail: string): TimingCheck => ({
    rule: 'laboratory',
    verdict,
    detail,
    sources: POST_TAKES.sources,
  });
  if (visit.device === 'monitor') return check('not-run', 'A continuous monitor is read on site.');
  const isAnswered = labDaysAreKnown({ kit });
  const within = isAnswered
    ? `within ${kit.labDays} ${kit.labDays === 1 ? 'day' : 'days'}`
    : 'within the days that its instructions name';
  if (end === null) {
    if (posted === null && received === null)
      return check('not-run', `Seal and mail the detector at once: the laboratory must have it ${within}.`);
    return check('unknown', 'The pick-up is not recorded, so how long it was on its way is not known.');
  }
  const wrong = outOfOrder(end, posted, received);
  if (wrong) return check('unknown', `${wrong} Review both times.`);
  const early = analyzedTooEarly(report?.laboratory, { end, posted, received, zone: site.timeZone });
  if (early) return check('unknown', `${early} Review both times: that of the laboratory is entered for the report.`);
  const latest = laboratoryBy(end, kit.labDays);
  if (received !== null) {
    if (!isAnswered) {
      const after = formatDuration(received - end);
      return check(
        'unknown',
        `The laboratory received it ${after} after the pick-up. How many days the kit allows is not entered.`,
      );
    }
    if (received <= latest)
      return check('clear', `The laboratory received it ${formatDuration(received - end)} after the pick-up.`);
    return check(
      'blocked',
      `The laboratory received it ${formatDuration(received - latest)} after its limit of ${kit.labDays} days. Ask whether it can still be counted.`,
    );
  }
  const must = `The laboratory must have it ${isAnswered ? `by ${formatInstant(latest, site.timeZone)}` : within}.`;
  const logged = loggedDelivery(log, report?.laboratory);
  if (isAnswered && logged !== null && logged > latest) {
    return check(
      'blocked',
      `According to the log the laboratory got it ${formatDuration(logged - latest)} after its limit of ${kit.labDays} days. Ask whether it can still be counted.`,
    );
  }
  if (posted === null) return check('not-run', must);
  const sent = `Mailed ${formatDuration(posted - end)} after the pick-up.`;
  if (isAnswered && posted > latest) {
    return check('blocked', `${sent} The laboratory must have it ${within}. Ask whether it can still be counted.`);
  }
  return check('not-run', `${sent} ${must}`);
}

/** Returns the time of the last transfer to the laboratory in the log; null if none has a time. */
function loggedDelivery(log: readonly LogEntry[], laboratory: Laboratory | undefined): Ms | null {
  const name = laboratory?.name.trim() ?? '';
  const isThere = (to: string) => isSameHolder(to, LABORATORY) || (name !== '' && isSameHolder(to, name));
  const times = log.flatMap(({ custody }) => custody.filter(({ to }) => isThere(to)).map(({ at }) => msOf(at)));
  return times.reduce((last, at) => (at !== null && (last === null || at > last) ? at : last), null);
}

function outOfOrder(end: Ms, posted: Ms | null, received: Ms | null): string {
  if (posted !== null && posted < end) return 'Mailed before the pick-up: one of them is wrong.';
  if (received !== null && received < end) return 'At the laboratory before the pick-up: one of them is wrong.';
  if (received !== null && posted !== null && received < posted)
    return 'At the laboratory before it was mailed: one of them is wrong.';
  return '';
}

interface OnTheWay {
  readonly end: Ms;
  readonly posted: Ms | null;
  readonly received: Ms | null;
  readonly zone: string;
}

/** Returns which date of the laboratory is impossible; empty for none. Days are compared, not hours: reports of laboratories name days. */
function analyzedTooEarly(laboratory: Laboratory | undefined, { end, posted, received, zone }: OnTheWay): string {
  const [analyzed, reported] = [msOf(laboratory?.analyzed), msOf(laboratory?.reported)];
  const before = (at: Ms | null, other: Ms | null) =>
    at !== null && other !== null && dayNumber(at, zone) < dayNumber(other, zone);
  const there: readonly (readonly [Ms | null, string])[] = [
    [end, 'the pick-up'],
    [posted, 'it was mailed'],
    [received, 'the laboratory received it'],
  ];
  const steps: readonly (readonly [Ms | null, string, typeof there])[] = [
    [analyzed, 'Analyzed', there],
    [reported, 'Reported', [...there, [analyzed, 'it was analyzed']]],
  ];
  for (const [at, did, others] of steps) {
    const other = others.find(([then]) => before(at, then));
    if (other) return `${did} on a day before ${other[1]}: one of them is wrong.`;
  }
  return '';
}

/** Returns the day on the wall clock as a number that orders days. */
function dayNumber(at: Ms, zone: string): number {
  const { year, month, day } = wallTime(at, zone);
  return (year * 12 + month) * 31 + day;
}
