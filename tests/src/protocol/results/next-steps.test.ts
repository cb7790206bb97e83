import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import type { EarlierResult, Reading } from '../../../../geometry/plan/test-record.ts';
import { emptyPlan } from '../../../../geometry/planfile/empty.ts';
import { CONDITION_ITEMS } from '../../../../src/protocol/conditions/conditions-report.ts';
import { describeLocation } from '../../../../src/protocol/results/describe-location.ts';
import { earlierDateProblem } from '../../../../src/protocol/results/earlier-results.ts';
import { withoutReading, withReading } from '../../../../src/protocol/results/edit-readings.ts';
import { evaluateResults } from '../../../../src/protocol/results/evaluate-results.ts';
import { decimalText } from '../../../../src/protocol/results/exact.ts';
import { NEXT_STEP_SOURCES } from '../../../../src/protocol/results/next-step-sources.ts';
import { NEXT_STEPS } from '../../../../src/protocol/results/next-steps.ts';
import { enteredText, otherUnitText } from '../../../../src/protocol/results/radon.ts';
import { parseRadon } from '../../../../src/protocol/results/radon-input.ts';
import { visitIssues } from '../../../../src/protocol/validity/test-state.ts';
import { testStateFrom } from '../../../../src/protocol/validity/validity.ts';
import { evaluated, failing, HOLDS, planWith, purpose, visitValidity } from '../../../helpers/results.ts';

const earlier = (value: number, change: Partial<EarlierResult> = {}): EarlierResult => ({
  at: null,
  value,
  unit: 'pCi/L',
  term: 'short-term',
  note: '',
  ...change,
});
const said = (plan: Plan) => {
  const [report] = evaluateResults(plan, HOLDS);
  return report ? describeLocation(plan, report).join(' ') : '';
};

describe('a pair, case by case', () => {
  // EPA 402-R-92-003, 3.2.2 (second-hand); ANSI/AARST MAH-2019, 7.2, and MW-RN-2020, 8.5; 32 IAC 422.130(c)(3).
  it.each([
    ['both at 4 or above', 4, 5, 'in-control', '4.5', 'fix-sale', 'follow-up'],
    ['both below', 3, 3.9, 'in-control', '3.5', 'consider-fixing-sale', 'consider-fixing'],
    ['one of each, 4 on average', 3.9, 4.1, 'in-control', '4.0', 'fix-sale', 'follow-up'],
    ['one of each, below 4 on average', 2.2, 4.2, 'warning', '3.2', 'consider-fixing-sale', 'consider-fixing'],
    ['one of each, just under twice', 3, 5.9, 'out-of-control', '4.5', 'fix-sale', 'follow-up'],
    ['one of each, exactly twice', 3, 6, 'straddles-by-two', '4.5', 'retest-straddles', 'retest-straddles'],
    ['one of each, more than twice', 2.9, 5.9, 'straddles-by-two', '4.4', 'retest-straddles', 'retest-straddles'],
    ['both below and out of control', 1.5, 3.2, 'out-of-control', '2.4', 'retest-spread', 'retest-spread'],
  ])('%s: %d and %d', (_, a, b, status, mean, sale, home) => {
    const report = evaluated([a, b], purpose('property-transfer'));
    expect(report.pairStatus).toBe(status);
    expect(report.meanRounded && decimalText(report.meanRounded, 1)).toBe(mean);
    expect(report.next.id).toBe(sale);
    expect(evaluated([a, b]).next.id).toBe(home);
  });

  // ANSI/AARST MAH-2019, 7.2.2, exception.
  it('that straddles needs no new test where the cause is proven or the owner decides to fix', () => {
    expect(evaluated([2.9, 5.9]).next.text).toMatch(/cause is proven.*decides to fix/);
  });
});

describe('a set of three', () => {
  // ANSI/AARST MS-QA-2019, 3.5: the band goes by the average of the set. 3.0, 4.6 and 4.6 have 4.1, their extremes 3.8.
  it('is evaluated in the band of its own mean', () => {
    const [report] = evaluateResults(planWith([3, 4.6, 4.6], {}, 40), HOLDS);
    expect(report?.precision?.band.from).toBe(4);
    expect(report?.pairStatus).toBe('out-of-control'); // 42 %, beyond 36; in the band below it would be in control
  });
});

