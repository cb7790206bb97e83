import fc from 'fast-check';
import { DateTime } from 'luxon';
import { describe, expect, it } from 'vitest';
import { DAY, HOUR, instantAt, instantText, MINUTE, wallTime } from '../../../../src/protocol/timing/clock.ts';
import { formatDuration, formatInstant, formatShortInstant } from '../../../../src/protocol/timing/format-time.ts';
import { parseWallTime } from '../../../../src/protocol/timing/wall-time-input.ts';
import { howMany } from '../../../helpers/how-many.ts';

const [FROM, TO] = [Date.UTC(2024, 0, 1), Date.UTC(2031, 0, 1)];

/** Every zone of the system's IANA database that changes its offset in 2024 to 2030, with the days of the changes. */
const CHANGING = Intl.supportedValuesOf('timeZone').flatMap((zone) => {
  const changes: number[] = [];
  let before = DateTime.fromMillis(FROM, { zone }).offset;
  for (let at = FROM + 7 * DAY; at <= TO; at += 7 * DAY) {
    const now = DateTime.fromMillis(at, { zone }).offset;
    if (now !== before) changes.push(at - 7 * DAY);
    before = now;
  }
  return changes.length > 0 ? [{ zone, changes }] : [];
});

/** An instant within two weeks of a change of clocks, in its zone. */
const nearChange = fc
  .constantFrom(...CHANGING)
  .chain(({ zone, changes }) =>
    fc.record({
      zone: fc.constant(zone),
      week: fc.constantFrom(...changes),
      minutes: fc.integer({ min: -3 * 1440, max: 11 * 1440 }),
    }),
  )
  .map(({ zone, week, minutes }) => ({ zone, at: week + minutes * MINUTE }));

// Luxon is an independent date library; it shares with ours only the zone database of the system.
describe('the wall clock of a zone, beside an independent date library', () => {
  it('zones with a change of clocks are there to be tried', () => {
    expect(CHANGING.length).toBeGreaterThan(80);
  });

  it('shows the same at every instant near every change, and is written with the same offset', () => {
    fc.assert(
      fc.property(nearChange, ({ zone, at }) => {
        const theirs = DateTime.fromMillis(at, { zone });
        const { year, month, day, hour, minute, offset } = wallTime(at, zone);
        expect([year, month, day, hour, minute]).toEqual([
          theirs.year,
          theirs.month,
          theirs.day,
          theirs.hour,
          theirs.minute,
        ]);
        expect(offset).toBe(theirs.offset * MINUTE);
        expect(instantText(at, zone)).toBe(theirs.toISO({ suppressMilliseconds: true })?.replace('Z', '+00:00'));
        expect(Date.parse(instantText(at, zone))).toBe(at);
      }),
      { numRuns: howMany(1600, 4000) },
    );
  });

  it('leads back to the instant, and to the earlier one where the clock shows a time twice', () => {
    fc.assert(
      fc.property(nearChange, ({ zone, at }) => {
        const back = instantAt(wallTime(at, zone), zone);
        expect(DateTime.fromMillis(back, { zone }).toFormat('yyyy-MM-dd HH:mm')).toBe(
          DateTime.fromMillis(at, { zone }).toFormat('yyyy-MM-dd HH:mm'),
        );
        expect(back).toBeLessThanOrEqual(at);
        const possible = DateTime.fromMillis(at, { zone })
          .getPossibleOffsets()
          .map((each) => each.toMillis());
        expect(back).toBe(Math.min(...possible));
      }),
      { numRuns: howMany(1200, 3000) },
    );
  });

  // America/New_York, 8 March 2026: from 2:00 the clock jumps to 3:00. 1 November 2026: from 2:00 back to 1:00.
  it('a time that the clock skips is the instant of the jump', () => {
    const at = instantAt({ year: 2026, month: 3, day: 8, hour: 2, minute: 30 }, 'America/New_York');
    expect(instantText(at, 'America/New_York')).toBe('2026-03-08T03:00:00-04:00');
  });

  it('48 hours over a change are 48 hours: the clock shows one hour more or less', () => {
    const zone = 'America/New_York';
    const start = instantAt({ year: 2026, month: 3, day: 7, hour: 18, minute: 0 }, zone);
    expect(instantText(start + 48 * HOUR, zone)).toBe('2026-03-09T19:00:00-04:00');
    const autumn = instantAt({ year: 2026, month: 10, day: 31, hour: 18, minute: 0 }, zone);
    expect(instantText(autumn + 48 * HOUR, zone)).toBe('2026-11-02T17:00:00-05:00');
  });
});

