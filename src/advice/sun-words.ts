import type { SunSpan } from '../../geometry/sun/sun-hours.ts';
import { wallTime } from '../protocol/timing/clock.ts';
import { formatHourMinute } from '../protocol/timing/format-time.ts';

/** Stated wherever direct sun is computed. */
export const NO_CLOUDS = 'Clouds are not counted on.';

export const NO_SKYLIGHTS = 'Skylights are not worked out: keep out of the sun below them.';
export const SUN_HOLDS = `Direct sun is worked out for the days of the test only. ${NO_CLOUDS}`;

const DAY = 1440;

/**
 * Returns the times of direct sun, in the time zone `zone`: "2:10 pm to 4:40 pm, on 3 days of 5". For days with different times, the
 * earliest and the latest; empty for no span. Where the sun is up over midnight, a day is counted from noon to noon for that.
 */
export function sunTimesInWords(spans: readonly SunSpan[], exposure: SunSpan, zone: string): string {
  if (spans.length === 0) return '';
  const minutes = (at: number) => {
    const { hour, minute } = wallTime(at, zone);
    return hour * 60 + minute;
  };
  const dayOf = (at: number) => {
    const { year, month, day } = wallTime(at, zone);
    return Date.UTC(year, month - 1, day) / 86_400_000;
  };
  const clock = (minute: number) => {
    const ofDay = minute % DAY;
    return formatHourMinute({ hour: Math.floor(ofDay / 60), minute: ofDay % 60 }, zone);
  };
  const length = ({ start, end }: SunSpan) => minutes(end) - minutes(start) + DAY * (dayOf(end) - dayOf(start));
  const isOverMidnight = spans.some((span) => minutes(span.start) + length(span) > DAY);
  const noon = isOverMidnight ? DAY / 2 : 0;
  const begins = (span: SunSpan) => ((minutes(span.start) + noon) % DAY) + noon;
  const first = Math.min(...spans.map(begins));
  const last = Math.max(...spans.map((span) => begins(span) + length(span)));
  const days = new Set(spans.map(({ start }) => dayOf(start))).size;
  const all = dayOf(exposure.end) - dayOf(exposure.start) + 1;
  return `${clock(first)} to ${clock(last)}, on ${days} ${days === 1 ? 'day' : 'days'} of ${all}`;
}
