import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Detector, Level, Plan } from '../../../geometry/plan/model.ts';
import type { RuleId } from '../../../geometry/rules/types.ts';
import { fixtureAt, hall, hallDetector, planUnder } from '../../helpers/hall.ts';

const HOME = 'home-short-term';

function rowsOf(rule: RuleId, level: Level, detector: Partial<Detector>, profile = HOME, plan: Partial<Plan> = {}) {
  const report = checkDetector(planUnder(profile, [level], plan), buildLevel(level), hallDetector(detector));
  return report.checks.filter((check) => check.rule === rule);
}

it.each([
  ['kitchen', 'a kitchen'],
  ['garage', 'a garage'],
  ['utility', 'a utility room'],
  ['stair', 'a stairway'],
] as const)('a room for use as %s is named %s', (use, words) => {
  const level = hall({ rooms: [{ id: 'r', name: '', use, at: [0, 0] }] });
  expect(rowsOf('room-use', level, {})).toMatchObject([
    { verdict: 'blocked', reason: expect.stringContaining(`No detector in ${words}`) },
  ]);
});

describe('the rows of a rule', () => {
  it('of two limits with the same margin have the lower one', () => {
    // In the middle of 20 to 72 in (508 to 1,828.8), with its height of 25.
    const rows = rowsOf('height-band', hall(), { base: (508 + 1828.8 - 25) / 2 });
    expect(rows).toMatchObject([{ bound: 'least', required: 508 }]);
  });

  // 25 Pa. Code 240.310(a)(1): 36 in from ducts, and out of the direct flow of air. Two limits, each with its own row.
  it('have the nearest fixture with its distance, beside an airflow that is nearer to its limit', () => {
    const register = fixtureAt('supply-register', {
      id: 'register',
      shape: { circle: { center: [-3000, 5000], radius: 100 } },
      stream: { direction: 0, spread: 40, reach: 2000 },
    });
    const behind = fixtureAt('portable-fan', {
      id: 'behind',
      shape: { circle: { center: [3500, 5000], radius: 100 } },
    });
    const level = hall({ fixtures: [register, behind] });
    const rows = rowsOf('moving-air', level, { at: [0, 5000], radius: 50 });
    expect(rows).toMatchObject([
      { subject: 'register', required: 914.4, measured: 2850, verdict: 'clear' },
      { subject: 'register', required: 0, measured: 950, verdict: 'clear', reason: 'Its airflow.' },
    ]);
  });

  it('have the fixture that the detector stands in, also without a figure, beside a stream that reaches it', () => {
    const streaming = fixtureAt('supply-register', {
      id: 'far',
      shape: { circle: { center: [-3000, 5000], radius: 100 } },
      stream: { direction: 0, spread: 40, reach: 6000 },
    });
    const around = fixtureAt('portable-fan', { id: 'around', top: 1500 });
    const level = hall({ fixtures: [around, streaming] });
    const rows = rowsOf('moving-air', level, { at: [-100, 5000] }, 'health-canada-long-term', { tapeTolerance: 0 });
    expect(rows.map(({ subject, verdict }) => `${subject} ${verdict}`).sort()).toEqual([
      'around blocked',
      'far blocked',
    ]);
  });
});