describe('a time that somebody types', () => {
  const NEW_YORK = 'America/New_York';

  // Every wall clock near every change: luxon says how often it comes, and when.
  it('is taken, asked about or refused as an independent library has it once, twice or never', () => {
    const seen = new Set<string>();
    fc.assert(
      fc.property(nearChange, fc.integer({ min: -240, max: 240 }), ({ zone, at }, minutes) => {
        // A wall clock that may not exist: minutes added on a calendar, not in time.
        const wall = DateTime.fromMillis(at, { zone }).setZone('UTC', { keepLocalTime: true }).plus({ minutes });
        const text = wall.toFormat("yyyy-MM-dd'T'HH:mm");
        const theirs = DateTime.fromISO(text, { zone });
        const read = parseWallTime(text, zone);
        seen.add(read.kind);
        if (theirs.toFormat("yyyy-MM-dd'T'HH:mm") !== text) {
          expect(read.kind).toBe('refused');
          return;
        }
        const possible = theirs
          .getPossibleOffsets()
          .map((each) => each.startOf('minute').toMillis())
          .sort((a, b) => a - b);
        if (read.kind === 'instant') expect([read.at]).toEqual(possible);
        else if (read.kind === 'twice') expect(read.choices.map((choice) => choice.at)).toEqual(possible);
        else expect.unreachable(`${text} in ${zone}: ${read.kind}`);
      }),
      {
        numRuns: howMany(2400, 6000),
        // The hour that comes twice in autumn, and the one that is left out in spring: seldom met by chance.
        examples: [
          [{ zone: 'America/New_York', at: Date.UTC(2026, 10, 1, 5, 30) }, 0],
          [{ zone: 'America/New_York', at: Date.UTC(2026, 2, 8, 6, 30) }, 60],
        ],
      },
    );
    expect([...seen].sort()).toEqual(['instant', 'refused', 'twice']);
  });

  // 1 November 2026: from 2:00 back to 1:00.
  it('and comes twice is asked about, in words', () => {
    expect(parseWallTime('2026-11-01T01:30', NEW_YORK)).toEqual({
      kind: 'twice',
      question: 'The clocks go back on Sunday, November 1 and show 1:30 am twice. Which one was it?',
      choices: [
        { at: Date.UTC(2026, 10, 1, 5, 30), words: '1:30 am before the clocks go back (UTC-4)' },
        { at: Date.UTC(2026, 10, 1, 6, 30), words: '1:30 am after the clocks go back (UTC-5)' },
      ],
    });
    expect(parseWallTime('2026-11-01T00:59', NEW_YORK).kind).toBe('instant');
    expect(parseWallTime('2026-11-01T02:00', NEW_YORK).kind).toBe('instant');
  });

  it.each([
    [
      '2026-03-08T02:30',
      NEW_YORK,
      'The clocks go forward from 2:00 am to 3:00 am on Sunday, March 8, so 2:30 am never comes. Write a time before 2:00 am, or from 3:00 am on.',
    ],
    // Half an hour, at 2:00 on the first Sunday of October.
    [
      '2026-10-04T02:10',
      'Australia/Lord_Howe',
      'The clocks go forward from 2:00 to 2:30 on Sunday 4 October, so 2:10 never comes. Write a time before 2:00, or from 2:30 on.',
    ],
    ['0026-03-08T12:00', NEW_YORK, 'The year 26 is not one of a test. Write 1990 to 2100.'],
    // In UTC it is 2101: the plan would refuse it in the words of its file.
    ['2100-12-31T20:00', NEW_YORK, 'The year 2100 is not one of a test. Write 1991 to 2099.'],
    ['1990-01-01T00:30', 'Asia/Tokyo', 'The year 1990 is not one of a test. Write 1991 to 2099.'],
    ['2026-03-08', NEW_YORK, 'Enter a day and a time, to the minute.'],
    ['2026-02-30T12:00', NEW_YORK, 'Enter a day and a time, to the minute.'],
    ['2026-13-01T12:00', NEW_YORK, 'Enter a day and a time, to the minute.'],
    ['2026-03-07T24:30', NEW_YORK, 'Enter a day and a time, to the minute.'],
  ])('%s in %s is refused, never shifted: %s', (text, zone, message) => {
    expect(parseWallTime(text, zone)).toEqual({ kind: 'refused', message });
  });

  it('is never off by an hour: the same start, told apart, makes exposures an hour apart', () => {
    const read = parseWallTime('2026-11-01T01:30', NEW_YORK);
    const [first, second] = read.kind === 'twice' ? read.choices : [];
    expect((second?.at ?? 0) - (first?.at ?? 0)).toBe(HOUR);
    expect(instantText(first?.at ?? 0, NEW_YORK)).toBe('2026-11-01T01:30:00-04:00');
    expect(instantText(second?.at ?? 0, NEW_YORK)).toBe('2026-11-01T01:30:00-05:00');
  });
});

describe('as it is said', () => {
  it.each([
    [48 * HOUR, '48 h'],
    [48 * HOUR - MINUTE, '47 h 59 min'],
    [48 * HOUR - 1, '47 h 59 min'],
    [5 * MINUTE, '5 min'],
    [59_999, 'less than a minute'],
    [-1000, 'less than a minute'],
    [0, '0 min'],
  ])('%d ms: %s', (duration, words) => {
    expect(formatDuration(duration)).toBe(words);
  });

  it('an instant by day and local time at the property', () => {
    expect(formatInstant(Date.UTC(2026, 2, 7, 23), 'America/New_York')).toBe('Saturday, March 7, 6:00 pm');
  });

  it('of two minutes that look the same, which one', () => {
    const zone = 'America/New_York';
    expect(formatInstant(Date.UTC(2026, 10, 1, 5, 30), zone)).toBe(
      'Sunday, November 1, 1:30 am (before the clocks go back)',
    );
    expect(formatInstant(Date.UTC(2026, 10, 1, 6, 30), zone)).toBe(
      'Sunday, November 1, 1:30 am (after the clocks go back)',
    );
    expect(formatInstant(Date.UTC(2026, 10, 1, 7), zone)).toBe('Sunday, November 1, 2:00 am');
  });

  it('short, with the year where it is another one than now', () => {
    const [at, zone] = [Date.UTC(2026, 2, 7, 23), 'America/New_York'];
    expect(formatShortInstant(at, zone)).toBe('Sat, Mar 7, 6:00 pm');
    expect(formatShortInstant(at, zone, Date.UTC(2027, 2, 7))).toBe('Sat, Mar 7, 2026, 6:00 pm');
  });
});
