import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import {
  describeOpenRules,
  headlineText,
  openRules,
  TONES,
  toneOf,
  worstTone,
} from '../../../geometry/messages/index.ts';
import type { Level, Plan } from '../../../geometry/plan/model.ts';
import { EVERYTHING, houseLevel, validTestPlan } from '../../helpers/valid-test-plan.ts';

const reportIn = (change: Partial<Level>) => {
  const level = houseLevel('L1', 'A', change);
  // The pair's gap has a margin smaller than the tape tolerance; with a tolerance of 0 the verdict is clear.
  const plan: Plan = { ...validTestPlan(), tapeTolerance: 0, levels: [level] };
  const [detector] = level.detectors;
  if (!detector) throw new Error('the level has no detector');
  return { plan, report: checkDetector(plan, buildLevel(level), detector) };
};
const without = (...rules: readonly string[]) => ({ lookedFor: EVERYTHING.filter((rule) => !rules.includes(rule)) });

describe('how a verdict is told', () => {
  it('is the bare word only when every row is run', () => {
    const { plan, report } = reportIn({});
    expect([toneOf(report), headlineText(report), describeOpenRules(report, plan)]).toEqual(['clear', 'clear', '']);
  });

  it.each(EVERYTHING.filter((rule) => rule !== 'direct-sun'))(
    'is "clear of what is drawn" while nobody looked for: %s',
    (rule) => {
      const { plan, report } = reportIn(without(rule));
      expect(report.verdict).toBe('clear');
      expect([toneOf(report), headlineText(report)]).toEqual(['clear-of-drawn', 'clear of what is drawn']);
      expect(openRules(report, plan).looks.map(({ id }) => id)).toEqual([rule]);
      expect(describeOpenRules(report, plan)).toMatch(/^Not looked for: [a-z ]+\.$/);
    },
  );

  it('names all that is open in one breath, what was looked for before what was not run', () => {
    const detectors = houseLevel().detectors.map((each) => ({ ...each, support: null }));
    const { plan, report } = reportIn({ ...without('heat', 'sump'), detectors });
    expect(describeOpenRules(report, plan)).toMatch(/^Not looked for: heat and sump pit\. Not run: [a-z ]+\.$/);
  });

  it('does not make blocked, unknown or tight any better', () => {
    const { report } = reportIn(without('heat'));
    for (const verdict of ['blocked', 'unknown', 'tight'] as const)
      expect(toneOf({ ...report, verdict })).toBe(verdict);
  });

  it('takes the worst of several: clear of what is drawn is worse than clear', () => {
    const clear = reportIn({}).report;
    const open = reportIn(without('heat')).report;
    expect(worstTone([clear, open, clear])).toBe('clear-of-drawn');
    expect(worstTone([clear])).toBe('clear');
    expect(worstTone([])).toBeNull();
    expect(TONES).toEqual(['blocked', 'unknown', 'tight', 'clear-of-drawn', 'clear']);
  });
});
