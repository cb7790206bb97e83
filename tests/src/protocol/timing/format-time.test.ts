import { describe, expect, it } from 'vitest';
import {
  formatDate,
  formatDay,
  formatInstant,
  formatShortInstant,
  formatTimeOfDay,
  isMonthFirst,
} from '../../../../src/protocol/timing/format-time.ts';

const EVENING = Date.parse('2026-03-07T23:05:00Z');

describe('dates and clock', () => {
  it.each([
    ['America/New_York', 'Saturday, March 7, 6:05 pm', 'Sat, Mar 7, 6:05 pm'],
    ['America/Indiana/Knox', 'Saturday, March 7, 5:05 pm', 'Sat, Mar 7, 5:05 pm'],
    ['America/Toronto', 'Saturday, March 7, 6:05 pm', 'Sat, Mar 7, 6:05 pm'],
    ['Pacific/Honolulu', 'Saturday, March 7, 1:05 pm', 'Sat, Mar 7, 1:05 pm'],
    ['Europe/Berlin', 'Sunday 8 March, 0:05', 'Sun 8 Mar, 0:05'],
    ['Europe/London', 'Saturday 7 March, 23:05', 'Sat 7 Mar, 23:05'],
    ['America/Sao_Paulo', 'Saturday 7 March, 20:05', 'Sat 7 Mar, 20:05'],
    ['UTC', 'Saturday 7 March, 23:05', 'Sat 7 Mar, 23:05'],
  ])('in %s: %s', (zone, long, short) => {
    expect(formatInstant(EVENING, zone)).toBe(long);
    expect(formatShortInstant(EVENING, zone)).toBe(short);
  });

  it('carry the year where it is asked for, or is another one', () => {
    expect(formatDay(EVENING, 'America/Chicago', { year: true })).toBe('Saturday, March 7, 2026');
    expect(formatDate(EVENING, 'Europe/Berlin', { year: true, short: true })).toBe('8 Mar 2026');
    expect(formatShortInstant(EVENING, 'America/Chicago', Date.parse('2027-01-02T00:00:00Z'))).toBe(
      'Sat, Mar 7, 2026, 5:05 pm',
    );
  });

  it.each([
    ['2026-03-07T05:00:00Z', '12:00 am'],
    ['2026-03-07T17:00:00Z', '12:00 pm'],
    ['2026-11-01T05:30:00Z', '1:30 am (before the clocks go back)'],
    ['2026-11-01T06:30:00Z', '1:30 am (after the clocks go back)'],
  ])('write %s in New York as %s', (at, words) => {
    expect(formatTimeOfDay(Date.parse(at), 'America/New_York')).toBe(words);
  });

  it('know the zones of single states and counties too, and no zone farther south', () => {
    const north = Intl.supportedValuesOf('timeZone').filter((zone) =>
      /^America\/(?:Indiana|Kentucky|North_Dakota)\//.test(zone),
    );
    expect(north.length).toBeGreaterThan(5);
    expect(north.every(isMonthFirst)).toBe(true);
    expect(['America/Mexico_City', 'America/Bogota', 'Australia/Sydney'].some(isMonthFirst)).toBe(false);
  });
});
