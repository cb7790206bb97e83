import { describe, expect, it } from 'vitest';
import { checkDetector, checkPlan } from '../../../geometry/check/check-detector.ts';
import type { Check } from '../../../geometry/check/types.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, Plan } from '../../../geometry/plan/model.ts';
import { compareOpinions } from '../../../geometry/recheck/compare.ts';
import { recheck } from '../../../geometry/recheck/recheck.ts';
import { houseLevel, validTestPlan } from '../../helpers/valid-test-plan.ts';

const upper: Level = houseLevel('L2', 'B', { name: 'Main floor', order: 1, ground: 'none', living: 'lived-in' });
const lower = (change: Partial<Level> = {}) => houseLevel('L1', 'A', { living: 'no', ...change });

/** Returns the row of the rule `level` for the first detector of a level. */
function levelRow(plan: Plan, level: Level): Check | undefined {
  const [detector] = level.detectors;
  if (!detector) throw new Error('the level has no detector');
  return checkDetector(plan, buildLevel(level), detector).checks.find(({ rule }) => rule === 'level');
}
/** Returns whether the two computations agree on every detector. */
const agree = (plan: Plan): boolean =>
  compareOpinions(checkPlan(plan), recheck(plan), plan.tapeTolerance).every(({ detectors }) =>
    detectors.every(({ computed }) => computed.how === 'twice'),
  );
const planOf = (levels: readonly Level[], purposeAnswered?: boolean): Plan => {
  const plan = validTestPlan();
  return { ...plan, levels, site: { ...plan.site, ...(purposeAnswered === undefined ? {} : { purposeAnswered }) } };
};

describe('the level to test, while its choice rests on answers that nobody gave', () => {
  it('is clear where purpose and living were answered, or a file says them without more', () => {
    expect(levelRow(planOf([lower(), upper]), upper)).toMatchObject({ verdict: 'clear', notRun: false });
    expect(levelRow(planOf([lower(), upper], true), upper)).toMatchObject({ verdict: 'clear', notRun: false });
  });

  it('is not run while the purpose is not answered', () => {
    const row = levelRow(planOf([lower(), upper], false), upper);
    expect(row).toMatchObject({ verdict: 'unknown', notRun: true });
    expect(row?.reason).toBe('Not answered yet: why the house is tested.');
  });

  it('is not run while the living of this level or a lower one is not answered', () => {
    const open = lower({ livingAnswered: false });
    expect(levelRow(planOf([open, upper]), upper)?.reason).toBe('Not answered yet: whether people live on Basement.');
    expect(agree(planOf([open, upper]))).toBe(true);
    expect(agree(planOf([lower(), { ...upper, livingAnswered: false }]))).toBe(true);
  });

  it('does not wait for a level above', () => {
    const lived = lower({ living: 'lived-in' });
    const above = { ...upper, livingAnswered: false };
    expect(levelRow(planOf([lived, above]), lived)).toMatchObject({ verdict: 'clear', notRun: false });
  });

  it('is not run while what is under its floor is not answered, where each level on the ground is tested', () => {
    const each = (profile: string, levels: readonly Level[], level: Level) => {
      const plan: Plan = { ...planOf(levels), protocol: { profile, overrides: [] } };
      const [compared] = compareOpinions(checkPlan(plan), recheck(plan), plan.tapeTolerance).flatMap(
        ({ detectors }) => detectors,
      );
      expect(compared?.computed).toMatchObject({ how: 'twice' });
      return levelRow(plan, level);
    };
    for (const profile of ['pennsylvania-240-310', 'illinois-422-130', 'ohio-3701-69-07']) {
      const lived = lower({ living: 'lived-in' });
      expect(each(profile, [lived, upper], lived)).toMatchObject({ verdict: 'clear', notRun: false });
      const open = lower({ living: 'lived-in', groundAnswered: false });
      expect(each(profile, [open, upper], open)).toMatchObject({ verdict: 'unknown', notRun: true });
      expect(each(profile, [open, upper], open)?.reason).toBe('Not answered yet: what is under the floor of Basement.');
      // No level is known to touch the ground; the other one may.
      const high = { ...lived, ground: 'none' as const };
      const above = { ...upper, groundAnswered: false };
      expect(each(profile, [high, above], high)?.reason).toBe(
        'Not answered yet: what is under the floor of Main floor.',
      );
    }
    // Under other profiles the choice does not depend on it.
    const open = lower({ living: 'lived-in', groundAnswered: false });
    expect(each('home-short-term', [open, upper], open)).toMatchObject({ verdict: 'clear', notRun: false });
  });

  it('stays blocked where even what the plan begins with bars it: the cautious side', () => {
    const open = lower({ living: 'lived-in', livingAnswered: false });
    expect(levelRow(planOf([open, upper], false), upper)).toMatchObject({ verdict: 'blocked', notRun: false });
  });
});
