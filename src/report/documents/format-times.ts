/** Instants in documents, in the site's time zone. */
import type { Plan } from '../../../geometry/plan/model.ts';
import { unbrokenInstant } from '../../../geometry/units/no-break.ts';
import { instantAt, msOf, wallTime } from '../../protocol/timing/clock.ts';
import { isLongTerm } from '../../protocol/timing/exposure-limits.ts';
import { DAYS, formatDate, formatInstant, isMonthFirst } from '../../protocol/timing/format-time.ts';
import { hasMitigation } from '../../protocol/timing/mitigation.ts';
import { timingReport } from '../../protocol/timing/timing-report.ts';

/** Returns "Saturday, March 7, 2026, 6:00 pm"; `otherwise` for no instant. */
export function formatAt(text: string | null | undefined, { site }: Plan, otherwise: string): string {
  const at = msOf(text);
  return at === null ? otherwise : unbrokenInstant(formatInstant(at, site.timeZone, { year: true }));
}

/** Returns "Sat, Mar 7, 2026, 6:00 pm", for tables; empty for no instant. */
export function formatShortAt(text: string | null | undefined, { site }: Plan): string {
  const at = msOf(text);
  return at === null ? '' : unbrokenInstant(formatInstant(at, site.timeZone, { short: true, year: true }));
}

/** Returns "Saturday, March 7, 6:00 pm"; midnight also names its day: it could be taken for the night before or after. Null for no instant. */
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

/** Returns an ISO 8601 date as the place of the house writes it, "March 7, 2026" or "7 March 2026"; other text unchanged. */
export function formatPrinted(date: string, { site }: Plan): string {
  const isDate = /^\d{4}-\d{2}-\d{2}$/.test(date) && !Number.isNaN(Date.parse(date));
  if (!isDate) return date;
  const [year = 0, month = 0, day = 0] = date.split('-').map(Number);
  return formatDate(instantAt({ year, month, day, hour: 12, minute: 0 }, site.timeZone), site.timeZone, { year: true });
}

/** Of a time that nobody has set. */
export const NOT_SCHEDULED = 'not scheduled yet';

/** One time of the test as text; null for a blank line. */
export interface TestTime {
  readonly name: string;
  readonly at: string | null;
  /** What applies until it is arranged. */
  readonly otherwise: string;
}

/**
 * Returns the times of the test.
 * @param format formats an instant
 * @param printed ISO 8601 date of printing: a closing time in the past is not advised
 */
export function testTimes(
  plan: Plan,
  format: (text: string | null | undefined, plan: Plan) => string | null,
  printed: string,
): readonly TestTime[] {
  const { closeBy, mitigationOnBy } = timingReport(plan);
  const { start, closedSince, mitigationOnSince } = plan.visit;
  const ahead = (by: string | null) => (by && by.slice(0, 10) >= printed ? by : null);
  const system: TestTime = {
    name: 'Mitigation system on from',
    at: format(mitigationOnSince ?? ahead(mitigationOnBy), plan),
    otherwise: 'at least 24 hours before the detectors are placed',
  };
  const closed: TestTime = {
    name: 'House closed from',
    at: format(closedSince ?? ahead(closeBy), plan),
    // ANSI/AARST MAH-2019, Exh. 2 and 4: 12 h before a test of less than 4 days.
    otherwise: 'at least 12 hours before the detectors are placed',
  };
  return [
    ...(isLongTerm(plan) ? [] : [...(hasMitigation(plan) ? [system] : []), closed]),
    { name: 'Detectors placed', at: format(start, plan), otherwise: NOT_SCHEDULED },
    { name: 'Detectors picked up', at: describePickUp(plan, format), otherwise: NOT_SCHEDULED },
  ];
}

/** Returns the pick-up, or the window that the kit allows; null where neither is known. */
export function describePickUp(
  plan: Plan,
  format: (text: string | null | undefined, plan: Plan) => string | null,
): string | null {
  const { earliestEnd, latestEnd } = timingReport(plan);
  const [from, to] = [format(earliestEnd, plan), format(latestEnd, plan)];
  return format(plan.visit.end ?? plan.visit.plannedEnd, plan) ?? (from && to ? `between ${from} and ${to}` : null);
}
