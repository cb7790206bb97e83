import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Level, Plan } from '../../../geometry/plan/model.ts';
import { guidance } from '../../../src/advice/guidance.ts';
import { nextStep } from '../../../src/advice/stages.ts';
import { withLook } from '../../../src/protocol/conditions/edit-conditions.ts';
import { withLogEntry } from '../../../src/protocol/custody/log-entries.ts';
import { testStateOf } from '../../../src/state/test-state.ts';
import { EVERYTHING, GOOD_VISIT, validTestPlan } from '../../helpers/valid-test-plan.ts';

/** A forecast from before the start of `GOOD_VISIT`, with nothing against the test. */
const CALM = { at: '2026-03-07T08:00:00-05:00', source: 'weather service', sustained: 10, storm: false, note: '' };

describe('nothing is missing', () => {
  const stages = (plan: Plan) => {
    const evaluated = plan.levels.map((level) => {
      const model = buildLevel(level);
      return { model, reports: level.detectors.map((each) => checkDetector(plan, model, each)) };
    });
    return guidance(plan, evaluated, testStateOf(plan), 'L1');
  };
  const written = {
    placedBy: 'R. Alder',
    fetchedBy: 'R. Alder',
    sealed: '2026-03-10T09:05:00-04:00',
    tampering: 'none' as const,
  };
  const posted = { ...validTestPlan().visit, posted: '2026-03-10T12:00:00-04:00', forecast: CALM };
  const signed = validTestPlan([1, 1.1], { title: 'Alder Court', visit: posted });
  const whole = ['L1d1', 'L1d2'].reduce(
    (plan, id, i) => withLogEntry(plan, id, { ...written, serial: `K-${i + 1}` }),
    withLook(signed, { by: 'R. Alder', at: GOOD_VISIT.end }),
  );

  it('is said of a plan of which nothing is', () => {
    expect(nextStep(stages(whole))).toEqual({ says: 'Nothing is missing for the verdict.', action: null });
  });

  it.each<[string, (plan: Plan) => Plan]>([
    [
      'a thing was not looked for',
      (plan) => withLevel(plan, { lookedFor: EVERYTHING.filter((rule) => rule !== 'heat') }),
    ],
    [
      'the sun was not run',
      (plan) => withLevel(plan, { lookedFor: EVERYTHING.filter((rule) => rule !== 'direct-sun'), openings: [WINDOW] }),
    ],
    [
      'nothing carries a detector',
      (plan) =>
        withLevel(plan, { detectors: plan.levels[0]?.detectors.map((each) => ({ ...each, support: null })) ?? [] }),
    ],
    ['nobody answered who lives there', (plan) => withLevel(plan, { livingAnswered: false })],
    ['nobody answered why', (plan) => ({ ...plan, site: { ...plan.site, purposeAnswered: false } })],
    ['the end is not recorded', (plan) => ({ ...plan, readings: [], visit: { ...plan.visit, end: null } })],
    [
      'nothing of the visit is recorded',
      (plan) => ({ ...plan, readings: [], visit: { ...plan.visit, start: null, end: null } }),
    ],
    [
      'an answer about the house has no observer',
      (plan) => ({ ...plan, conditions: plan.conditions.map((each) => ({ ...each, by: '' })) }),
    ],
    ['a condition of the house is not known', (plan) => ({ ...plan, conditions: plan.conditions.slice(1) })],
    ['the log has a gap', (plan) => ({ ...plan, log: [] })],
    ['no result is entered', (plan) => ({ ...plan, readings: [] })],
  ])('is not said while %s', (_, change) => {
    expect(nextStep(stages(change(whole))).says).toMatch(/^(Next|Still to come): /);
  });
});

const WINDOW = { id: 'o1', wall: 'L1w1', kind: 'window', offset: 500, width: 900, bottom: 900, top: 2000 } as const;
const withLevel = (plan: Plan, change: Partial<Level>): Plan => ({
  ...plan,
  levels: plan.levels.map((level) => ({ ...level, ...change })),
});
