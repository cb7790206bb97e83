import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../geometry/plan/model.ts';
import { testState } from '../../../src/protocol/validity/test-state.ts';
import { plainResult } from '../../../src/quick-card/plain-result.ts';
import { validTestPlan } from '../../helpers/valid-test-plan.ts';

const resultOf = (plan: Plan) => plainResult(plan, testState(plan));

describe('plainResult(plan, state)', () => {
  it('is nothing without a result', () => {
    expect(resultOf(validTestPlan([], { readings: [] }))).toBeNull();
  });

  it('gives the step for the house where the test is valid', () => {
    const low = resultOf(validTestPlan([1, 1.1]));
    expect(low?.value).toMatch(/^Your results: 1\.0 pCi\/L and 1\.1 pCi\/L\. Average: 1\.1 pCi\/L/);
    // EPA Citizen's Guide, 2016: below 2 pCi/L nothing is asked for; from 4 pCi/L on fix or follow up.
    expect(low?.text).toContain('Test again');
    expect(low?.issues).toEqual([]);
    expect(resultOf(validTestPlan([9, 9.1]))?.text).toContain('second short-term test at once');
  });

  it('gives the average by which a pair is judged, and no average that must not be used', () => {
    expect(resultOf(validTestPlan([1, 2.5]))?.value).toBe(
      'Your results: 1.0 pCi/L and 2.5 pCi/L. Average: 1.8 pCi/L (65 Bq/m³).',
    );
    expect(resultOf(validTestPlan([3, 6.5]))?.value).toBe('Your results: 3.0 pCi/L and 6.5 pCi/L.');
    expect(resultOf(validTestPlan([1, 2.5], { conditions: [] }))?.value).toBe('Your results: 1.0 pCi/L and 2.5 pCi/L.');
  });

  it('says of two kits that differ that something went wrong with one of them', () => {
    // Below 2 pCi/L on average, and more than 1 pCi/L apart: N.J.A.C. 7:28-27.10(c)1.
    expect(resultOf(validTestPlan([1, 2.5]))?.text).toMatch(/^The two results are farther apart than they should be/);
    // 36.7 %: ANSI/AARST MS-QA-2019, 3.5.2.
    expect(resultOf(validTestPlan([4, 5.8]))?.text).toMatch(/^The two results are .*(apart)/);
    expect(resultOf(validTestPlan([4, 4.4]))?.text).not.toContain('apart');
  });

  it('lets no low result pass while something is not recorded', () => {
    const open = resultOf(validTestPlan([1, 1.1], { conditions: [] }));
    expect(open?.text).toBe('Whether it can be relied on is not known yet. Settle first what stands here.');
    expect(open?.issues.map(({ stage }) => stage)).toContain('house');
  });

  it('lets no high result be set aside while something is open, or because something went wrong', () => {
    const high = 'It reads 4 pCi/L or more: do not set it aside.';
    // 3.95 is reported as 4.0: ANSI/AARST MAH-2019, 8.5.2(b).
    expect(resultOf(validTestPlan([3, 3.95], { conditions: [] }))?.text).toBe(
      `Whether it can be relied on is not known yet. Settle first what stands here. ${high} Where it cannot be settled, test again soon.`,
    );
    expect(resultOf(validTestPlan([3, 3.94], { conditions: [] }))?.text).not.toContain(high);
    const plan = validTestPlan([5, 5.1]);
    const late = resultOf({ ...plan, visit: { ...plan.visit, end: '2026-03-20T09:00:00-04:00' } });
    expect(late?.text).toContain(`${high} Test again soon.`);
    const metric = validTestPlan([5, 5.1], { conditions: [] });
    const bq = resultOf({ ...metric, display: { ...metric.display, radon: 'Bq/m3' } });
    expect(bq?.text).toContain('It reads 148 Bq/m³ (4 pCi/L) or more');
  });

  it('does not count a result outside the hours of the kit', () => {
    const plan = validTestPlan([1, 1.1]);
    const late = resultOf({ ...plan, visit: { ...plan.visit, end: '2026-03-20T09:00:00-04:00' } });
    expect(late?.text).toMatch(/is invalid: do not use it/);
    expect(late?.issues.map(({ stage }) => stage)).toContain('time');
  });
});
