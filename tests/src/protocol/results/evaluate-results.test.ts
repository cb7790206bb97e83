import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { ACTION_LEVELS, levelInPicocuries, reaches } from '../../../../src/protocol/results/action-levels.ts';
import { describeLocation } from '../../../../src/protocol/results/describe-location.ts';
import { evaluateResults } from '../../../../src/protocol/results/evaluate-results.ts';
import {
  asNumber,
  atLeast,
  compare,
  decimalText,
  exact,
  exactOf,
  meanOf,
  rounded,
} from '../../../../src/protocol/results/exact.ts';
import { NEXT_STEP_SOURCES } from '../../../../src/protocol/results/next-step-sources.ts';
import {
  bandOf,
  coefficientOfVariation,
  PRECISION_BANDS,
  precisionOf,
  relativePercentDifference,
} from '../../../../src/protocol/results/precision.ts';
import { inBecquerels, inPicocuries, radonText } from '../../../../src/protocol/results/radon.ts';
import { evaluated, failing, HOLDS, planWith, purpose } from '../../../helpers/results.ts';

describe('exact fractions', () => {
  it('read a number as it is written', () => {
    expect(exactOf(3.95)).toEqual({ numerator: 79n, denominator: 20n });
    expect(exactOf(1e21)).toEqual({ numerator: 10n ** 21n, denominator: 1n });
    expect(exactOf(2.5e-7)).toEqual({ numerator: 1n, denominator: 4_000_000n });
    expect(exactOf(0)).toEqual({ numerator: 0n, denominator: 1n });
  });

  it('come back as the number that they were read from, and keep its order', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -1e9, max: 1e9, noNaN: true }),
        fc.double({ min: -1e9, max: 1e9, noNaN: true }),
        (a, b) => {
          // Below a billionth of a billionth the digits that are asked for run out.
          fc.pre(Math.abs(a) > 1e-15 && Math.abs(b) > 1e-15);
          expect(asNumber(exactOf(a))).toBe(a);
          expect(compare(exactOf(a), exactOf(b))).toBe(Math.sign(a - b) || 0);
        },
      ),
    );
  });

  // ANSI/AARST MAH-2019, 8.5.2(b), and MALB-2014, 8.1.1: one decimal, a second decimal of 5 or more rounds up.
  it.each([
    [3.95, '4.0'],
    [3.949999, '3.9'],
    [3.2, '3.2'],
    [0.05, '0.1'],
    [0.049, '0.0'],
    [7.25, '7.3'],
    [1.005, '1.0'],
  ])('%d reads %s with one decimal', (value, text) => {
    expect(decimalText(exactOf(value), 1)).toBe(text);
  });

  it('(3.9 + 4.0) / 2 is 3.95 and reads 4.0, and 3.85 reads 3.9: not so in binary fractions', () => {
    expect(decimalText(meanOf([exactOf(3.9), exactOf(4)]), 1)).toBe('4.0');
    expect(decimalText(meanOf([exactOf(3.8), exactOf(3.9)]), 1)).toBe('3.9');
    expect(((3.8 + 3.9) / 2).toFixed(1)).toBe('3.8'); // the traps that the exact way does not step into
    expect((1.005).toFixed(2)).toBe('1.00');
    expect(decimalText(exactOf(1.005), 2)).toBe('1.01');
  });
});

