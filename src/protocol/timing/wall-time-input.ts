import { type LocalTime, MINUTE, type Ms, matchWallTime, msOf, wallTime } from './clock.ts';
import { describeRepeatedMinute, formatDay, formatHourMinute } from './format-time.ts';

/** One of two minutes that a clock shows alike. */
interface WallChoice {
  readonly at: Ms;
  /** "1:30 before the clocks go back (UTC-4)". */
  readonly words: string;
}

/** What a day and time that somebody typed stand for. */
export type WallTimeInput =
  | { readonly kind: 'empty' }
  | { readonly kind: 'instant'; readonly at: Ms }
  /** The clock shows it twice: nobody but the one who was there knows which. */
  | { readonly kind: 'twice'; readonly question: string; readonly choices: readonly WallChoice[] }
  | { readonly kind: 'refused'; readonly message: string };

/** Years that a test can be of; a slip of the keys is likelier beyond. */
const YEARS = { from: 1980, to: 2199 } as const;
/** The first and last minute that a field takes, as the browser's own picker writes them. */
export const INPUT_RANGE = { min: `${YEARS.from}-01-01T00:00`, max: `${YEARS.to}-12-31T23:59` } as const;

/** Of what is no day with a time, or only half of one. */
export const INSTANT_NEEDED = 'A day and a time are needed, like 7 March 2026, 18:00.';

/**
 * Reads "2026-03-07T18:00" by the wall clock of `zone`, which must be a zone of the IANA database. A time is never shifted: one that
 * the clock skips is refused, one that it shows twice is asked about.
 */
export function parseWallTime(text: string, zone: string): WallTimeInput {
  if (text === '') return { kind: 'empty' };
  const match = /^(\d{4,6})-(\d\d)-(\d\d)T(\d\d):(\d\d)/.exec(text);
  if (!match) return { kind: 'refused', message: INSTANT_NEEDED };
  const [, year, month, day, hour, minute] = match.map(Number) as [number, number, number, number, number, number];
  if (year < YEARS.from || year > YEARS.to) {
    return { kind: 'refused', message: `The year ${year} is not one of a test. Write ${YEARS.from} to ${YEARS.to}.` };
  }
  const wall: LocalTime = { year, month, day, hour, minute };
  if (!isOnCalendar(wall)) return { kind: 'refused', message: INSTANT_NEEDED };
  const reading = matchWallTime(wall, zone);
  if (reading.shown === 'once') return { kind: 'instant', at: reading.at };
  if (reading.shown === 'never')
    return { kind: 'refused', message: describeSkippedTime(wall, reading.jump, reading.by, zone) };
  const choice = (at: Ms): WallChoice => ({
    at,
    words: `${formatHourMinute(wall)} ${describeRepeatedMinute(at === reading.first)} (${formatUtcOffset(wallTime(at, zone).offset)})`,
  });
  return {
    kind: 'twice',
    question: `The clocks go back on ${formatDay(reading.second, zone)} and show ${formatHourMinute(wall)} twice. Which one was it?`,
    choices: [choice(reading.first), choice(reading.second)],
  };
}

/** Whether there is such a day and time at all: 30 February and 24:30 run on into the next. */
function isOnCalendar({ year, month, day, hour, minute }: LocalTime): boolean {
  const date = new Date(Date.UTC(year, month - 1, day));
  return date.getUTCMonth() === month - 1 && date.getUTCDate() === day && hour < 24 && minute < 60;
}

function describeSkippedTime(wall: LocalTime, jump: Ms, by: Ms, zone: string): string {
  const to = wallTime(jump, zone);
  // What the clock would have shown at the jump: a zone may skip half an hour, or a day.
  const from = new Date(jump + to.offset - by);
  const fromWords = formatHourMinute({ hour: from.getUTCHours(), minute: from.getUTCMinutes() });
  const jumps = `The clocks go forward from ${fromWords} to ${formatHourMinute(to)} on ${formatDay(jump, zone)}`;
  return `${jumps}, so ${formatHourMinute(wall)} never comes. Write a time before ${fromWords}, or from ${formatHourMinute(to)} on.`;
}

/** "UTC-4", "UTC+5:30". */
function formatUtcOffset(offset: Ms): string {
  const minutes = Math.round(Math.abs(offset) / MINUTE);
  const rest = minutes % 60 ? `:${String(minutes % 60).padStart(2, '0')}` : '';
  return `UTC${offset < 0 ? '-' : '+'}${Math.floor(minutes / 60)}${rest}`;
}

/** As the browser's picker writes a wall clock: "2026-03-07T18:00"; empty for none. `readWall` reads it. */
export function wallTimeInputValue(value: string | null, zone: string): string {
  const at = msOf(value);
  if (at === null) return '';
  const { year, month, day, hour, minute } = wallTime(at, zone);
  const two = (part: number) => String(part).padStart(2, '0');
  return `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}T${two(hour)}:${two(minute)}`;
}
