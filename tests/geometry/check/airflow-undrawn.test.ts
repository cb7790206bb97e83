import { expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { compareByMargin, reasonCheck } from '../../../geometry/check/measure.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { effectiveRules } from '../../../geometry/rules/profiles.ts';
import { fixtureAt, hall, hallDetector, planUnder } from '../../helpers/hall.ts';

const PROFILE = 'pennsylvania-240-310';

it('a machine whose airflow is not drawn leaves the rule not run, with what to do', () => {
  // 25 Pa. Code 240.310(a)(1) gives a distance to ducts; of other machines only the airflow counts.
  const level = hall({ fixtures: [fixtureAt('dehumidifier')], detectors: [hallDetector()] });
  const report = checkDetector(planUnder(PROFILE, [level]), buildLevel(level), hallDetector());
  const row = report.checks.find(({ subject }) => subject === 'f');
  expect(row).toMatchObject({
    verdict: 'unknown',
    notRun: true,
    reason: 'Its airflow direction is not drawn: keep out of its airflow.',
  });
});

it('of rows without a margin the order is that of their ids, whichever is compared to which', () => {
  const [rule] = effectiveRules({ profile: PROFILE, overrides: [] });
  if (!rule) throw new Error('a profile has rules');
  const [a, b] = ['a', 'b'].map((subject) => ({ ...reasonCheck(rule, 'unknown', ''), subject }));
  if (!a || !b) throw new Error('two rows');
  expect(compareByMargin(a, b)).toBeLessThan(0);
  expect(compareByMargin(b, a)).toBeGreaterThan(0);
});