describe('an average in both units', () => {
  it('comes from one exact mean: 140.6 and 159.1 Bq/m³ have 149.85', () => {
    const plan = planWith([140.6, 159.1]);
    const readings = plan.readings.map((each) => ({ ...each, unit: 'Bq/m3' as const }));
    expect(said({ ...plan, readings })).toContain('Average: 4.05 pCi/L, reported as 4.1 pCi/L (150 Bq/m³).');
  });
});

describe('a home with a mitigation system', () => {
  // ANSI/AARST MAH-2019, 8.5.9.2: every 2 years, not every 5.
  it('is tested again every 2 years, whatever the purpose', () => {
    const system = { visit: { ...emptyPlan().visit, mitigationOnSince: '2025-01-01T00:00:00Z' } };
    expect(evaluated([1, 1.1], system).next.text).toContain('at least every 2 years');
    expect(evaluated([1, 1.1]).next.text).toContain('at least every 5 years');
  });
});

describe('a result below 2', () => {
  // ANSI/AARST MAH-2019, 7.1.
  it.each(['own-household', 'property-transfer'] as const)('%s: says what a short test cannot tell', (of) => {
    expect(evaluated([1, 1.1], purpose(of)).next.text).toMatch(/a short test cannot tell how low/i);
  });
});

describe('what comes next, in words', () => {
  // ANSI/AARST MAH-2019, 8.5.9.2: every 5 years, every 2 where mitigated; 422 App. B: 2 years after a sale.
  it.each([
    ['retest-later', 'at least every 5 years'],
    ['retest-mitigated', 'at least every 2 years'],
    ['retest-later-sale', 'within 2 years'],
    ['fix', '24 hours'],
    ['call-mitigator', '24 hours'],
  ] as const)('%s says %s', (id, words) => {
    expect(NEXT_STEPS[id].text).toContain(words);
  });

  it.each([
    // The 1993 EPA text and the 2005 Illinois rules: 10; the guide: more than twice 4.
    ['second-test-now', '10 pCi/L'],
    ['consider-fixing', 'test again sometime'],
    ['retest-later', '2 to 5 years'],
    ['retest-later-sale', '5 years'],
    ['retest-spread', 'still uses the average'],
    // EPA Citizen's Guide: of two short-term tests with an average of 4.1, about half are below 4 over the year.
    ['fix', '4.1'],
  ] as const)('%s names the text that says otherwise: %s', (id, words) => {
    expect(NEXT_STEP_SOURCES[id].conflict).toContain(words);
  });
});