describe('pCi/L and Bq/m3', () => {
  // 1 pCi/L = 37 Bq/m3, by definition of the curie; 4 pCi/L = 148, which AARST texts print as 150.
  it.each([
    [1, 37],
    [4, 148],
    [2.7, 99.9],
    [5.4, 199.8],
  ])('%d pCi/L is %d Bq/m3, exactly both ways', (picocuries, becquerels) => {
    expect(inBecquerels(exactOf(picocuries))).toEqual(exactOf(becquerels));
    expect(inPicocuries({ value: becquerels, unit: 'Bq/m3' })).toEqual(exactOf(picocuries));
  });

  // Published beside each other: WHO 100 = 2.7, Health Canada 200 = 5.4, as they are reported.
  it.each([
    [100, '2.7 pCi/L'],
    [200, '5.4 pCi/L'],
    [75, '2.0 pCi/L'],
    [300, '8.1 pCi/L'],
  ])('%d Bq/m3 reads %s', (becquerels, text) => {
    expect(radonText(inPicocuries({ value: becquerels, unit: 'Bq/m3' }), 'pCi/L')).toBe(text);
  });

  it('148 Bq/m3 is the action level and 147.9 is not; the printed 150 is 4.05, which reads 4.1', () => {
    const us = ACTION_LEVELS.find(({ id }) => id === 'us');
    if (!us) throw new Error('no US level');
    expect(reaches(inPicocuries({ value: 148, unit: 'Bq/m3' }), us)).toBe(true);
    expect(reaches(inPicocuries({ value: 147.9, unit: 'Bq/m3' }), us)).toBe(false);
    expect(radonText(inPicocuries({ value: 150, unit: 'Bq/m3' }), 'pCi/L')).toBe('4.1 pCi/L');
    expect(radonText(exactOf(4), 'Bq/m3')).toBe('148 Bq/m³');
  });

  // WHO 2009 (from memory), Directive 2013/59/Euratom Art. 74, Health Canada, Eur Respir J 2017;50:1701609.
  it.each([
    ['who', 100],
    ['eu', 300],
    ['canada', 200],
    ['uk', 200],
    ['uk-target', 100],
    ['ireland', 200],
    ['us', 148],
    ['us-consider', 74],
  ])('the level of %s is %d Bq/m3', (id, becquerels) => {
    const level = ACTION_LEVELS.find((each) => each.id === id);
    expect(level && inBecquerels(levelInPicocuries(level))).toEqual(exactOf(becquerels));
  });
});

describe('the worked examples', () => {
  // Environmental glossary, table derived from EPA: duplicates with relative percent difference and coefficient of variation.
  it.each([
    [8, 9, 12, 8, 'in-control'],
    [13, 15, 14, 10, 'in-control'],
    [17, 20, 16, 11, 'in-control'],
    [26, 30, 14, 10, 'in-control'],
    [7.5, 10, 29, 20, 'warning'],
  ] as const)('%d and %d differ by %d %%, vary by %d %%: %s', (a, b, rpd, cov, status) => {
    const percent = relativePercentDifference(exactOf(a), exactOf(b));
    expect(percent && Math.round(asNumber(percent))).toBe(rpd);
    expect(Math.round(coefficientOfVariation(exactOf(a), exactOf(b)) ?? 0)).toBe(cov);
    expect(evaluated([a, b]).pairStatus).toBe(status);
  });

  // The same pairs worked out to two decimals.
  it.each([
    [8, 9, 11.76, 8.32],
    [13, 15, 14.29, 10.1],
    [17, 20, 16.22, 11.47],
    [26, 30, 14.29, 10.1],
    [7.5, 10, 28.57, 20.2],
  ])('%d and %d: %d %%, %d %%', (a, b, rpd, cov) => {
    const percent = relativePercentDifference(exactOf(a), exactOf(b));
    expect(percent && decimalText(percent, 2)).toBe(rpd.toFixed(2));
    expect(coefficientOfVariation(exactOf(a), exactOf(b))).toBeCloseTo(cov, 2);
  });

  it('3.9 and 4.3 (Minnesota, as told in the press, 2019): 9.8 %, average 4.1', () => {
    const { rpd, meanRounded, pairStatus, next } = evaluated([3.9, 4.3]);
    expect(rpd && decimalText(rpd, 1)).toBe('9.8');
    expect(meanRounded && decimalText(meanRounded, 1)).toBe('4.1');
    expect([pairStatus, next.id]).toEqual(['in-control', 'follow-up']);
  });

  it('2.0 and 48.7 (a forum, illustrative): straddle by far, test again', () => {
    expect(evaluated([2, 48.7])).toMatchObject({ pairStatus: 'straddles-by-two', next: { id: 'retest-straddles' } });
  });

  // Arithmetic on the published limits.
  it.each([
    [3, 6, 'straddles-by-two', '4.5', '66.7'],
    [3.9, 4, 'in-control', '4.0', '2.5'],
    [2.9, 5.9, 'straddles-by-two', '4.4', '68.2'],
    [4, 5.76, 'out-of-control', '4.9', '36.1'],
    [1, 2.1, 'warning', '1.6', '71.0'],
  ])('%d and %d: %s, %s on average, %s %% apart', (a, b, status, mean, rpd) => {
    const report = evaluated([a, b]);
    expect(report.pairStatus).toBe(status);
    expect(report.meanRounded && decimalText(report.meanRounded, 1)).toBe(mean);
    expect(report.rpd && decimalText(report.rpd, 1)).toBe(rpd);
  });

  it('at exactly twice the lower the strict reading tests again and the other is named; above there is no dispute', () => {
    expect(evaluated([3, 6]).straddleDisputed).toBe(true);
    expect(NEXT_STEP_SOURCES[evaluated([3, 6]).next.id].conflict).toContain('more than twice');
    expect(evaluated([2.9, 5.9]).straddleDisputed).toBe(false);
    expect(evaluated([3, 5.999]).pairStatus).not.toBe('straddles-by-two');
  });

  it('a pair with both results at 4 or above is fixed on its average, out of control or not', () => {
    expect(evaluated([4, 5.76], purpose('property-transfer')).next.id).toBe('fix-sale');
  });
});

