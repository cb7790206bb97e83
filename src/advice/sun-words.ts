import type { SunSpan } from '../../geometry/sun/sun-hours.ts';
import { wallTime } from '../protocol/timing/clock.ts';
import { formatHourMinute } from '../protocol/timing/format-time.ts';

/** Stated wherever direct sun is computed. */
export const NO_CLOUDS = 'Clouds are not counted on.';

export const NO_SKYLIGHTS = 'Skylights are not worked out: keep out of the sun below them.';
export const SUN_HOLDS = `Direct sun is worked out for the days of the test only. ${NO_CLOUDS}`;

/**
 * Returns the times of direct sun, in the time zone `zone`: "2:10 pm to 4:40 pm, on 3 days of 5". For days with different times, the
 * earliest and the latest; empty for no span.
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
  const clock = (minute: number) => formatHourMinute({ hour: Math.floor(minute / 60), minute: minute % 60 }, zone);
  const first = Math.min(...spans.map(({ start }) => minutes(start)));
  const last = Math.max(...spans.map(({ end }) => minutes(end)));
  const days = new Set(spans.map(({ start }) => dayOf(start))).size;
  const all = dayOf(exposure.end) - dayOf(exposure.start) + 1;
  return `${clock(first)} to ${clock(last)}, on ${days} ${days === 1 ? 'day' : 'days'} of ${all}`;
}
