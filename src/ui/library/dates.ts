import { wallTime } from '../../protocol/timing/clock.ts';
import { deviceZone, formatDate, formatTimeOfDay } from '../../protocol/timing/format-time.ts';
import { nextDue } from '../../protocol/timing/next-due.ts';
import type { PlanSummary } from '../../storage/library/records.ts';

/** Returns "10:42 am" for today, "Mar 7" within the year, "Mar 7, 2025" before; in the format and time zone of this device's place. */
export function whenWords(at: number, now: number): string {
  const zone = deviceZone();
  const [date, today] = [wallTime(at, zone), wallTime(now, zone)];
  const isThisYear = date.year === today.year;
  if (isThisYear && date.month === today.month && date.day === today.day) return formatTimeOfDay(at, zone);
  return formatDate(at, zone, { short: true, year: !isThisYear });
}

/** Returns date and time with the year, for details. */
export function fullWhenWords(at: number): string {
  const zone = deviceZone();
  return `${formatDate(at, zone, { short: true, year: true })}, ${formatTimeOfDay(at, zone)}`;
}

/** Returns the next date of the measurement by the clock of the site, and whether it is past; empty words if the plan has none. */
export function dueOf(
  summary: Pick<PlanSummary, 'start' | 'end' | 'visit'>,
  now: number,
): { readonly words: string; readonly late: boolean } {
  const zone = deviceZone();
  const { at, text, late } = nextDue(summary, now, zone);
  const elsewhere =
    at !== null && summary.visit && wallTime(at, summary.visit.zone).offset !== wallTime(at, zone).offset;
  return { words: elsewhere ? `${text} (local time at the property)` : text, late };
}
