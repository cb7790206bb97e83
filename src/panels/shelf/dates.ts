import type { PlanCard } from '../../io/shelf/records.ts';

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

/** The next date of the measurement; empty where the plan has none. */
export function dueWords({ start, end }: Pick<PlanCard, 'start' | 'end'>, now: number): string {
  const short = (instant: string) =>
    format(Date.parse(instant), {
      weekday: 'short',
      day: 'numeric',
      month: 'short',
      hour: 'numeric',
      minute: '2-digit',
    });
  if (start === null) return end === null ? '' : `Ends ${short(end)}`;
  if (Date.parse(start) > now) return `Starts ${short(start)}`;
  if (end === null) return `Measuring since ${short(start)}`;
  return Date.parse(end) > now ? `Fetch it ${short(end)}` : `Measured until ${short(end)}`;
}

function format(at: number, options: Intl.DateTimeFormatOptions): string {
  return new Intl.DateTimeFormat(undefined, options).format(at);
}