/** The pair about a mean with a given relative percent difference, in exact fractions. */
function pairOf(mean: number, percent: number) {
  const half = exact(BigInt(Math.round(percent * 1000)), 200_000n);
  const m = exactOf(mean);
  const shift = exact(m.numerator * half.numerator, m.denominator * half.denominator);
  const at = (sign: bigint) =>
    exact(m.numerator * shift.denominator + sign * shift.numerator * m.denominator, m.denominator * shift.denominator);
  return [at(-1n), at(1n)] as const;
}

describe('the limits of precision, on both sides of each', () => {
  // MS-QA-2019, 3.5.1-3.5.2 and Table 7.1; N.J.A.C. 7:28-27.10(c)1; EPA 402-R-92-003, App. B (from memory).
  it('are the published ones, with what a process in control shows', () => {
    const rows = PRECISION_BANDS.map(({ from, of, typical, warning, control }) => [
      from,
      of,
      typical,
      warning,
      control,
    ]);
    expect(rows).toEqual([
      [4, 'percent', 14, 28, 36],
      [2, 'percent', 25, 50, 67],
      [0, 'difference', null, 1, null],
    ]);
  });

  // Worked out: the ratio of two results whose relative percent difference is so large.
  it.each([
    [28, 1.326],
    [36, 1.439],
    [50, 1.667],
    [67, 2.0075],
  ])('%d %% is a ratio of %d', (percent, ratio) => {
    const [low, high] = pairOf(6, percent);
    expect(asNumber(high) / asNumber(low)).toBeCloseTo(ratio, 3);
  });

  // MS-QA-2019, 3.5.1-3.5.2 and Table 7.1 ("at or above"); N.J.A.C. 7:28-27.10(c)1 ("above").
  it.each([
    [6, 27.999, 'in-control', null],
    [6, 28, 'warning', 'in-control'],
    [6, 28.001, 'warning', null],
    [6, 35.999, 'warning', null],
    [6, 36, 'out-of-control', 'warning'],
    [6, 36.001, 'out-of-control', null],
    [3, 49.999, 'in-control', null],
    [3, 50, 'warning', 'in-control'],
    [3, 66.999, 'warning', null],
    [3, 67, 'out-of-control', 'warning'],
    [3, 67.001, 'out-of-control', null],
  ] as const)('mean %d, %d %%: %s (other reading: %s)', (mean, percent, status, otherReading) => {
    expect(precisionOf(...pairOf(mean, percent))).toMatchObject({ status, otherReading });
  });

  // MS-QA-2019, Table 7.1, and N.J.A.C. 7:28-27.10(c)1: below 2.0 a difference of more than 1 pCi/L.
  it.each([
    [0.5, 1.5, 'in-control'],
    [0.5, 1.501, 'warning'],
    [0, 1, 'in-control'],
    [0, 0, 'in-control'],
  ])('%d and %d: %s', (a, b, status) => {
    expect(precisionOf(exactOf(a), exactOf(b)).status).toBe(status);
  });

  it('the band goes by the mean as it is reported: 3.95 and 1.95 belong to the band above, 3.94 and 1.94 below', () => {
    expect([3.95, 3.94, 1.95, 1.94].map((mean) => bandOf(exactOf(mean)).from)).toEqual([4, 2, 2, 0]);
  });
});

