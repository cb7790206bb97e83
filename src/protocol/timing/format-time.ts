/**
 * Dates and times in the format of the site, on screen and on paper: "Saturday, March 7, 6:00 pm" in the United States and Canada,
 * "Saturday 7 March, 18:00" elsewhere. The time zone of the site decides, so that a plan reads the same on every device.
 */
import { type LocalTime, MINUTE, type Ms, matchWallTime, wallTime } from './clock.ts';

export const DAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;
const MONTHS = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** Zones of the United States and Canada in the IANA database: the month is first, and the clock has 12 hours. */
const MONTH_FIRST =
  /^(?:US|Canada)\/|^Pacific\/Honolulu$|^America\/(?:(?:Indiana|Kentucky|North_Dakota)\/|(?:New_York|Detroit|Chicago|Menominee|Denver|Boise|Phoenix|Los_Angeles|Anchorage|Juneau|Sitka|Metlakatla|Yakutat|Nome|Adak|Indianapolis|Louisville|St_Johns|Halifax|Glace_Bay|Moncton|Goose_Bay|Toronto|Montreal|Iqaluit|Winnipeg|Resolute|Rankin_Inlet|Regina|Swift_Current|Edmonton|Cambridge_Bay|Inuvik|Creston|Dawson|Dawson_Creek|Fort_Nelson|Whitehorse|Vancouver)$)/;

/** Returns whether dates in `zone` are written with the month first and times with am and pm. */
export const isMonthFirst = (zone: string): boolean => MONTH_FIRST.test(zone);

/** Returns the time zone of this device. */
export const deviceZone = (): string => new Intl.DateTimeFormat().resolvedOptions().timeZone;

/** Whether names are shortened to three letters, and whether the year is written. */
interface DateForm {
  readonly short?: boolean;
  readonly year?: boolean;
}

/** Returns "Saturday, March 7, 6:00 pm" or "Saturday 7 March, 18:00"; for a minute that occurs twice, also which one it is. */
export function formatInstant(at: Ms, zone: string, form: DateForm = {}): string {
  return `${formatDay(at, zone, form)}, ${formatTimeOfDay(at, zone)}`;
}

/** Returns "Saturday, March 7" or "Saturday 7 March"; short "Sat, Mar 7" or "Sat 7 Mar"; with the year "Saturday, March 7, 2026". */
export function formatDay(at: Ms, zone: string, form: DateForm = {}): string {
  const weekday = cut(DAYS[wallTime(at, zone).weekday] ?? '', form);
  return `${weekday}${isMonthFirst(zone) ? ',' : ''} ${formatDate(at, zone, form)}`;
}

/** Returns "March 7, 2026" or "7 March 2026", short "Mar 7" or "7 Mar". */
export function formatDate(at: Ms, zone: string, form: DateForm = {}): string {
  const { day, month, year } = wallTime(at, zone);
  const name = cut(MONTHS[month - 1] ?? '', form);
  if (isMonthFirst(zone)) return `${name} ${day}${form.year ? `, ${year}` : ''}`;
  return `${day} ${name}${form.year ? ` ${year}` : ''}`;
}

const cut = (name: string, { short }: DateForm): string => (short ? name.slice(0, 3) : name);

/** Returns "6:00 pm" or "18:00", or "1:30 am (before the clocks go back)". */
export function formatTimeOfDay(at: Ms, zone: string): string {
  const wall = wallTime(at, zone);
  const reading = matchWallTime(wall, zone);
  const which = reading.shown === 'twice' ? ` (${describeRepeatedMinute(at < reading.second)})` : '';
  return `${formatHourMinute(wall, zone)}${which}`;
}

/** Returns which of two equal local times is meant. */
export const describeRepeatedMinute = (first: boolean): string =>
  first ? 'before the clocks go back' : 'after the clocks go back';

/** Returns "9:05 am" or "9:05". */
export function formatHourMinute({ hour, minute }: Pick<LocalTime, 'hour' | 'minute'>, zone: string): string {
  const minutes = String(minute).padStart(2, '0');
  if (!isMonthFirst(zone)) return `${hour}:${minutes}`;
  return `${hour % 12 || 12}:${minutes} ${hour < 12 ? 'am' : 'pm'}`;
}

/** Returns an instant as `formatInstant` does, with the year if it is not that of `now`. */
export function formatInstantNear(at: Ms, zone: string, now: Ms, form: DateForm = {}): string {
  return formatInstant(at, zone, { ...form, year: wallTime(at, zone).year !== wallTime(now, zone).year });
}

/** Returns "Sat, Mar 7, 6:00 pm" or "Sat 7 Mar, 18:00", with the year if it is not that of `now`. */
export function formatShortInstant(at: Ms, zone: string, now: Ms = at): string {
  return formatInstantNear(at, zone, now, { short: true });
}

/**
 * Returns a duration to the minute: "47 h 59 min", "12 h", "5 min". Rounded down, so that no test looks longer than it was; "less than a
 * minute" for a few seconds.
 */
export function formatDuration(duration: Ms): string {
  const minutes = Math.floor(Math.abs(duration) / MINUTE);
  if (minutes === 0 && duration !== 0) return 'less than a minute';
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  const parts = [hours > 0 ? `${hours} h` : '', rest > 0 || hours === 0 ? `${rest} min` : ''];
  return parts.filter(Boolean).join(' ');
}
