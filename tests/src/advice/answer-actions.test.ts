import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level } from '../../../geometry/plan/model.ts';
import { actionToSettle } from '../../../src/advice/guidance/answer-actions.ts';
import { hall, hallDetector, planUnder } from '../../helpers/hall.ts';

function actionOf(profile: string, rule: string, change: Partial<Level> = {}, base = 900) {
  const level = { ...hall(change), detectors: [{ ...hallDetector(), base }] };
  const plan = planUnder(profile, [level]);
  const report = checkDetector(plan, buildLevel(level), level.detectors[0] as (typeof level.detectors)[number]);
  expect(report.checks.filter((check) => check.rule === rule && check.notRun)).not.toEqual([]);
  return actionToSettle(plan, level, report, rule);
}

describe('what settles a rule that was not run', () => {
  it('is the distance, entered with the list, where the list has none for what is drawn', () => {
    expect(actionOf('health-canada-long-term', 'outside-opening')).toEqual({
      kind: 'stage',
      label: 'Enter a distance',
      stage: 'site',
    });
  });

  it('is the answer that nothing is there, where nothing is drawn', () => {
    expect(actionOf('health-canada-long-term', 'heat')).toMatchObject({ kind: 'question', rule: 'heat' });
    expect(actionOf('home-short-term', 'sump')).toMatchObject({ kind: 'question', rule: 'sump' });
  });

  it('is the height of the ceiling, among the levels', () => {
    const level = { ceiling: 2286, ceilingAnswered: false };
    expect(actionOf('home-short-term', 'ceiling', level, 1600)).toMatchObject({ kind: 'level', levelId: 'L' });
  });
});
