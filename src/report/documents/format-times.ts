/** Instants in documents, in the site's time zone. */
import type { Plan } from '../../../geometry/plan/model.ts';
import { unbrokenInstant } from '../../../geometry/units/no-break.ts';
import { recordedStart } from '../../protocol/custody/placed.ts';
import { instantAt, isoDay, type Ms, msOf, wallTime } from '../../protocol/timing/clock.ts';
import { isLongTerm } from '../../protocol/timing/exposure-limits.ts';
import { DAYS, formatDate, formatInstant, isMonthFirst } from '../../protocol/timing/format-time.ts';
import { hasMitigation } from '../../protocol/timing/mitigation.ts';
import { timingReport } from '../../protocol/timing/timing-report.ts';

/** Returns "Saturday, March 7, 2026, 6:00 pm"; `otherwise` if there is no instant. */
export function formatAt(text: string | null | undefined, { site }: Plan, otherwise: string): string {
  const at = msOf(text);
  return at === null ? otherwise : unbrokenInstant(formatInstant(at, site.timeZone, { year: true }));
}

/** Returns "Sat, Mar 7, 2026, 6:00 pm", for tables; empty if there is no instant. */
export function formatShortAt(text: string | null | undefined, { site }: Plan): string {
  const at = msOf(text);
  return at === null ? '' : unbrokenInstant(formatInstant(at, site.timeZone, { short: true, year: true }));
}

/** Returns "Saturday, March 7, 6:00 pm"; midnight names the day that it ends too, because it is ambiguous. Null if there is no instant. */
export function formatForOccupants(text: string | null | undefined, { site }: Plan): string | null {
  const at = msOf(text);
  if (at === null) return null;
  const words = unbrokenInstant(formatInstant(at, site.timeZone));
  const { hour, minute, weekday } = wallTime(at, site.timeZone);
  if (hour === 0 && minute === 0) return `${words}\u00a0(midnight after\u00a0${DAYS[(weekday + 6) % 7]})`;
  return hour === 12 && minute === 0 && isMonthFirst(site.timeZone) ? `${words}\u00a0(noon)` : words;
}

/** Returns the sentence that names the time zone of a document. */
export function clockLine({ site }: Plan): string {
  return `Local time at the property (time zone ${site.timeZone.replaceAll('_', ' ')}).`;
}

/** Returns an ISO 8601 date as it is written at the site, "March 7, 2026" or "7 March 2026"; other text unchanged. */
export function formatPrinted(date: string, { site }: Plan): string {
  const isDate = /^\d{4}-\d{2}-\d{2}$/.test(date) && !Number.isNaN(Date.parse(date));
  if (!isDate) return date;
  const [year = 0, month = 0, day = 0] = date.split('-').map(Number);
  return formatDate(instantAt({ year, month, day, hour: 12, minute: 0 }, site.timeZone), site.timeZone, { year: true });
}

/** Printed for a time that is not set. */
export const NOT_SCHEDULED = 'not scheduled yet';

/** Printed for a time that has passed and is not recorded. */
const NOT_RECORDED = 'not recorded';

/** One time of the test as text; null for a blank line. */
export interface TestTime {
  readonly name: string;
  readonly at: string | null;
  /** Text below the blank line: what applies until the time is scheduled, or that the time is not recorded. */
  readonly otherwise: string;
}

/** When a document is printed: this code has no clock. */
export interface Printing {
  /** ISO 8601 date. */
  readonly date: string;
  /** The instant, ms; left out, only the day is known. */
  readonly now?: Ms;
}

type FormatTime = (text: string | null | undefined, plan: Plan) => string | null;

/** Whether an instant is certainly still ahead; without the time of printing, one on the day of printing is not. */
function isAhead(text: string | null | undefined, { site }: Plan, { date, now }: Printing): boolean {
  const at = msOf(text);
  if (at === null) return false;
  return now === undefined ? isoDay(at, site.timeZone) > date : at > now;
}

/** Whether an instant has certainly passed. */
function isPast(text: string | null | undefined, { site }: Plan, { date, now }: Printing): boolean {
  const at = msOf(text);
  if (at === null) return false;
  return now === undefined ? isoDay(at, site.timeZone) < date : at <= now;
}

