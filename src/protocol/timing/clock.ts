import { instantMs } from '../../../geometry/planfile/instant.ts';

/** Milliseconds: an instant since 1970, or a duration. Plans hold instants as RFC 3339 text; arithmetic is free of time zones. */
export type Ms = number;

export const HOUR: Ms = 3_600_000;
export const MINUTE: Ms = 60_000;
export const DAY: Ms = 24 * HOUR;

/** Returns an RFC 3339 instant in ms; null for none. The plan's reader has validated its format. */
export function msOf(text: string | null | undefined): Ms | null {
  return text ? instantMs(text) : null;
}

/** Wall time in a zone of the IANA database, with the offset from UTC at that instant. */
export interface WallTime {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
  readonly second: number;
  /** 0 is Sunday. */
  readonly weekday: number;
  readonly offset: Ms;
}

/** Number of cached wall times of a zone: the few instants of a plan are formatted hundreds of times, and the formatter is slow. */
const MOST_KEPT = 500;

const formats = new Map<string, Intl.DateTimeFormat>();
const wallTimes = new Map<string, Map<Ms, WallTime>>();

function formatIn(zone: string): Intl.DateTimeFormat {
  let format = formats.get(zone);
  if (!format) {
    const two = '2-digit';
    format = new Intl.DateTimeFormat('en-US-u-ca-iso8601-nu-latn', {
      timeZone: zone,
      hourCycle: 'h23',
      era: 'short',
      year: 'numeric',
      month: two,
      day: two,
      hour: two,
      minute: two,
      second: two,
    });
    formats.set(zone, format);
  }
  return format;
}

/** Returns the wall time of an instant in `zone`. Throws a RangeError for a zone that the system does not know. */
export function wallTime(at: Ms, zone: string): WallTime {
  const ofZone = wallTimes.get(zone) ?? new Map<Ms, WallTime>();
  wallTimes.set(zone, ofZone);
  const known = ofZone.get(at);
  if (known) return known;
  const wall = computeWallTime(at, zone);
  if (ofZone.size >= MOST_KEPT) ofZone.clear();
  ofZone.set(at, wall);
  return wall;
}

function computeWallTime(at: Ms, zone: string): WallTime {
  const parts = Object.fromEntries(
    formatIn(zone)
      .formatToParts(at)
      .map(({ type, value }) => [type, value]),
  );
  const [year, month, day] = [Number(parts.year), Number(parts.month), Number(parts.day)];
  const [hour, minute, second] = [Number(parts.hour), Number(parts.minute), Number(parts.second)];
  const local = Date.UTC(year, month - 1, day, hour, minute, second);
  return {
    year,
    month,
    day,
    hour,
    minute,
    second,
    weekday: new Date(local).getUTCDay(),
    offset: local - Math.floor(at / 1000) * 1000,
  };
}

/** A date and time of day without a zone. */
export interface LocalTime {
  readonly year: number;
  readonly month: number;
  readonly day: number;
  readonly hour: number;
  readonly minute: number;
}

/** How often a local time occurs in a zone: once, twice if clocks go back, never if they skip it. */
export type WallTimeMatch =
  | { readonly shown: 'once'; readonly at: Ms }
  | { readonly shown: 'twice'; readonly first: Ms; readonly second: Ms }
  | {
      readonly shown: 'never';
      /** The instant at which the clock skips it. */
      readonly jump: Ms;
      /** Length of the skip, ms. */
      readonly by: Ms;
    };

/** Returns the instants at which `wall` occurs in `zone`. Days beyond the end of a month continue in the next. */
export function matchWallTime(wall: LocalTime, zone: string): WallTimeMatch {
  const local = Date.UTC(wall.year, wall.month - 1, wall.day, wall.hour, wall.minute);
  // The offsets before and after any nearby change: no zone changes twice within two days.
  const offsets = [local - DAY, local + DAY].map((near) => wallTime(near, zone).offset);
  const [later, earlier] = [Math.min(...offsets), Math.max(...offsets)];
  const fits = [...new Set([local - earlier, local - later])].filter((at) => at + wallTime(at, zone).offset === local);
  const [first, second] = fits;
  if (first === undefined)
    return { shown: 'never', jump: jumpBetween(local - earlier, local - later, zone), by: earlier - later };
  return second === undefined ? { shown: 'once', at: first } : { shown: 'twice', first, second };
}

/**
 * Returns the instant of a local time in `zone`: the earlier of two (clocks go back); for a skipped time (clocks go forward) the instant of
 * the skip. For text typed by a person use `parseWallTime`.
 */
export function instantAt(wall: LocalTime, zone: string): Ms {
  const reading = matchWallTime(wall, zone);
  if (reading.shown === 'once') return reading.at;
  return reading.shown === 'twice' ? reading.first : reading.jump;
}

/** Returns the instant between `from` and `to` at which the offset changes, to the second. */
function jumpBetween(from: Ms, to: Ms, zone: string): Ms {
  const after = wallTime(to, zone).offset;
  let [low, high] = [from - DAY, to];
  while (high - low > 1000) {
    const middle = Math.floor((low + high) / 2000) * 1000;
    if (wallTime(middle, zone).offset === after) high = middle;
    else low = middle;
  }
  return high;
}

/** Returns RFC 3339 text with the zone's offset at that instant: "2026-03-07T18:00:00-05:00". Rounded down to seconds. */
export function instantText(at: Ms, zone: string): string {
  const { year, month, day, hour, minute, second, offset } = wallTime(at, zone);
  const two = (value: number) => String(value).padStart(2, '0');
  const minutes = Math.round(Math.abs(offset) / MINUTE);
  const sign = offset < 0 ? '-' : '+';
  const date = `${String(year).padStart(4, '0')}-${two(month)}-${two(day)}`;
  return `${date}T${two(hour)}:${two(minute)}:${two(second)}${sign}${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
}

/** Returns the day of an instant in a zone as ISO 8601 date: "2026-03-07". */
export const isoDay = (at: Ms, zone: string): string => instantText(at, zone).slice(0, 10);
