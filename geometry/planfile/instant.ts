import { INSTANT_PATTERN } from './schema/leaves.ts';

const PARTS = /^(\d{4})-(\d\d)-(\d\d)T(\d\d):(\d\d):(\d\d)(\.\d+)?(?:Z|([+-])(\d\d):(\d\d))$/;

type Read = { readonly ms: number } | { readonly trouble: string };

/**
 * Returns the milliseconds since 1970-01-01T00:00Z of an RFC 3339 date-time with an offset; null when it is not valid.
 */
export function instantMs(text: string): number | null {
  const read = readInstant(text);
  return 'ms' in read ? read.ms : null;
}

/** Returns what is wrong with text in the form of an instant, in words; null when it is valid. */
export function instantError(text: string): string | null {
  const read = readInstant(text);
  return 'trouble' in read ? read.trouble : null;
}

/**
 * Parsed here because `Date.parse` differs between engines (31 February becomes 2 March in one, hour 24 is midnight in
 * another). RFC 3339 allows lowercase t and z. A leap second is refused: no duration counted from it would be right.
 */
function readInstant(text: string): Read {
  const parts = INSTANT_PATTERN.test(text) ? PARTS.exec(text.toUpperCase()) : null;
  if (!parts) return { trouble: 'is not a date and time with an offset' };
  const [year = 0, month = 0, day = 0, hour = 0, minute = 0, second = 0] = parts.slice(1, 7).map(Number);
  const offset = [Number(parts[9] ?? 0), Number(parts[10] ?? 0)] as const;
  if (month < 1 || month > 12 || day < 1 || day > daysIn(year, month))
    return { trouble: 'names a day that the calendar does not have' };
  if (second === 60) return { trouble: 'has a leap second; write second 59' };
  if (hour > 23 || minute > 59 || second > 59) return { trouble: 'names a time that the clock does not have' };
  if (offset[0] > 23 || offset[1] > 59) return { trouble: 'has an offset that no clock has' };
  const date = new Date(0);
  // Date.UTC would map the years 0 to 99 to 1900 to 1999.
  date.setUTCFullYear(year, month - 1, day);
  date.setUTCHours(hour, minute, second, Math.floor(Number(`0${parts[7] ?? ''}`) * 1000));
  const offsetMs = (offset[0] * 60 + offset[1]) * 60_000;
  return { ms: date.getTime() - (parts[8] === '-' ? -offsetMs : offsetMs) };
}

function daysIn(year: number, month: number): number {
  if (month === 2) return (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0 ? 29 : 28;
  return [4, 6, 9, 11].includes(month) ? 30 : 31;
}
