import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  FOOT,
  formatArea,
  formatLength,
  INCH,
  type LengthUnit,
  parseLength,
  SQUARE_FOOT,
} from '../../../geometry/units/index.ts';

// Every expected value is worked out by hand from 1 in = 25.4 mm exactly (yard and pound agreement of 1959).
const TWELVE_SIX_HALF = 150.5 * 25.4;

describe('the constants', () => {
  it('are those of the international yard and pound agreement of 1959', () => {
    expect(INCH).toBe(25.4);
    expect(FOOT).toBe(304.8);
    expect(SQUARE_FOOT).toBe(92903.04); // 0.3048² m², exact
  });
});

describe('parseLength(text, "feet-inches")', () => {
  it.each([
    ['12\'6"', 3810],
    ['12\' 6 1/2"', TWELVE_SIX_HALF],
    ['12\'-6 1/2"', TWELVE_SIX_HALF],
    ['12\'-6-1/2"', TWELVE_SIX_HALF],
    ["12' 6 1/2", TWELVE_SIX_HALF],
    ['12’ 6 ½”', TWELVE_SIX_HALF],
    ['12′6½″', TWELVE_SIX_HALF],
    ["12' 6 1/2''", TWELVE_SIX_HALF],
    ['12 6 1/2', TWELVE_SIX_HALF],
    ['12-6-1/2', TWELVE_SIX_HALF],
    ['12 – 6½ in', TWELVE_SIX_HALF],
    // As laser tapes type: common practice, no published source.
    ['12\'06"1/2', TWELVE_SIX_HALF],
    ["12'06''1/2", TWELVE_SIX_HALF],
    ['12\'6"1/2"', TWELVE_SIX_HALF],
    // As said aloud, and as the keys for units and fractions are pressed in that order.
    ['12 ft 6 in 1/2', TWELVE_SIX_HALF],
    ['12 feet 6 inches 1/2', TWELVE_SIX_HALF],
    ['150 in 1/2', TWELVE_SIX_HALF],
    ['0\'06"13/16', (6 + 13 / 16) * 25.4],
    ['06"13/16', (6 + 13 / 16) * 25.4],
    ['12 ft 6 1⁄2 in', TWELVE_SIX_HALF],
    ['12 FEET, 6.5 Inches', TWELVE_SIX_HALF],
    ['12 ft. 6.5 in.', TWELVE_SIX_HALF],
    ['12ft6in', 3810],
    ['12 foot 6', 3810],
    ['12-6', 3810],
    ['12 6', 3810],
    ['12.5', 3810],
    ['12,5', 3810],
    ["12.5'", 3810],
    ['12.5 ft', 3810],
    ['12 1/2 ft', 3810],
    ['5\'-2½"', 62.5 * 25.4],
    ['12', 3657.6],
    ['  12  ', 3657.6],
    ['12\u00a0ft', 3657.6],
    ['.5', 152.4],
    ['0', 0],
    ['0"', 0],
    ['0\' 0"', 0],
    ['-0', 0],
    ['6 1/2"', 165.1],
    ['6-1/2 in', 165.1],
    ['6.5 in', 165.1],
    ['36 in', 914.4],
    ['1 inch', 25.4],
    ['7/8"', 22.225],
    ['7/8', 22.225],
    ['9/8 in', 28.575],
    ['⅛ in', 3.175],
    ['1/16 in', 1.5875],
    ['1/3 in', 25.4 / 3],
    ['3.81 m', 3810],
    ['3,81 m', 3810],
    ['3,810 m', 3810],
    ['3.81 meters', 3810],
    ['3 m 81 cm', 3810],
    ['381 cm', 3810],
    ['3810mm', 3810],
    ['1200,5 mm', 1200.5],
    ['35 centimeters', 350],
  ])('%j is %d mm', (text, mm) => {
    expect(parseLength(text, 'feet-inches')).toMatchObject({ ok: true, mm });
  });

  it.each([
    ['12', '12 ft'],
    ['12.5', '12 ft 6 in'],
    ['7/8', '7/8 in'],
    ['12-6', '12 ft 6 in'],
    ['6 1/16 in', '6 1/16 in'],
    ['2.13 m', 'about 6 ft 11 7/8 in'], // 83.858 in, 7/8 = .875
    ['0', '0 in'],
  ])('answers %j with %j', (text, echo) => {
    expect(parseLength(text, 'feet-inches')).toMatchObject({ ok: true, echo });
  });

  it('takes a bare number as inches in a field of small things', () => {
    expect(parseLength('8', 'feet-inches', { bare: 'small' })).toEqual({ ok: true, mm: 203.2, echo: '8 in' });
    expect(parseLength('4 1/2', 'feet-inches', { bare: 'small' })).toEqual({ ok: true, mm: 114.3, echo: '4 1/2 in' });
    expect(parseLength('1-6', 'feet-inches', { bare: 'small' })).toEqual({ ok: true, mm: 457.2, echo: '1 ft 6 in' });
  });
});

