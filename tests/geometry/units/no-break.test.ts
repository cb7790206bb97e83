import { describe, expect, it } from 'vitest';
import { unbrokenFigures, unbrokenInstant } from '../../../geometry/units/no-break.ts';

/** Underscores stand for no-break spaces. */
const seen = (text: string) => text.replaceAll('\u00a0', '_');

describe('unbrokenFigures(text)', () => {
  it.each([
    ['needs 7 ft 10 1/2 in, not 4 in', 'needs 7_ft_10_1/2_in, not 4_in'],
    ['2.13 m of wall, 35 cm', '2.13_m of wall, 35_cm'],
    ['215 sq ft or 19.97 m²', '215_sq_ft or 19.97_m²'],
    ['4 pCi/L is 148 Bq/m³, 25 % more', '4_pCi/L is 148_Bq/m³, 25_% more'],
    ['3 rooms into 2 levels', '3 rooms into 2 levels'],
  ])('%s', (text, wanted) => {
    expect(seen(unbrokenFigures(text))).toBe(wanted);
  });
});

describe('unbrokenInstant(text)', () => {
  it.each([
    ['Saturday, March 7, 2026, 6:00 pm', 'Saturday, March_7, 2026, 6:00_pm'],
    ['Saturday 7 March 2026, 18:00', 'Saturday 7_March 2026, 18:00'],
  ])('keeps day and month of "%s" together, and the hour with its half of the day', (text, wanted) => {
    expect(seen(unbrokenInstant(text))).toBe(wanted);
  });
});
