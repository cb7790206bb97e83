import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { Reading } from '../../../../geometry/plan/test-record.ts';
import { withoutReading, withReading } from '../../../../src/protocol/results/edit-readings.ts';
import { enteredText, otherUnitText } from '../../../../src/protocol/results/radon.ts';
import { isLikelySlip, parseRadon } from '../../../../src/protocol/results/radon-input.ts';
import { described } from '../../../helpers/described-results.ts';
import { planWith } from '../../../helpers/results.ts';

describe('what was entered', () => {
  it.each([
    [3.95, 'pCi/L', '3.95 pCi/L', '146.15 Bq/m³'],
    // At least one decimal, as pCi/L are reported: ANSI/AARST MAH-2019, 8.5.2(b).
    [4, 'pCi/L', '4.0 pCi/L', '148 Bq/m³'],
    [0.3, 'pCi/L', '0.3 pCi/L', '11.1 Bq/m³'],
    [148, 'Bq/m3', '148 Bq/m³', '4.0 pCi/L'],
    [150, 'Bq/m3', '150 Bq/m³', 'about 4.05 pCi/L'],
    [0, 'Bq/m3', '0 Bq/m³', '0.0 pCi/L'],
    [100, 'pCi/L', '100.0 pCi/L', '3700 Bq/m³'],
  ] as const)('%d %s is kept as %s and shown as %s', (value, unit, kept, other) => {
    expect(enteredText({ value, unit })).toBe(kept);
    expect(otherUnitText({ value, unit })).toBe(other);
  });

  it('stays in its unit in the sentences, beside the average in the unit of the plan', () => {
    const plan = planWith([3, 3]);
    const readings: readonly Reading[] = [
      { detector: 'd1', value: 150, unit: 'Bq/m3' },
      { detector: 'd2', value: 4, unit: 'pCi/L' },
    ];
    expect(described({ ...plan, readings })).toContain(
      'Results: 150 Bq/m³ (about 4.05 pCi/L) and 4.0 pCi/L (148 Bq/m³).',
    );
  });

  it('gives its average with as many decimals as it takes to round it to what is reported', () => {
    const plan = planWith([0.4, 0]);
    const [first] = plan.readings;
    const readings: readonly Reading[] = [...(first ? [first] : []), { detector: 'd2', value: 33, unit: 'Bq/m3' }];
    // (0.4 + 33 / 37) / 2 = 0.6459...: "0.65" would be rounded to 0.7.
    expect(described({ ...plan, readings })).toContain('Average: 0.646 pCi/L, reported as 0.6 pCi/L');
    expect(described(planWith([3.9, 4]))).toContain('Average: 3.95 pCi/L, reported as 4.0 pCi/L');
  });

  it('is put in the place of all results of its detector, and removed', () => {
    const plan = planWith([3, 4]);
    const twice: Plan = { ...plan, readings: [...plan.readings, { detector: 'd1', value: 8, unit: 'pCi/L' }] };
    const put = withReading(twice, { detector: 'd1', value: 5, unit: 'pCi/L' });
    expect(put.readings.map(({ detector, value }) => [detector, value])).toEqual([
      ['d1', 5],
      ['d2', 4],
    ]);
    expect(withoutReading(put, 'd1').readings.map(({ detector }) => detector)).toEqual(['d2']);
    expect(withReading(withoutReading(put, 'd1'), { detector: 'd1', value: 1, unit: 'pCi/L' }).readings).toHaveLength(
      2,
    );
  });
});

describe('a result far above what homes have', () => {
  it.each([
    [1000, 'pCi/L', false],
    [1000.1, 'pCi/L', true],
    [3400, 'pCi/L', true],
    [37_000, 'Bq/m3', false],
    [37_001, 'Bq/m3', true],
    [3.4, 'pCi/L', false],
  ] as const)('%d %s is likely a slip: %s', (value, unit, likely) => {
    expect(isLikelySlip({ value, unit })).toBe(likely);
  });
});

describe('what somebody writes', () => {
  it.each([
    ['3.9', 3.9, 'pCi/L', false],
    [' 3,9 ', 3.9, 'pCi/L', false],
    ['.5', 0.5, 'pCi/L', false],
    ['4.', 4, 'pCi/L', false],
    ['< 0.4', 0.4, 'pCi/L', true],
    ['<15 bq/m3', 15, 'Bq/m3', true],
    ['150 Bq/m³', 150, 'Bq/m3', false],
    ['150Bq/m^3', 150, 'Bq/m3', false],
    ['0', 0, 'pCi/L', false],
  ])('"%s" is %d %s, below the limit: %s', (text, value, unit, belowLimit) => {
    expect(parseRadon(text, 'pCi/L')).toEqual({ ok: true, entered: { value, unit, belowLimit } });
  });

  it('is in the unit of the field unless it names one', () => {
    expect(parseRadon('150', 'Bq/m3')).toMatchObject({ entered: { unit: 'Bq/m3' } });
    expect(parseRadon('4 pCi/L', 'Bq/m3')).toMatchObject({ entered: { unit: 'pCi/L' } });
    expect(parseRadon('  ', 'Bq/m3')).toEqual({ ok: true, entered: null });
  });

  it.each(['-1', 'four', '3.9.1', '> 100', '1,234', '1,234.5', '1,234 Bq/m3', '4 WL', '1e3', '2000000'])(
    '"%s" is refused',
    (text) => {
      expect(parseRadon(text, 'pCi/L').ok).toBe(false);
    },
  );
});