describe('parseLength(text, "metric")', () => {
  it.each([
    ['3.81', 3810, '3.81 m'],
    ['3,81', 3810, '3.81 m'],
    ['3,810', 3810, '3.81 m'],
    ['4', 4000, '4.00 m'],
    ['35 cm', 350, '35 cm'],
    ['35.5 cm', 355, '35.5 cm'],
    ['2133 mm', 2133, '2.133 m'],
    ['7 ft', 2133.6, 'about 2.135 m'],
    ['0', 0, '0 cm'],
  ])('%j is %d mm, answered with %j', (text, mm, echo) => {
    expect(parseLength(text, 'metric')).toEqual({ ok: true, mm, echo });
  });

  it('takes a bare number as centimeters in a field of small things', () => {
    expect(parseLength('12', 'metric', { bare: 'small' })).toEqual({ ok: true, mm: 120, echo: '12 cm' });
  });
});

describe('parseLength says what is wrong', () => {
  const FEET = 'Write it like 12 ft 6 1/2 in or 6.5 in.';
  const METRIC = 'Write it like 3.81 m or 35 cm.';
  it.each<[string, LengthUnit, string]>([
    ['', 'feet-inches', `Nothing is written. ${FEET}`],
    ['   ', 'metric', `Nothing is written. ${METRIC}`],
    ['wide', 'feet-inches', `"wide" is not a length. ${FEET}`],
    ['wide', 'metric', `"wide" is not a length. ${METRIC}`],
    ['12 6', 'metric', `"12 6" is not a length. ${METRIC}`],
    ['1/0 in', 'feet-inches', `"1/0 in" is not a length. ${FEET}`],
    ['6 9/8 in', 'feet-inches', `"6 9/8 in" is not a length. ${FEET}`],
    ['5.5\' 3"', 'feet-inches', `"5.5' 3"" is not a length. ${FEET}`],
    ['12 ft 6.5 in 1/2', 'feet-inches', `"12 ft 6.5 in 1/2" is not a length. ${FEET}`],
    ['6 1/4 in 1/2', 'feet-inches', `"6 1/4 in 1/2" is not a length. ${FEET}`],
    ['6 in 9/8', 'feet-inches', `"6 in 9/8" is not a length. ${FEET}`],
    ["5' 6'", 'feet-inches', `"5' 6'" is not a length. ${FEET}`],
    ['1e3', 'feet-inches', `"1e3" is not a length. ${FEET}`],
    ['1.2.3', 'metric', `"1.2.3" is not a length. ${METRIC}`],
    ['--5', 'feet-inches', `"--5" is not a length. ${FEET}`],
    ['x'.repeat(99), 'metric', `"${'x'.repeat(40)}…" is not a length. ${METRIC}`],
    ['1'.repeat(61), 'metric', `"${'1'.repeat(40)}…" is not a length. ${METRIC}`],
    ['6 1/2', 'feet-inches', '"6 1/2" could be feet or inches. Write 6 1/2 ft or 6 1/2 in.'],
    ['6½', 'feet-inches', '"6½" could be feet or inches. Write 6 1/2 ft or 6 1/2 in.'],
    [
      '5\' 14"',
      'feet-inches',
      `"5' 14"" has 12 in or more beside the feet. Write it all in inches, or carry the feet over.`,
    ],
    [
      '1-26',
      'feet-inches',
      '"1-26" has 12 in or more beside the feet. Write it all in inches, or carry the feet over.',
    ],
    ['1,200 mm', 'metric', 'The comma in "1,200 mm" could mark thousands or decimals. Write 1200 mm or 1.200 mm.'],
    ['1,200', 'feet-inches', 'The comma in "1,200" could mark thousands or decimals. Write 1200 ft or 1.200 ft.'],
    ['-5 ft', 'feet-inches', '"-5 ft" is below zero. Write a length of 0 or more.'],
    ['−5', 'metric', '"−5" is below zero. Write a length of 0 or more.'],
    ['10001 m', 'metric', '"10001 m" is longer than 10 km. Check the number and its unit.'],
    [`${'9'.repeat(57)} m`, 'metric', `"${'9'.repeat(40)}…" is longer than 10 km. Check the number and its unit.`],
  ])('%j (%s): %s', (text, unit, message) => {
    expect(parseLength(text, unit)).toEqual({ ok: false, message });
  });

  it('takes a length below zero where the field allows one', () => {
    expect(parseLength('-5\' 2"', 'feet-inches', { negative: true })).toEqual({
      ok: true,
      mm: -1574.8,
      echo: '-5 ft 2 in',
    });
    expect(parseLength('-0.5', 'metric', { negative: true })).toEqual({ ok: true, mm: -500, echo: '-50 cm' });
  });

  it('and never throws, whatever is typed', () => {
    const signs = fc.constantFrom(...'0123456789 .,-/\'"½″ftinmc’'.split(''));
    const typed = fc.oneof(
      fc.string(),
      fc.array(signs, { maxLength: 12 }).map((parts) => parts.join('')),
    );
    fc.assert(
      fc.property(typed, fc.constantFrom<LengthUnit>('feet-inches', 'metric'), (text, unit) => {
        const read = parseLength(text, unit);
        if (read.ok) expect(read.mm >= 0 && read.mm <= 1e7).toBe(true);
        else expect(read.message).toMatch(/[A-Z"].*\.$/s);
      }),
      { numRuns: 3000 },
    );
  });
});

describe('formatLength(mm, unit)', () => {
  it.each<[number, LengthUnit, string]>([
    [2133.6, 'feet-inches', '7 ft'],
    [1587.5, 'feet-inches', '5 ft 2 1/2 in'],
    [0, 'feet-inches', '0 in'],
    [-0, 'feet-inches', '0 in'],
    [101.6, 'feet-inches', '4 in'],
    [19.05, 'feet-inches', '3/4 in'],
    [304.8, 'feet-inches', '1 ft'],
    [311.15, 'feet-inches', '1 ft 1/4 in'],
    [304.7, 'feet-inches', '1 ft'], // 11.996 in
    [-101.6, 'feet-inches', '-4 in'],
    [2130, 'metric', '2.13 m'],
    [2133.6, 'metric', '2.135 m'],
    [350, 'metric', '35 cm'],
    [355, 'metric', '35.5 cm'],
    [999, 'metric', '1.00 m'],
    [1000, 'metric', '1.00 m'],
    [1005, 'metric', '1.005 m'],
    [2100, 'metric', '2.10 m'],
    [0, 'metric', '0 cm'],
    [-350, 'metric', '-35 cm'],
  ])('%d mm, %s: %s', (mm, unit, words) => {
    expect(formatLength(mm, unit)).toBe(words);
  });

  it.each<[number, LengthUnit, string, string]>([
    [100, 'feet-inches', '3 7/8 in', '4 in'], // 3.937 in
    [2133.5, 'feet-inches', '6 ft 11 7/8 in', '7 ft'],
    [2134, 'metric', '2.13 m', '2.135 m'],
    [-100, 'feet-inches', '-4 in', '-3 7/8 in'],
    [1, 'feet-inches', '0 in', '1/8 in'],
  ])('%d mm, %s: down to %s, up to %s', (mm, unit, down, up) => {
    expect(formatLength(mm, unit, 'down')).toBe(down);
    expect(formatLength(mm, unit, 'up')).toBe(up);
  });

  it('does not round a whole number of eighths away, however it was worked out', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 3_000_000 }), (eighths) => {
        const mm = (eighths / 8) * 25.4;
        expect(formatLength(mm, 'feet-inches', 'down')).toBe(formatLength(mm, 'feet-inches'));
        expect(formatLength(mm, 'feet-inches', 'up')).toBe(formatLength(mm, 'feet-inches'));
      }),
    );
  });

  it('throws on a length that is not finite: that is our mistake, not a length', () => {
    expect(() => formatLength(Number.NaN, 'metric')).toThrow('a length to be shown is finite, got NaN');
  });
});

