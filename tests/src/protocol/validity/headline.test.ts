import { describe, expect, it } from 'vitest';
import type { Plan } from '../../../../geometry/plan/model.ts';
import { readHints } from '../../../../src/advice/guidance/read.ts';
import { describeIssues, testHeadline } from '../../../../src/protocol/validity/headline.ts';
import { testState } from '../../../../src/protocol/validity/test-state.ts';
import { GOOD_VISIT, validTestPlan } from '../../../helpers/valid-test-plan.ts';

describe('a test that is invalid', () => {
  const late = { ...GOOD_VISIT, closedSince: '2026-03-07T17:00:00-05:00' };
  const OPENED = { item: 'windows-closed', state: 'broken', at: '2026-03-08T09:00:00-04:00', note: '' } as const;
  const headOf = (plan: Plan) => {
    const state = testState(plan);
    expect(state.validity).toBe('not-evaluated');
    return { head: testHeadline(plan, state).head, all: describeIssues(plan, state).join(' ') };
  };

  it('is so as it stands before the pick-up: left for longer it may still be valid', () => {
    const before = headOf(validTestPlan([], { visit: { ...late, end: null }, conditions: [] }));
    expect(before.head).toBe('Invalid as it stands');
    expect(before.all).toMatch(/^As it stands this test is invalid\. .*or pick it up at/);
    expect(before.all).not.toMatch(/[Dd]o not use/);
  });

  it('is not to be used once it is picked up, or has a result', () => {
    for (const plan of [
      validTestPlan([1, 1.1], { visit: late }),
      validTestPlan([], { visit: late }),
      validTestPlan([1, 1.1], { visit: { ...late, end: null }, conditions: [] }),
      // A window that was open is no matter of waiting.
      validTestPlan([], { visit: { ...late, end: null }, conditions: [OPENED] }),
    ]) {
      expect(headOf(plan).head).toBe('Invalid, do not use');
      expect(headOf(plan).all).toContain('Do not use them.');
    }
  });
});

const saidOf = (values: readonly number[]) => {
  const plan = validTestPlan(values);
  const state = testState(plan);
  expect(state.validity).toBe('holds');
  return { ...testHeadline(plan, state), hints: readHints(plan, state) };
};

describe('a pair that is out of control', () => {
  it('is said to be so where the next step does not tell it', () => {
    // 4.0 and 5.8: 36.7 %, from 36 % out of control; the next step is that of any average of 4.9.
    const { tone, head, text, hints } = saidOf([4, 5.8]);
    expect(tone).toBe('blocked');
    expect(head).toBe('Valid, but the pair disagrees');
    expect(text).toMatch(
      /^A1 and A2, side by side: The two results are too far apart: out of control\. Find the cause before going on\. Follow up: /,
    );
    // In the line of the next step there is no room for both.
    expect(hints).toMatchObject([{ missing: true, text: text.slice(0, text.indexOf(' Follow up: ')) }]);
  });

  it.each([
    ['one at the action level or above, twice the other', [2, 5]],
    ['both below it, and far apart', [1.5, 3.2]],
  ])('calls for another test where that is the next step: %s', (_, values) => {
    const { head, text, hints } = saidOf(values);
    expect(head).toBe('Valid, and calls for another test');
    expect(text).toMatch(/[Tt]est again/);
    expect(hints).toMatchObject([{ missing: true, text }]);
  });

  it('says nothing of a pair that agrees', () => {
    expect(saidOf([4, 5]).head).toBe('Valid');
  });
});
