import { CAUTIONS, capital, listed } from '../../../geometry/messages/index.ts';
import type { Plan } from '../../../geometry/plan/model.ts';
import { DAY, HOUR, MINUTE, type Ms, msOf } from '../timing/clock.ts';
import { isLongTerm, labDaysAreKnown } from '../timing/exposure-limits.ts';
import { formatInstant } from '../timing/format-time.ts';
import { laboratoryBy, postBy } from '../timing/laboratory.ts';
import { CLOSED_BEFORE, limitWords } from '../timing/limits.ts';
import { timingReport } from '../timing/timing-report.ts';
import { visitTimes } from '../timing/visit-times.ts';

type EventKind = 'closing' | 'start' | 'pick-up-window' | 'last-moment' | 'pick-up' | 'posting' | 'laboratory';

/** One calendar entry of a visit. */
export interface VisitEvent {
  readonly kind: EventKind;
  readonly title: string;
  readonly start: Ms;
  readonly end: Ms;
  readonly notes: string;
  /** Alarm lead times before `start`, ms, the earliest alarm first. */
  readonly alarms: readonly Ms[];
}

/** Length of an entry that marks one instant. */
const MOMENT: Ms = 15 * MINUTE;
/** Alarm lead times, for the drive of the technician and as reminders of the occupant: common practice, no published source. */
const ALARMS = {
  visit: [DAY, 2 * HOUR],
  /** When the pick-up window opens. */
  opens: [0],
  last: [6 * HOUR, 2 * HOUR, 30 * MINUTE],
  closing: [12 * HOUR, HOUR],
  post: [HOUR],
} as const;

type CreateEvent = (
  kind: EventKind,
  title: string,
  at: Ms,
  until: Ms,
  note: string,
  alarms: readonly Ms[],
) => VisitEvent;

/**
 * Returns the calendar entries of a plan's visit in the order of the visit; none while the start is not recorded. A recorded or
 * planned pick-up is an entry of its own.
 * @param now ms: closing the building is never scheduled earlier
 */
export function visitEvents(plan: Plan, now: Ms = Number.NEGATIVE_INFINITY): readonly VisitEvent[] {
  const { start, end, closed } = visitTimes(plan);
  if (start === null) return [];
  const report = timingReport(plan);
  // Calendars have whole minutes: rounded up, so that the entry does not begin seconds before the window.
  const [from, latest] = [msOf(report.earliestEnd), msOf(report.latestEnd)];
  const earliest = from === null ? null : Math.ceil(from / MINUTE) * MINUTE;
  const event = eventCreator(plan);
  const names = listed(plan.levels.flatMap(({ detectors }) => detectors.map((each) => each.label || each.id)));
  const closeBy = msOf(report.closeBy);
  return [
    ...(closeBy === null ? [] : [closingEvent(plan, { closeBy, closed, start, now }, event)]),
    event('start', `Place ${names || 'the detectors'}`, start, start + MOMENT, 'Record the minute.', ALARMS.visit),
    ...pickUpEvents(plan, { earliest, latest, end, names }, event),
    ...laboratoryEvents(plan, end ?? earliest, event),
  ];
}

/** Returns a function that adds the place to a title and the cautions to a note. */
function eventCreator({ title: planTitle, site }: Plan): CreateEvent {
  const where = [planTitle, site.label].filter(Boolean).join(', ');
  return (kind, title, at, until, note, alarms) => ({
    kind,
    title: where ? `${title}: ${where}` : title,
    start: at,
    end: until,
    notes: [note, ...CAUTIONS].join('\n'),
    alarms,
  });
}

interface Closing {
  /** When the building has to be closed, and when it was; null for not recorded. */
  readonly closeBy: Ms;
  readonly closed: Ms | null;
  readonly start: Ms;
  readonly now: Ms;
}

/** Returns the entry for closing the building: 12 h before the start, or when it was closed or can still be closed, if that is later. */
function closingEvent({ site }: Plan, { closeBy, closed, start, now }: Closing, event: CreateEvent): VisitEvent {
  // After the placement it is too late to close it: the entry shows the required time, and must not read as a record of a closing.
  if (closed === null && now >= start) {
    const missing = `Required from this time, ${limitWords(CLOSED_BEFORE)} before the placement. When it was closed is not recorded.`;
    return event('closing', 'House to be closed by now, closing not recorded', closeBy, closeBy + MOMENT, missing, []);
  }
  const soonestClosing = closeBy < now ? Math.ceil(now / MINUTE) * MINUTE : closeBy;
  const close = closed === null ? soonestClosing : Math.max(closeBy, closed);
  const soonest = close + CLOSED_BEFORE.duration;
  const late =
    soonest > start ? ` Too late for this start: start no earlier than ${formatInstant(soonest, site.timeZone)}.` : '';
  return event(
    'closing',
    'Close the house',
    close,
    close + MOMENT,
    `Windows and exterior doors closed on all levels from now until the detectors are picked up. ${capital('whole-house and window fans off.')}${late}`,
    ALARMS.closing,
  );
}

interface PickUp {
  /** The first whole minute and the last instant that the kit allows; null while its hours are not known. */
  readonly earliest: Ms | null;
  readonly latest: Ms | null;
  /** The recorded or planned pick-up. */
  readonly end: Ms | null;
  /** Labels of the detectors, listed. */
  readonly names: string;
}

const COUNTED_FROM_THE_PLAN = ' Counted from the planned placement: placed at another minute, count from that one.';

/** Returns the pick-up window, the recorded or planned pick-up, and the end of the window; no window while the kit's hours are not known. */
function pickUpEvents(
  { site, visit }: Plan,
  { earliest, latest, end, names }: PickUp,
  event: CreateEvent,
): VisitEvent[] {
  const title = `Pick up ${names || 'the detectors'}`;
  const note = 'Record the minute, seal them at once.';
  const pickUp = end === null ? [] : [event('pick-up', title, end, end + MOMENT, note, ALARMS.visit)];
  if (earliest === null || latest === null) return pickUp;
  const counted = visit.startPlanned ? COUNTED_FROM_THE_PLAN : '';
  const window = `Not before ${formatInstant(earliest, site.timeZone)}, not after ${formatInstant(latest, site.timeZone)}. Outside it the test is invalid.${counted}`;
  const last = `After this the test is invalid.${counted}`;
  return [
    event('pick-up-window', 'Detectors may be picked up', earliest, latest, window, ALARMS.opens),
    ...pickUp,
    event('last-moment', 'Last moment to pick up the detectors', latest - MOMENT, latest, last, ALARMS.last),
  ];
}

/** Returns mailing and arrival at the laboratory, for passive detectors picked up at `pickUp`; no deadline while its days are not known. */
function laboratoryEvents(plan: Plan, pickUp: Ms | null, event: CreateEvent): VisitEvent[] {
  const { kit, site, visit } = plan;
  if (pickUp === null || visit.device === 'monitor') return [];
  const isKnown = labDaysAreKnown(plan);
  const laboratory = laboratoryBy(pickUp, kit.labDays);
  const post = postBy(pickUp, kit.labDays);
  const latest = isKnown && post > pickUp + HOUR ? ` At the latest ${formatInstant(post, site.timeZone)}.` : '';
  const mailed = [
    event(
      'posting',
      'Mail the detectors',
      pickUp + HOUR,
      pickUp + HOUR + MOMENT,
      `Today, sealed${isLongTerm(plan) ? '' : ': half of the radon in them decays in under four days'}.${latest}`,
      ALARMS.post,
    ),
  ];
  if (!isKnown) return mailed;
  return [
    ...mailed,
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
