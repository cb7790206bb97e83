import { wallTime } from '../../protocol/timing/clock.ts';
import { nextDue } from '../../protocol/timing/next-due.ts';
import type { PlanSummary } from '../../storage/library/records.ts';

/** "10:42" for today, "7 Mar" within the year, "7 Mar 2025" before; in the reader's own way. */
export function whenWords(at: number, now: number): string {
  const [date, today] = [new Date(at), new Date(now)];
  if (date.toDateString() === today.toDateString()) return format(at, { hour: 'numeric', minute: '2-digit' });
  const year = date.getFullYear() === today.getFullYear() ? {} : ({ year: 'numeric' } as const);
  return format(at, { day: 'numeric', month: 'short', ...year });
}

/** Day and time, for what is looked up and not glanced at. */
export function fullWhenWords(at: number): string {
  return format(at, { dateStyle: 'medium', timeStyle: 'short' });
}

/** The next date of the measurement by the clock of the site, and whether it is over; empty words where the plan has none. */
export function dueOf(
  summary: Pick<PlanSummary, 'start' | 'end' | 'visit'>,
  now: number,
): { readonly words: string; readonly late: boolean } {
  const here = new Intl.DateTimeFormat().resolvedOptions().timeZone;
  const { at, text, late } = nextDue(summary, now, here);
  const elsewhere =
    at !== null && summary.visit && wallTime(at, summary.visit.zone).offset !== wallTime(at, here).offset;
  return { words: elsewhere ? `${text} (local time at the property)` : text, late };
}

function format(at: number, options: Intl.DateTimeFormatOptions): string {
  return new Intl.DateTimeFormat(undefined, options).format(at);
}
