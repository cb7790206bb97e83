import { describe, expect, it } from 'vitest';
import { instantMs } from '../../../../geometry/planfile/instant.ts';
import { whyAnswersWait } from '../../../../src/protocol/conditions/early-answers.ts';
import { validTestPlan } from '../../../helpers/valid-test-plan.ts';

describe('the answers about the house at the pick-up', () => {
  const PICK_UP = '2026-03-10T09:00:00-04:00';
  const wordsAt = (end: string | null, now: string) =>
    whyAnswersWait({ ...validTestPlan(), visit: { ...validTestPlan().visit, end } }, instantMs(now) ?? 0);

  it('wait for it: one that is given before is asked again', () => {
    const words = 'Record the pick-up first: an answer from before it is asked again.';
    expect(wordsAt(null, PICK_UP)).toBe(words);
    expect(wordsAt(PICK_UP, '2026-03-10T08:59:00-04:00')).toBe(words);
    expect(wordsAt(PICK_UP, PICK_UP)).toBe('');
  });
});
