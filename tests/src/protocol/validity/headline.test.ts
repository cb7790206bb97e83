import { describe, expect, it } from 'vitest';
import { readHints } from '../../../../src/advice/guidance/read.ts';
import { testHeadline } from '../../../../src/protocol/validity/headline.ts';
import { testState } from '../../../../src/protocol/validity/test-state.ts';
import { validTestPlan } from '../../../helpers/valid-test-plan.ts';

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