/**
 * Returns the times of the test. A recorded time is printed; a future time is requested or planned; a time that has passed without a
 * record is a blank line to fill in, so that it does not read as recorded.
 */
export function testTimes(plan: Plan, format: FormatTime, printing: Printing): readonly TestTime[] {
  const { closeBy, mitigationOnBy } = timingReport(plan);
  const { closedSince, mitigationOnSince } = plan.visit;
  const since = (recorded: string | null, by: string | null, words: SinceWords) =>
    sinceTime(plan, format, printing, { recorded, by, words });
  return [
    ...(isLongTerm(plan)
      ? []
      : [
          ...(hasMitigation(plan) ? [since(mitigationOnSince, mitigationOnBy, SYSTEM_ON)] : []),
          since(closedSince, closeBy, CLOSED),
        ]),
    placement(plan, format, printing),
    pickUp(plan, format, printing),
  ];
}

interface SinceWords {
  readonly done: string;
  readonly asked: string;
  readonly least: string;
}

const SYSTEM_ON: SinceWords = {
  done: 'Mitigation system on from',
  asked: 'Keep the mitigation system on from',
  least: 'at least 24 hours before the detectors are placed',
};
/** ANSI/AARST MAH-2019, Exh. 2 and 4: 12 h before a test of less than 4 days. */
const CLOSED: SinceWords = {
  done: 'House closed from',
  asked: 'Keep the house closed from',
  least: 'at least 12 hours before the detectors are placed',
};

interface Since {
  readonly recorded: string | null;
  /** The latest time requested. */
  readonly by: string | null;
  readonly words: SinceWords;
}

/** Returns the time since which a condition holds that must hold before the placement. */
function sinceTime(plan: Plan, format: FormatTime, printing: Printing, { recorded, by, words }: Since): TestTime {
  const { done, asked, least } = words;
  if (recorded !== null) {
    const name = isAhead(recorded, plan, printing) ? asked : done;
    return { name, at: format(recorded, plan), otherwise: NOT_RECORDED };
  }
  if (wasPlaced(plan, printing)) return { name: done, at: null, otherwise: NOT_RECORDED };
  const latest = isPast(by, plan, printing) ? null : format(by, plan);
  return { name: asked, at: latest && `${latest} at the latest`, otherwise: least };
}

/** Whether the placement, recorded or planned, may have happened: then nothing is requested any more that had to come before it. */
const wasPlaced = (plan: Plan, printing: Printing): boolean =>
  plan.visit.end !== null || (plan.visit.start !== null && !isAhead(plan.visit.start, plan, printing));

function placement(plan: Plan, format: FormatTime, printing: Printing): TestTime {
  const at = format(plan.visit.start, plan);
  if (!wasPlaced(plan, printing)) return { name: 'Detectors to be placed', at, otherwise: NOT_SCHEDULED };
  const recorded = format(recordedStart(plan.visit), plan);
  const planned = recorded === null && at !== null ? `; planned for ${at}` : '';
  return { name: 'Detectors placed', at: recorded, otherwise: `${NOT_RECORDED}${planned}` };
}

function pickUp(plan: Plan, format: FormatTime, printing: Printing): TestTime {
  const { end, plannedEnd } = plan.visit;
  if (end !== null && !isAhead(end, plan, printing))
    return { name: 'Detectors picked up', at: format(end, plan), otherwise: NOT_RECORDED };
  const last = end ?? plannedEnd ?? timingReport(plan).latestEnd;
  if (isPast(last, plan, printing)) {
    const planned = plannedEnd ? `; planned for ${format(plannedEnd, plan)}` : '';
    return { name: 'Detectors picked up', at: null, otherwise: `${NOT_RECORDED}${planned}` };
  }
  return { name: 'Detectors to be picked up', at: describePickUp(plan, format), otherwise: NOT_SCHEDULED };
}

/** Returns the time of the pick-up, or the window that the kit allows; null if neither is known. */
export function describePickUp(plan: Plan, format: FormatTime): string | null {
  const { earliestEnd, latestEnd } = timingReport(plan);
  const [from, to] = [format(earliestEnd, plan), format(latestEnd, plan)];
  return format(plan.visit.end ?? plan.visit.plannedEnd, plan) ?? (from && to ? `between ${from} and ${to}` : null);
}
