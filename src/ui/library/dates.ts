import { wallTime } from '../../protocol/timing/clock.ts';
import { deviceZone, formatDate, formatTimeOfDay } from '../../protocol/timing/format-time.ts';
import { nextDue } from '../../protocol/timing/next-due.ts';
import type { PlanSummary } from '../../storage/library/records.ts';

/** "10:42 am" for today, "Mar 7" within the year, "Mar 7, 2025" before; as the place of this device writes it. */
export function whenWords(at: number, now: number): string {
  const zone = deviceZone();
  const [date, today] = [wallTime(at, zone), wallTime(now, zone)];
  const isThisYear = date.year === today.year;
  if (isThisYear && date.month === today.month && date.day === today.day) return formatTimeOfDay(at, zone);
  return formatDate(at, zone, { short: true, year: !isThisYear });
}

/** Day and time, for what is looked up and not glanced at. */
export function fullWhenWords(at: number): string {
  const zone = deviceZone();
  return `${formatDate(at, zone, { short: true, year: true })}, ${formatTimeOfDay(at, zone)}`;
}

/** The next date of the measurement by the clock of the site, and whether it is over; empty words where the plan has none. */
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