describe('the next step', () => {
  // EPA 402/K-12/002 and 402-R-92-003 as told by others, 32 IAC 422 App. B, MAH-2019 7.1: the table of next steps.
  it.each([
    ['own-household', 1.9, 'retest-later'],
    ['own-household', 1.94, 'retest-later'],
    ['own-household', 1.95, 'consider-fixing'],
    ['own-household', 3.9, 'consider-fixing'],
    ['own-household', 3.95, 'follow-up'],
    ['own-household', 4, 'follow-up'],
    ['own-household', 7.9, 'follow-up'],
    ['own-household', 7.95, 'second-test-now'],
    ['own-household', 8, 'second-test-now'],
    ['own-household', 10, 'second-test-now'],
    ['property-transfer', 1.9, 'retest-later-sale'],
    // Between 2 and 4 consider fixing: ANSI/AARST MAH-2019, 7.1, which makes no difference for a sale.
    ['property-transfer', 2, 'consider-fixing-sale'],
    ['property-transfer', 3.9, 'consider-fixing-sale'],
    ['property-transfer', 4, 'fix-sale'],
    ['after-mitigation', 3.9, 'retest-mitigated'],
    ['after-mitigation', 4, 'call-mitigator'],
  ] as const)('%s, %d pCi/L: %s', (of, value, id) => {
    expect(evaluated([value], purpose(of)).next.id).toBe(id);
  });

  it('after an earlier short-term test goes by the average of the two, rounded half up', () => {
    const earlier = (value: number) => ({
      earlier: [{ at: null, value, unit: 'pCi/L', term: 'short-term', note: '' }] as const,
    });
    expect(evaluated([3.1], earlier(4.8)).next.id).toBe('fix'); // 3.95
    expect(evaluated([3.1], earlier(4.7)).next.id).toBe('below-after-two'); // 3.9
    expect(
      evaluated([3.1], { earlier: [{ at: null, value: 9, unit: 'pCi/L', term: 'long-term', note: '' }] }).withEarlier,
    ).toBeNull();
  });

  it('names the sources of every step, but for what only the report of the laboratory can tell', () => {
    for (const value of [1, 3, 5, 9])
      expect(NEXT_STEP_SOURCES[evaluated([value]).next.id].sources.length).toBeGreaterThan(0);
  });

  it('of a test that does not hold is to keep the record and test again', () => {
    expect(evaluated([9, 9.1], {}, failing('not-evaluated')).next.id).toBe('not-evaluated');
    const unknown = evaluated([9, 9.1], {}, failing('unknown')).next;
    expect(unknown.id).toBe('unknown');
    expect(unknown.text).toContain('The cause. Correct this under Time.');
  });

  it('of a pair with one result is to wait, and of two results for one detector to find out which counts', () => {
    const plan = planWith([3, 3]);
    const [one] = evaluateResults({ ...plan, readings: plan.readings.slice(0, 1) }, HOLDS);
    expect(one).toMatchObject({ pairStatus: 'single', next: { id: 'wait-for-results' } });
    const [twice] = evaluateResults(
      { ...plan, readings: [...plan.readings, { detector: 'd1', value: 8, unit: 'pCi/L' }] },
      HOLDS,
    );
    expect(twice).toMatchObject({ mean: null, next: { id: 'undecided' } });
  });
});

