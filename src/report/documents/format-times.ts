/** Instants in documents, in the site's time zone. */
import type { Plan } from '../../../geometry/plan/model.ts';
import { unbrokenInstant } from '../../../geometry/units/no-break.ts';
import { msOf, type WallTime, wallTime } from '../../protocol/timing/clock.ts';
import { isLongTerm } from '../../protocol/timing/exposure-limits.ts';
import { formatInstant } from '../../protocol/timing/format-time.ts';
import { timingReport } from '../../protocol/timing/timing-report.ts';

/** Returns "Saturday 7 March 2026, 18:00"; `otherwise` for no instant. */
export function formatAt(text: string | null | undefined, { site }: Plan, otherwise: string): string {
  const at = msOf(text);
  if (at === null) return otherwise;
  return unbrokenInstant(formatInstant(at, site.timeZone).replace(',', ` ${wallTime(at, site.timeZone).year},`));
}

/** Returns "Sat 7 Mar 2026, 18:00", for tables; empty for no instant. */
export function formatShortAt(text: string | null | undefined, plan: Plan): string {
  return formatAt(text, plan, '').replace(/^(\p{L}{3})\p{L}* (\d+)\s(\p{L}{3})\p{L}* /u, '$1 $2\u00a0$3 ');
}

/** Returns "Saturday 7 March, 18:00 (6 pm)", for readers without 24-hour clocks. Null for no instant. */
export function formatForOccupants(text: string | null | undefined, { site, display }: Plan): string | null {
  const at = msOf(text);
  if (at === null) return null;
  const text24 = unbrokenInstant(formatInstant(at, site.timeZone));
  const more = partOfDay(wallTime(at, site.timeZone), display.length === 'feet-inches');
  return more ? `${text24}\u00a0${more}` : text24;
}

/** Returns am or pm. Midnight always names its day: it could be taken for the night before or after. */
function partOfDay({ hour, minute, weekday }: WallTime, halves: boolean): string {
  const minutes = minute === 0 ? '' : `:${String(minute).padStart(2, '0')}`;
  if (hour === 0 && minute === 0) return `(midnight after\u00a0${DAYS[(weekday + 6) % 7]})`;
  if (!halves) return '';
  if (hour === 12 && minute === 0) return '(noon)';
  return hour < 12 ? '(am)' : `(${hour === 12 ? 12 : hour - 12}${minutes}\u00a0pm)`;
}

const DAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;

/** Returns the sentence that names the time zone of a document. */
export function clockLine({ site }: Plan): string {
  return `Local time at the property (time zone ${site.timeZone.replaceAll('_', ' ')}).`;
}

/** Returns an ISO 8601 date as "7 March 2026"; other text unchanged. */
export function formatDate(date: string): string {
  const at = /^\d{4}-\d{2}-\d{2}$/.test(date) ? Date.parse(`${date}T00:00:00Z`) : Number.NaN;
  if (Number.isNaN(at)) return date;
  return `${formatInstant(at, 'UTC').replace(/^\p{L}+ |,.*$/gu, '')} ${date.slice(0, 4)}`;
}

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
  const { closeBy } = timingReport(plan);
  const { start, closedSince } = plan.visit;
  const closed: TestTime = {
    name: 'House closed from',
    at: format(closedSince ?? (closeBy && closeBy.slice(0, 10) >= printed ? closeBy : null), plan),
    // ANSI/AARST MAH-2019, Exh. 2 and 4: 12 h before a test of less than 4 days.
    otherwise: 'at least 12 hours before the detectors are placed',
  };
  return [
    ...(isLongTerm(plan) ? [] : [closed]),
    { name: 'Detectors placed', at: format(start, plan), otherwise: 'not scheduled yet' },
    { name: 'Detectors picked up', at: describePickUp(plan, format), otherwise: 'not scheduled yet' },
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
