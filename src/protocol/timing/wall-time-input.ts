import { isInTestYears, TEST_YEARS } from '../../../geometry/planfile/meaning/section.ts';
import { type LocalTime, MINUTE, type Ms, matchWallTime, msOf, wallTime } from './clock.ts';
import { describeRepeatedMinute, formatDay, formatHourMinute } from './format-time.ts';

/** One of two instants with the same local time. */
interface WallChoice {
  readonly at: Ms;
  /** "1:30 before the clocks go back (UTC-4)". */
  readonly words: string;
}

/** The result of parsing a typed date and time. */
export type WallTimeInput =
  | { readonly kind: 'empty' }
  | { readonly kind: 'instant'; readonly at: Ms }
  /** The local time occurs twice: the person has to choose one. */
  | { readonly kind: 'twice'; readonly question: string; readonly choices: readonly WallChoice[] }
  | { readonly kind: 'refused'; readonly message: string };

/** `min` and `max` of a datetime-local input. */
export const INPUT_RANGE = { min: `${TEST_YEARS.first}-01-01T00:00`, max: `${TEST_YEARS.last}-12-31T23:59` } as const;

/** Message for input that is no complete date and time. */
export const INSTANT_NEEDED = 'Enter a day and a time, to the minute.';

/**
 * Parses "2026-03-07T18:00" as local time in `zone`, a zone of the IANA database. A time is never shifted: a skipped one is refused, and
 * for one that occurs twice the result has a question.
 */
export function parseWallTime(text: string, zone: string): WallTimeInput {
  if (text === '') return { kind: 'empty' };
  const match = /^(\d{4,6})-(\d\d)-(\d\d)T(\d\d):(\d\d)/.exec(text);
  if (!match) return { kind: 'refused', message: INSTANT_NEEDED };
  const [, year, month, day, hour, minute] = match.map(Number) as [number, number, number, number, number, number];
  if (year < TEST_YEARS.first || year > TEST_YEARS.last) {
    return { kind: 'refused', message: yearRefusal(year) };
  }
  const wall: LocalTime = { year, month, day, hour, minute };
  if (!isOnCalendar(wall)) return { kind: 'refused', message: INSTANT_NEEDED };
  const reading = matchWallTime(wall, zone);
  if (reading.shown === 'once') {
    // The range of years of a plan is in UTC: the first and last local hours of it may be outside.
    if (!isInTestYears(reading.at)) return { kind: 'refused', message: yearRefusal(year, 1) };
    return { kind: 'instant', at: reading.at };
  }
  if (reading.shown === 'never')
    return { kind: 'refused', message: describeSkippedTime(wall, reading.jump, reading.by, zone) };
  const choice = (at: Ms): WallChoice => ({
    at,
    words: `${formatHourMinute(wall, zone)} ${describeRepeatedMinute(at === reading.first)} (${formatUtcOffset(wallTime(at, zone).offset)})`,
  });
  return {
    kind: 'twice',
    question: `The clocks go back on ${formatDay(reading.second, zone)} and show ${formatHourMinute(wall, zone)} twice. Which one was it?`,
    choices: [choice(reading.first), choice(reading.second)],
  };
}

const yearRefusal = (year: number, off = 0): string =>
  `The year ${year} is not one of a test. Write ${TEST_YEARS.first + off} to ${TEST_YEARS.last - off}.`;

/** Whether the date and time exist: Date.UTC accepts 30 February and 24:30. */
function isOnCalendar({ year, month, day, hour, minute }: LocalTime): boolean {
  const date = new Date(Date.UTC(year, month - 1, day));
  return date.getUTCMonth() === month - 1 && date.getUTCDate() === day && hour < 24 && minute < 60;
}

function describeSkippedTime(wall: LocalTime, jump: Ms, by: Ms, zone: string): string {
  const to = wallTime(jump, zone);
  // The local time at which the skip begins: a zone may skip half an hour, or a day.
  const from = new Date(jump + to.offset - by);
  const fromWords = formatHourMinute({ hour: from.getUTCHours(), minute: from.getUTCMinutes() }, zone);
  const jumps = `The clocks go forward from ${fromWords} to ${formatHourMinute(to, zone)} on ${formatDay(jump, zone)}`;
  return `${jumps}, so ${formatHourMinute(wall, zone)} never comes. Write a time before ${fromWords}, or from ${formatHourMinute(to, zone)} on.`;
}

/** Returns "UTC-4", "UTC+5:30". */
function formatUtcOffset(offset: Ms): string {
  const minutes = Math.round(Math.abs(offset) / MINUTE);
  const rest = minutes % 60 ? `:${String(minutes % 60).padStart(2, '0')}` : '';
  return `UTC${offset < 0 ? '-' : '+'}${Math.floor(minutes / 60)}${rest}`;
}

/** Returns the value of a datetime-local input, "2026-03-07T18:00"; empty for none. `parseWallTime` parses it. */
export function wallTimeInputValue(value: string | null, zone: string): string {
  const at = msOf(value);
  if (at === null) return '';
  const { year, month, day, hour, minute } = wallTime(at, zone);
  const two = (part: number) => String(part).padStart(2, '0');
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}T${two(hour)}:${two(minute)}`;
}