describe('what was entered', () => {
  it.each([
    [3.95, 'pCi/L', '3.95 pCi/L', '146.15 Bq/m³'],
    [4, 'pCi/L', '4 pCi/L', '148 Bq/m³'],
    [0.3, 'pCi/L', '0.3 pCi/L', '11.1 Bq/m³'],
    [148, 'Bq/m3', '148 Bq/m³', '4 pCi/L'],
    [150, 'Bq/m3', '150 Bq/m³', 'about 4.05 pCi/L'],
    [0, 'Bq/m3', '0 Bq/m³', '0 pCi/L'],
    [100, 'pCi/L', '100 pCi/L', '3700 Bq/m³'],
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
    expect(said({ ...plan, readings })).toContain('Results: 150 Bq/m³ (about 4.05 pCi/L) and 4 pCi/L (148 Bq/m³).');
  });

  it('gives its average with as many decimals as it takes to round it to what is reported', () => {
    const plan = planWith([0.4, 0]);
    const [first] = plan.readings;
    const readings: readonly Reading[] = [...(first ? [first] : []), { detector: 'd2', value: 33, unit: 'Bq/m3' }];
    // (0.4 + 33 / 37) / 2 = 0.6459...: "0.65" would be rounded to 0.7.
    expect(said({ ...plan, readings })).toContain('Average: 0.646 pCi/L, reported as 0.6 pCi/L');
    expect(said(planWith([3.9, 4]))).toContain('Average: 3.95 pCi/L, reported as 4.0 pCi/L');
  });

  it('is put in the place of all results of its detector, and taken away', () => {
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

describe('a result below the limit of the laboratory', () => {
  const below = (values: readonly number[], which: readonly number[]) => {
    const plan = planWith(values);
    return {
      ...plan,
      readings: plan.readings.map((each, i) => (which.includes(i) ? { ...each, belowLimit: true } : each)),
    };
  };
  const report = (plan: Plan) => evaluateResults(plan, HOLDS)[0];

  it('counts as the limit, and the mean is told as the most that it can be', () => {
    const plan = below([0.4, 0.9], [0]);
    expect(report(plan)).toMatchObject({ atMost: true, pairStatus: 'in-control', next: { id: 'retest-later' } });
    expect(said(plan)).toContain('below 0.4 pCi/L');
    expect(said(plan)).toContain('Average: at most 0.65 pCi/L, reported as at most 0.7');
  });

  // ANSI/AARST MS-QA-2019, Table 7.1: within 1 pCi/L, or both below the detection limit.
  it('agrees with another one, whatever the limits', () => {
    expect(report(below([0.4, 1.9], [0, 1]))?.pairStatus).toBe('in-control');
    expect(report(below([0.4, 1.9], [0]))?.pairStatus).toBe('warning');
  });

  it('beside one at 4 or above is a straddle, for it may be nothing at all', () => {
    expect(report(below([3, 4], [0]))?.pairStatus).toBe('straddles-by-two');
    expect(report(below([3, 4], []))?.pairStatus).not.toBe('straddles-by-two');
  });
});

describe('for somebody who reads in Bq/m³', () => {
  const metric = (values: readonly number[]) =>
    said(planWith(values, { display: { length: 'metric', radon: 'Bq/m3' } }));

  // 1 pCi/L is 37 Bq/m3.
  it('every limit has both, what was published in brackets', () => {
    expect(metric([2.9, 5.9])).toContain('one result is at 148 Bq/m³ (4 pCi/L) or above');
    expect(metric([3, 3.1])).toContain('For an average from 74 Bq/m³ (2.0 pCi/L) to below 148 Bq/m³ (4.0 pCi/L)');
    expect(metric([9, 9])).toContain('set it at 370 Bq/m³ (10 pCi/L)');
    expect(metric([3.9, 4])).toContain('Average: 3.95 pCi/L, reported as 146 Bq/m³ (4.0 pCi/L).');
  });
});

describe('an earlier test', () => {
  // ANSI/AARST MALB-2014 with 1/21 revisions, 8.1.2(b): an initial short-term test and its follow-up are averaged.
  it('of the same place is averaged with this one', () => {
    const report = evaluated([3.1], { earlier: [earlier(4.8, { detector: 'd1' })] });
    expect(report.withEarlier && decimalText(report.withEarlier, 1)).toBe('4.0');
    expect(report.next.id).toBe('fix');
    expect(said(planWith([3.1], { earlier: [earlier(4.8, { detector: 'd1' })] }))).toContain(
      'With it: 4.0 pCi/L on average.',
    );
  });

  // ANSI/AARST MAH-2019, 8.5.2(d): separate locations are never averaged.
  it('of another place is averaged with none, and so is one that does not say where it was, on a plan of two places', () => {
    const apart = (results: readonly EarlierResult[]) =>
      evaluateResults(planWith([3.1, 3.1], { earlier: results }, 2000), HOLDS).map(
        ({ withEarlier }) => withEarlier && decimalText(withEarlier, 1),
      );
    expect(apart([earlier(4.9, { detector: 'd2' })])).toEqual([null, '4.0']);
    expect(apart([earlier(4.9)])).toEqual([null, null]);
    expect(apart([earlier(4.9, { detector: null })])).toEqual([null, null]);
    expect(said(planWith([3.1, 3.1], { earlier: [earlier(4.9)] }, 2000))).toContain('it counts for none');
  });

  it('is not averaged with a pair that must not be averaged, or that waits for its other result', () => {
    const before = [earlier(4.8, { detector: 'd1' })];
    expect(evaluated([2.9, 5.9], { earlier: before })).toMatchObject({
      withEarlier: null,
      next: { id: 'retest-straddles' },
    });
    const plan = planWith([3, 3], { earlier: before });
    const [half] = evaluateResults({ ...plan, readings: plan.readings.slice(0, 1) }, HOLDS);
    expect(half).toMatchObject({ withEarlier: null, next: { id: 'wait-for-results' } });
  });

  it('of one place never changes what comes of another', () => {
    const value = fc.integer({ min: 0, max: 200 }).map((tenths) => tenths / 10);
    fc.assert(
      fc.property(value, value, value, fc.constantFrom('short-term', 'long-term'), (a, b, before, term) => {
        const alone = evaluateResults(planWith([a, b], {}, 2000), HOLDS);
        const result = [earlier(before, { detector: 'd2', term })];
        const [one] = evaluateResults(planWith([a, b], { earlier: result }, 2000), HOLDS);
        expect(one).toEqual(alone[0]);
      }),
    );
  });

  it('may name either detector of a pair', () => {
    for (const detector of ['d1', 'd2']) {
      expect(evaluated([3, 3.2], { earlier: [earlier(9, { detector })] }).withEarlier).not.toBeNull();
    }
  });

  it('counts with its highest result where there are several of one kind', () => {
    const report = evaluated([3.1], { earlier: [earlier(4.8), earlier(2)] });
    expect(report.next.id).toBe('fix');
    expect(
      said(planWith([3.1], { earlier: [earlier(2, { detector: 'd1' }), earlier(4.8, { detector: 'd1' })] })),
    ).toContain('the highest counts');
  });

  it('is never averaged in after mitigation: it measured the house as it was', () => {
    const before = { ...purpose('after-mitigation'), earlier: [earlier(1, { detector: 'd1' })] };
    expect(evaluated([5], before)).toMatchObject({ withEarlier: null, next: { id: 'call-mitigator' } });
    const high = { ...purpose('after-mitigation'), earlier: [earlier(20, { detector: 'd1' })] };
    expect(evaluated([3], high).next.id).toBe('retest-mitigated');
  });

  // EPA texts (second-hand) average two tests in a sale; 32 IAC 422 App. B goes by the simultaneous pair. The stricter decides.
  it.each([
    [3, 4.9, 'fix-sale-either'], // 3.95 on average
    [3, 4.8, 'consider-fixing-sale'], // 3.9
    [1, 3, 'consider-fixing-sale'], // 2.0: ANSI/AARST MAH-2019, 7.1
    [4, 1, 'fix-sale-either'], // 2.5 on average, and yet 4 by itself
    [5, 6, 'fix-sale'],
    [1, 1, 'retest-later-sale'],
  ])('in a sale, %d after %d: %s', (value, before, id) => {
    const plan = { ...purpose('property-transfer'), earlier: [earlier(before, { detector: 'd1' })] };
    expect(evaluated([value], plan).next.id).toBe(id);
  });

  // EPA Citizen's Guide and 402-R-92-003, second-hand: a long-term test of 4 or above is followed by fixing.
  it.each([
    ['own-household', 4, 'fix-long-term'],
    ['own-household', 3.95, 'fix-long-term'],
    ['own-household', 3.9, 'retest-later'],
    ['property-transfer', 4, 'fix-long-term'],
    ['after-mitigation', 4, 'retest-mitigated'],
  ] as const)('%s, long-term at %d and a short one at 1: %s', (of, value, id) => {
    const plan = { ...purpose(of), earlier: [earlier(value, { term: 'long-term', detector: 'd1' })] };
    expect(evaluated([1], plan)).toMatchObject({ withEarlier: null, next: { id } });
  });
});

describe('a test that does not hold', () => {
  const house = CONDITION_ITEMS.map(({ id }) => ({ item: id, state: 'kept' as const, at: null, note: '' }));
  const visit = {
    closedSince: '2026-05-01T08:00:00Z',
    mitigationOnSince: '2026-04-20T08:00:00Z',
    start: '2026-05-02T08:00:00Z',
    end: '2026-05-04T08:00:00Z',
  };
  const held = (change: Partial<Plan> = {}) => planWith([1, 1.1], { visit, conditions: house, ...change });

  it('has no reason while it holds', () => {
    expect(visitValidity(held())).toBe('holds');
    expect(visitIssues(held())).toEqual([]);
  });

  it('tells what broke it, time and house, and what is missing beside it', () => {
    const plan = held({
      visit: { ...visit, end: '2026-05-04T07:59:00Z', closedSince: null },
      conditions: house.map((each) => (each.item === 'doors-closed' ? { ...each, state: 'broken' } : each)),
    });
    const { validity, issues } = testStateFrom(visitIssues(plan));
    expect(validity).toBe('not-evaluated');
    expect(issues.map(({ stage, validity }) => [stage, validity])).toEqual([
      ['time', 'not-evaluated'],
      ['house', 'not-evaluated'],
      ['time', 'unknown'],
    ]);
    expect(issues[0]?.text).toContain('47 h 59 min');
    expect(issues[1]?.text).toMatch(/Broken: .*doors/i);
    expect(issues[2]?.text).toContain('Since when the house was closed is not written down.');
  });

  it('tells what is missing', () => {
    const plan = held({ visit: { ...visit, closedSince: null }, conditions: house.slice(1) });
    expect(visitValidity(plan)).toBe('unknown');
    expect(visitIssues(plan).map(({ stage }) => stage)).toEqual(['time', 'house']);
    expect(visitIssues(plan)[1]?.text).toBe('The house: 1 item not known yet.');
  });

  // What the laboratory asks of its kit decides; no published source gives days.
  it('is not known to hold where the laboratory had it too late', () => {
    const late = held({ visit: { ...visit, received: '2026-05-09T08:01:00Z' } });
    expect(visitValidity(late)).toBe('unknown');
    expect(visitIssues(late)[0]?.text).toContain('Ask whether it can still be counted');
    expect(visitValidity(held({ visit: { ...visit, received: '2026-05-09T08:00:00Z' } }))).toBe('holds');
  });

  // Either of the two may be the wrong one, so the time laid out is not known either.
  it.each([
    ['posted before the pick-up', { posted: '2026-05-04T07:59:00Z' }, 'Posted before the pick-up'],
    ['received before the pick-up', { received: '2026-05-03T20:00:00Z' }, 'At the laboratory before the pick-up'],
    [
      'received before it was posted',
      { posted: '2026-05-06T08:00:00Z', received: '2026-05-05T08:00:00Z' },
      'At the laboratory before it was posted',
    ],
  ])('is not known to hold where times contradict: %s', (_, times, says) => {
    const plan = held({ visit: { ...visit, ...times } });
    expect(visitValidity(plan)).toBe('unknown');
    expect(visitIssues(plan).map((reason) => reason.text)).toEqual([expect.stringContaining(says)]);
  });

  it('is told with its results alone: no average, no agreement, no earlier test', () => {
    const plan = planWith([9, 9.2], { earlier: [earlier(5)] });
    const [report] = evaluateResults(plan, failing('not-evaluated'));
    const words = report ? describeLocation(plan, report).join(' ') : '';
    expect(words).toContain('Results: 9 pCi/L');
    expect(words).not.toMatch(/Average|agree|Earlier|fix/i);
  });
});

describe('how far a pair is apart, in words', () => {
  it('names the range of its average and both limits', () => {
    expect(said(planWith([3.9, 4]))).toContain(
      'Relative percent difference: 2.5 %. For an average of 4.0 pCi/L or above: a warning from 28 %, out of control from 36 %, 14 % is usual.',
    );
    expect(said(planWith([3, 3.1]))).toContain('For an average from 2.0 pCi/L to below 4.0 pCi/L: a warning from 50 %');
    expect(said(planWith([1, 2.1]))).toContain(
      'Difference: 1.10 pCi/L; relative percent difference: 71.0 %. For an average below 2.0 pCi/L: a warning above 1.0 pCi/L.',
    );
  });

  it('names the other reading exactly on a limit', () => {
    // 1.6 of 3.2 is 50 %.
    expect(said(planWith([2.4, 4]))).toContain('read as "more than", it would be in control');
    expect(said(planWith([2.41, 4]))).not.toContain('read as');
  });
});

describe('the day of an earlier test', () => {
  const visit = { closedSince: null, mitigationOnSince: null, start: '2026-05-02T09:00:00-04:00', end: null };
  it.each([
    [null, ''],
    ['2026-05-02T08:59:00-04:00', ''],
    ['2026-05-02T09:00:00-04:00', 'That is after this test was set out. Look at the day again.'],
  ])('%j: "%s"', (at, doubt) => expect(earlierDateProblem({ ...emptyPlan(), visit }, { at })).toBe(doubt));
});
