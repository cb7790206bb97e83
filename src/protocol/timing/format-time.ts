import { type LocalTime, MINUTE, type Ms, matchWallTime, wallTime } from './clock.ts';

const DAYS = ['Sunday', 'Monday', 'Tuesday', 'Wednesday', 'Thursday', 'Friday', 'Saturday'] as const;
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

/** Returns "Saturday 7 March, 18:00"; of a minute that occurs twice also which one it is. */
export function formatInstant(at: Ms, zone: string): string {
  return `${formatDay(at, zone)}, ${formatTimeOfDay(at, zone)}`;
}

/** Returns "Saturday 7 March". */
export function formatDay(at: Ms, zone: string): string {
  const { weekday, day, month } = wallTime(at, zone);
  return `${DAYS[weekday]} ${day} ${MONTHS[month - 1]}`;
}

/** Returns "18:00", or "1:30 (before the clocks go back)". */
export function formatTimeOfDay(at: Ms, zone: string): string {
  const wall = wallTime(at, zone);
  const reading = matchWallTime(wall, zone);
  const which = reading.shown === 'twice' ? ` (${describeRepeatedMinute(at < reading.second)})` : '';
  return `${formatHourMinute(wall)}${which}`;
}

/** Returns which of two equal local times is meant. */
export const describeRepeatedMinute = (first: boolean): string =>
  first ? 'before the clocks go back' : 'after the clocks go back';

/** Returns "9:05". */
export const formatHourMinute = ({ hour, minute }: Pick<LocalTime, 'hour' | 'minute'>): string =>
  `${hour}:${String(minute).padStart(2, '0')}`;

/** Returns "Sat 7 Mar, 18:00", with the year where it is not that of `now`. */
export function formatShortInstant(at: Ms, zone: string, now: Ms = at): string {
  const { year } = wallTime(at, zone);
  const other = year === wallTime(now, zone).year ? '' : ` ${year}`;
  return `${formatShortDay(at, zone)}${other}, ${formatTimeOfDay(at, zone)}`;
}

/** Returns "Sat 7 Mar". */
export function formatShortDay(at: Ms, zone: string): string {
  const { weekday, day, month } = wallTime(at, zone);
  return `${DAYS[weekday]?.slice(0, 3)} ${day} ${MONTHS[month - 1]?.slice(0, 3)}`;
}

/** Returns a duration to the minute: "47 h 59 min", "12 h", "5 min". Rounded down, so that no test looks longer than it was. */
export function formatDuration(duration: Ms): string {
  const minutes = Math.floor(Math.abs(duration) / MINUTE);
  const [hours, rest] = [Math.floor(minutes / 60), minutes % 60];
  const parts = [hours > 0 ? `${hours} h` : '', rest > 0 || hours === 0 ? `${rest} min` : ''];
  return parts.filter(Boolean).join(' ');
}