describe('what is said of a set', () => {
  const said = (values: readonly number[]) => {
    const plan = planWith(values);
    const [report] = evaluateResults(plan, HOLDS);
    return report ? describeLocation(plan, report).join(' ') : '';
  };

  it('gives no average where it must not be used, and the other reading only at exactly twice', () => {
    expect(said([2.9, 5.9])).not.toContain('Average');
    expect(said([2.9, 5.9])).not.toContain('Texts differ');
    expect(said([3, 6])).not.toContain('Average');
    expect(said([3, 6])).toContain('Texts differ: At exactly twice');
    expect(said([3.9, 4])).toContain('Average: 3.95 pCi/L, reported as 4.0 pCi/L (146 Bq/m³).');
  });
});

describe('separate locations', () => {
  // ANSI/AARST MALB-2014 with 1/21 revisions, 8.1.2(a): 8 in from outer surface to outer surface; MAH-2019, 8.5.2(d).
  it('are never averaged: 8 in rim to rim is one location, a hair more is two', () => {
    expect(evaluateResults(planWith([3, 9], {}, 203.2), HOLDS)).toHaveLength(1);
    const apart = evaluateResults(planWith([3, 9], {}, 203.4), HOLDS);
    expect(apart.map(({ pairStatus, mean, set }) => [pairStatus, mean && asNumber(mean), set.apart])).toEqual([
      ['single', 3, true],
      ['single', 9, true],
    ]);
  });

  // The same clauses: from surface to surface, so one above the other too. Our own pairs stand within 4 in (102 mm) of one height.
  it.each([
    [152.4, 102, 1],
    [203.2, 102, 1],
    [0, 228.6, 1],
    [152.4, 159, 1],
    [152.4, 161, 2],
    [0, 229, 2],
    [152.4, 600, 2],
  ])('%d mm apart in plan and %d mm in height: %d', (gap, rise, count) => {
    const plan = planWith([3, 9], {}, gap);
    const levels = plan.levels.map((level) => ({
      ...level,
      detectors: level.detectors.map((one, i) => ({ ...one, base: one.base + i * rise })),
    }));
    expect(evaluateResults({ ...plan, levels }, HOLDS)).toHaveLength(count);
  });

  it('on two levels are two, whatever their mark', () => {
    const plan = planWith([3, 9]);
    const [level] = plan.levels;
    if (!level) throw new Error('no level');
    const levels = level.detectors.map((one, i) => ({ ...level, id: `L${i}`, detectors: [one] }));
    expect(evaluateResults({ ...plan, levels }, HOLDS)).toHaveLength(2);
  });
});

describe('a pair, whatever its results', () => {
  const value = fc.integer({ min: 0, max: 400 }).map((tenths) => tenths / 10);
  it('has the mean and difference of its integers of tenths, is evaluated alike in either order and in either unit', () => {
    fc.assert(
      fc.property(value, value, (a, b) => {
        const [one, other] = [evaluated([a, b]), evaluated([b, a])];
        expect(one.pairStatus).toBe(other.pairStatus);
        const [i, j] = [Math.round(a * 10), Math.round(b * 10)];
        // In integers: the mean in twentieths, rounded half up at tenths.
        expect(one.meanRounded && asNumber(one.meanRounded)).toBe(Math.floor((i + j + 1) / 2) / 10);
        expect(one.rpd && asNumber(one.rpd)).toBeCloseTo(i + j === 0 ? 0 : (200 * Math.abs(i - j)) / (i + j), 9);
        const straddles = Math.min(i, j) < 40 && Math.max(i, j) >= 40 && Math.max(i, j) >= 2 * Math.min(i, j);
        expect(one.pairStatus === 'straddles-by-two').toBe(straddles);
        const plan = planWith([a, b]);
        const readings = plan.readings.map((reading) => ({
          ...reading,
          value: Math.round(reading.value * 370) / 10,
          unit: 'Bq/m3' as const,
        }));
        const [inOther] = evaluateResults({ ...plan, readings }, HOLDS);
        expect(inOther?.mean).toEqual(one.mean);
        expect(atLeast(rounded(exactOf(1.25), 1), exactOf(1.3))).toBe(true);
      }),
    );
  });
});
