import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { instantError, instantMs } from '../../../geometry/planfile/instant.ts';

describe('instantMs(text)', () => {
  it.each([
    ['1970-01-01T00:00:00Z', 0, 'definition'],
    ['1985-04-12T23:20:50.52Z', 482_196_050_520, 'RFC 3339, section 5.8'],
    ['1996-12-19T16:39:57-08:00', 851_042_397_000, 'RFC 3339, section 5.8'],
    ['1937-01-01T12:00:27.87+00:20', -1_041_337_172_130, 'RFC 3339, section 5.8'],
    ['2026-03-08T00:00:00-05:00', 1_772_946_000_000, 'date --utc'],
    ['2000-02-29T00:00:00z', 951_782_400_000, 'date --utc; small z'],
    ['0001-01-01T00:00:00Z', -62_135_596_800_000, 'date --utc'],
  ])('%s is %d ms (%s)', (text, ms) => {
    expect(instantMs(text)).toBe(ms);
  });

  it.each(['2026-03-07', '2026-03-07T18:00:00', '2026-03-07T18:00Z', '2026-03-07 18:00:00Z', '20260307T180000Z', ''])(
    '%j is no instant',
    (text) => {
      expect(instantMs(text)).toBe(null);
    },
  );

  it.each([
    ['2026-02-29T00:00:00Z', 'names a day that the calendar does not have'],
    ['1900-02-29T00:00:00Z', 'names a day that the calendar does not have'],
    ['2026-04-31T00:00:00Z', 'names a day that the calendar does not have'],
    ['2026-13-01T00:00:00Z', 'names a day that the calendar does not have'],
    ['2026-00-10T00:00:00Z', 'names a day that the calendar does not have'],
    ['2026-01-00T00:00:00Z', 'names a day that the calendar does not have'],
    ['1990-12-31T23:59:60Z', 'has a leap second; write second 59'],
    ['2026-01-01T24:00:00Z', 'names a time that the clock does not have'],
    ['2026-01-01T00:60:00Z', 'names a time that the clock does not have'],
    ['2026-01-01T00:00:61Z', 'names a time that the clock does not have'],
    ['2026-01-01T00:00:00+24:00', 'has an offset that no clock has'],
    ['2026-01-01T00:00:00-05:60', 'has an offset that no clock has'],
    ['tomorrow', 'is not a date and time with an offset'],
  ])('%s %s', (text, trouble) => {
    expect(instantError(text)).toBe(trouble);
    expect(instantMs(text)).toBe(null);
  });

  it("agrees with the engine's own reader on every real instant", () => {
    const date = fc.date({
      min: new Date('0100-01-01T00:00:00Z'),
      max: new Date('9999-12-30T00:00:00Z'),
      noInvalidDate: true,
    });
    const minutes = fc.integer({ min: -(23 * 60 + 59), max: 23 * 60 + 59 });
    fc.assert(
      fc.property(date, minutes, (at, offset) => {
        const clock = new Date(at.getTime() + offset * 60_000).toISOString();
        const two = (value: number) => String(value).padStart(2, '0');
        const size = Math.abs(offset);
        const zone = `${offset < 0 ? '-' : '+'}${two(Math.floor(size / 60))}:${two(size % 60)}`;
        fc.pre(/^\d{4}-/.test(clock));
        expect(instantMs(clock.replace('Z', zone))).toBe(at.getTime());
      }),
    );
  });
});
