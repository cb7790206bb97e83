import { type Ms, msOf } from './clock.ts';
import { hoursAreKnown, labDaysAreKnown, type PickUpWindow, pickUpWindow } from './exposure-limits.ts';
import { formatShortInstant } from './format-time.ts';
import { laboratoryBy, postBy } from './laboratory.ts';
import { LEAST_EXPOSURE } from './limits.ts';
import type { VisitFacts } from './visit-facts.ts';

/** A test in a list of plans; without `visit` only start and end are known. */
export interface DueFacts {
  readonly start: string | null;
  readonly end: string | null;
  readonly visit?: VisitFacts;
}

/** Stage of a test, in the order of urgency. */
export type DueStep =
  | 'overdue'
  | 'measuring'
  | 'to-the-laboratory'
  | 'test-again'
  | 'to-be-started'
  | 'no-date'
  | 'measured';

/** The next due date of a test. */
export interface Due {
  readonly step: DueStep;
  /** Sort key; null for none. */
  readonly at: Ms | null;
  /** Whether the deadline has passed. */
  readonly late: boolean;
  /** Short text; may be empty. */
  readonly text: string;
}

/**
 * Returns the next due date of a test.
 * @param zone time zone of the text if that of the site is not known
 */
export function nextDue(facts: DueFacts, now: Ms, zone: string): Due {
  const [start, end] = [msOf(facts.start), msOf(facts.end)];
  const format = (at: Ms) => formatShortInstant(at, facts.visit?.zone ?? zone, now);
  if (start === null) return { step: 'no-date', at: end, late: false, text: end === null ? '' : `Ends ${format(end)}` };
  if (start > now) return { step: 'to-be-started', at: start, late: false, text: `Place ${format(start)}` };
  if (facts.visit?.startPlanned) {
    return { step: 'overdue', at: start, late: true, text: `Placement planned for ${format(start)}: record it` };
  }
  const window = facts.visit && hoursAreKnown(facts.visit) ? pickUpWindow(start, facts.visit.kit) : null;
  // A pick-up in the future has not happened, whichever field holds it.
  const planned = end ?? msOf(facts.visit?.plannedEnd);
  if (end === null || end > now) return whileMeasuring(start, planned, window, now, format);
  return onceFetched(facts, start, end, now, format);
}

type FormatInstant = (at: Ms) => string;

function whileMeasuring(start: Ms, end: Ms | null, window: PickUpWindow | null, now: Ms, format: FormatInstant): Due {
  const measuring = (at: Ms, text: string): Due => ({ step: 'measuring', at, late: false, text });
  if (!window) {
    if (end === null) return measuring(start, `Measuring since ${format(start)}`);
    return now > end
      ? { step: 'overdue', at: end, late: true, text: `Overdue: pick-up ${format(end)}` }
      : measuring(end, `Pick up ${format(end)}`);
  }
  const { from, to } = window;
  if (now > to) return { step: 'overdue', at: to, late: true, text: `Overdue: past its window since ${format(to)}` };
  if (end !== null) {
    if (now > end)
      return {
        step: 'overdue',
        at: end,
        late: true,
        text: `Overdue: pick-up ${format(end)}, until ${format(to)} at the latest`,
      };
    const outside = end < from || end > to ? `, outside its window (${format(from)} to ${format(to)})` : '';
    return measuring(end, `Pick up ${format(end)}${outside}`);
  }
  return measuring(
    to,
    now < from ? `Pick up between ${format(from)} and ${format(to)}` : `Pick up now, until ${format(to)}`,
  );
}

function onceFetched({ visit }: DueFacts, start: Ms, end: Ms, now: Ms, format: FormatInstant): Due {
  const measured = (text: string): Due => ({ step: 'measured', at: end, late: false, text });
  const retest = (text: string): Due => ({ step: 'test-again', at: end, late: true, text });
  if (!visit) return measured(`Picked up ${format(end)}`);
  const { from, to } = pickUpWindow(start, visit.kit);
  if ((hoursAreKnown(visit) && (end < from || end > to)) || end - start < LEAST_EXPOSURE.duration) {
    return retest(`Picked up ${format(end)}, outside its window: invalid. Test again`);
  }
  if (visit.retestReason) return retest(visit.retestReason);
  if (visit.read || visit.monitor) return measured(`Picked up ${format(end)}`);
  const received = msOf(visit.received);
  if (received !== null && received <= now) return measured(`At the laboratory since ${format(received)}`);
  if (!labDaysAreKnown(visit)) {
    const sent = visit.posted === null ? `Pick-up ${format(end)}: mail it now` : 'Mailed to the laboratory';
    return { step: 'to-the-laboratory', at: end, late: false, text: sent };
  }
  const by = laboratoryBy(end, visit.kit.labDays);
  const onTheWay = (text: string): Due => ({ step: 'to-the-laboratory', at: by, late: now > by, text });
  if (now > by) return onTheWay(`Late: should be at the laboratory since ${format(by)}`);
  if (visit.posted !== null) return onTheWay(`Mailed. At the laboratory by ${format(by)}`);
  const post = postBy(end, visit.kit.labDays);
  const posting = now <= post && post > end ? `mail it by ${format(post)}` : 'mail it now';
  // A pick-up may have been recorded in advance: its time in the text shows if it was missed.
  return onTheWay(`Pick-up ${format(end)}: ${posting}. At the laboratory by ${format(by)}`);
}