describe('what formatLength writes, parseLength reads', () => {
  const length = fc.double({ min: -1e6, max: 1e6, noNaN: true });
  const half: Readonly<Record<LengthUnit, number>> = { 'feet-inches': 25.4 / 16, metric: 2.5 };

  it.each<LengthUnit>(['feet-inches', 'metric'])('within half a step, %s', (unit) => {
    fc.assert(
      fc.property(length, (mm) => {
        const read = parseLength(formatLength(mm, unit), unit, { negative: true });
        expect(read.ok && Math.abs(read.mm - mm)).toBeLessThanOrEqual(half[unit] + 1e-9);
      }),
    );
  });

  it.each<LengthUnit>(['feet-inches', 'metric'])('and on the side of caution when rounded, %s', (unit) => {
    fc.assert(
      fc.property(length, (mm) => {
        const down = parseLength(formatLength(mm, unit, 'down'), unit, { negative: true });
        const up = parseLength(formatLength(mm, unit, 'up'), unit, { negative: true });
        // Rounding errors that count as a whole step: a millionth of a step.
        expect(down.ok && down.mm).toBeLessThanOrEqual(mm + 1e-5);
        expect(up.ok && up.mm).toBeGreaterThanOrEqual(mm - 1e-5);
      }),
    );
  });
});

describe('formatArea(areaMm2, unit)', () => {
  it.each<[number, LengthUnit, string]>([
    [2000 * 92903.04, 'feet-inches', '2000 sq ft'],
    [42.5 * 92903.04, 'feet-inches', '42.5 sq ft'],
    [99.96 * 92903.04, 'feet-inches', '100 sq ft'],
    [12 * 92903.04, 'feet-inches', '12 sq ft'],
    [0, 'feet-inches', '0 sq ft'],
    [19_974_000, 'metric', '19.97 m²'],
    [0, 'metric', '0.00 m²'],
  ])('%d mm², %s: %s', (area, unit, words) => {
    expect(formatArea(area, unit)).toBe(words);
  });

  it('throws on an area below zero', () => {
    expect(() => formatArea(-1, 'metric')).toThrow('an area is 0 or more, got -1');
  });
});
