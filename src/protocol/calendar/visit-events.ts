import { CAUTIONS, capital, listed } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { DAY, HOUR, MINUTE, type Ms, msOf } from '../timing/clock.ts';
import { isLongTerm } from '../timing/exposure-window.ts';
import { formatInstant } from '../timing/format-time.ts';
import { laboratoryBy, postBy } from '../timing/laboratory.ts';
import { CLOSED_BEFORE } from '../timing/limits.ts';
import { timingReport } from '../timing/timing-report.ts';
import { visitTimes } from '../timing/visit-times.ts';

type EventKind = 'closing' | 'start' | 'pick-up-window' | 'last-moment' | 'pick-up' | 'posting' | 'laboratory';

/** One entry of the job's calendar. */
export interface VisitEvent {
  readonly kind: EventKind;
  readonly title: string;
  readonly start: Ms;
  readonly end: Ms;
  readonly notes: string;
  /** How long before its start it rings, the first one first. */
  readonly alarms: readonly Ms[];
}

/** An act that takes a moment is shown as so long. */
const MOMENT: Ms = 15 * MINUTE;
/** A tester needs the drive, a householder a reminder: common practice, no published source. */
const ALARMS = {
  visit: [DAY, 2 * HOUR],
  /** When the window opens. */
  opens: [0],
  last: [6 * HOUR, 2 * HOUR, 30 * MINUTE],
  closing: [12 * HOUR, HOUR],
  post: [HOUR],
} as const;

/**
 * What the visit puts in a calendar, in the order of the job; empty while the start is not written down. The pick-up is the one that is
 * written down, where it is.
 * @param now a house that is not closed by then can only be closed now
 */
export function visitEvents(plan: Plan, now: Ms = Number.NEGATIVE_INFINITY): readonly VisitEvent[] {
  const { start, end, closed } = visitTimes(plan);
  if (start === null) return [];
  const report = timingReport(plan);
  const { timeZone, label } = plan.site;
  const where = [plan.title, label].filter(Boolean).join(', ');
  const names = listed(plan.levels.flatMap(({ detectors }) => detectors.map((each) => each.label || each.id)));
  // A calendar shows minutes: the first whole one inside the window, and never one that is seconds short of it.
  const earliest = Math.ceil((msOf(report.earliestEnd) ?? start) / MINUTE) * MINUTE;
  const latest = msOf(report.latestEnd) ?? start;
  const fetched = end ?? earliest;
  const event: EventOf = (kind, title, at, until, says, alarms) => ({
    kind,
    title: where ? `${title}: ${where}` : title,
    start: at,
    end: until,
    notes: [says, ...CAUTIONS].join('\n'),
    alarms,
  });
  const close = closingAt(msOf(report.closeBy), closed, start, now);
  return [
    ...(close === null
      ? []
      : [
          event(
            'closing',
            'Close the house',
            close,
            close + MOMENT,
            `Windows and outside doors closed on all levels from now until the detectors are fetched. ${capital('whole-house and window fans off.')}${lateWords(plan, close, start)}`,
            ALARMS.closing,
          ),
        ]),
    event(
      'start',
      `Set out ${names || 'the detectors'}`,
      start,
      start + MOMENT,
      'Write down the minute.',
      ALARMS.visit,
    ),
    event(
      'pick-up-window',
      'Detectors may be fetched',
      earliest,
      latest,
      `Not before ${formatInstant(earliest, timeZone)}, not after ${formatInstant(latest, timeZone)}. Outside it the test is not evaluated.`,
      ALARMS.opens,
    ),
    ...(end === null
      ? []
      : [
          event(
            'pick-up',
            `Fetch ${names || 'the detectors'}`,
            end,
            end + MOMENT,
            'Write down the minute, seal them at once.',
            ALARMS.visit,
          ),
        ]),
    event(
      'last-moment',
      'Last moment to fetch the detectors',
      latest - MOMENT,
      latest,
      'After this the test is lost.',
      ALARMS.last,
    ),
    ...(plan.visit.device === 'monitor' ? [] : sending(plan, fetched, event)),
  ];
}

/** 12 h before the start; where the house was, or can only be, closed later, then. Null where a long-term test needs no closed house. */
function closingAt(closeBy: Ms | null, closed: Ms | null, start: Ms, now: Ms): Ms | null {
  if (closeBy === null) return null;
  if (closed !== null) return Math.max(closeBy, closed);
  return closeBy < now && now < start ? Math.ceil(now / MINUTE) * MINUTE : closeBy;
}

/** What a closing that comes too late for its start asks for; empty where it does not. */
function lateWords({ site }: Plan, close: Ms, start: Ms): string {
  const soonest = close + CLOSED_BEFORE.duration;
  return soonest > start
    ? ` Too late for this start: start no earlier than ${formatInstant(soonest, site.timeZone)}.`
    : '';
}

type EventOf = (kind: EventKind, title: string, at: Ms, until: Ms, says: string, alarms: readonly Ms[]) => VisitEvent;

/** What follows the pick-up of detectors that a laboratory reads. */
function sending(plan: Plan, fetched: Ms, event: EventOf): readonly VisitEvent[] {
  const { kit, site } = plan;
  const laboratory = laboratoryBy(fetched, kit.labDays);
  const post = postBy(fetched, kit.labDays);
  const latest = post > fetched + HOUR ? ` At the latest ${formatInstant(post, site.timeZone)}.` : '';
  return [
    event(
      'posting',
      'Post the detectors',
      fetched + HOUR,
      fetched + HOUR + MOMENT,
      `Today, sealed${isLongTerm(plan) ? '' : ': what they hold decays by half in under four days'}.${latest}`,
      ALARMS.post,
    ),
    event(
      'laboratory',
      'The laboratory must have the detectors',
      laboratory - MOMENT,
      laboratory,
      `Within ${kit.labDays} days of the pick-up.`,
      [DAY],
    ),
  ];
}
