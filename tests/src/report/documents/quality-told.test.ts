import { describe, expect, it } from 'vitest';
import { houseLevel, validTestPlan } from '../../../helpers/valid-test-plan.ts';
import { words } from './job-plans.ts';

describe('the quality of the measurement, in the report', () => {
  it('compares the results of a pair', () => {
    expect(words('report', validTestPlan([3, 3.2]))).toContain(
      '1 collocated pair in this test: how the two results agree stands with the results.',
    );
  });

  it.each([[[]], [[3]]])('does not deny a pair that is placed, with the results %j', (values) => {
    const text = words('report', validTestPlan(values));
    expect(text).toContain('Side by side, pair A');
    expect(text).not.toContain('No collocated pair');
    expect(text).toContain('no two results of them to compare: nothing shows how well they agree.');
  });

  it('says that there is none where there is none', () => {
    const level = houseLevel();
    const single = { ...level, detectors: level.detectors.slice(0, 1).map((each) => ({ ...each, pair: null })) };
    expect(words('report', validTestPlan([3], { levels: [single] }))).toContain('No collocated pair in this test');
  });
});
