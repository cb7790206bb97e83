import type { Detector, Plan, Purpose } from '../../geometry/plan/model.ts';
import type { Reading } from '../../geometry/plan/test-record.ts';
import { emptyPlan } from '../../geometry/planfile/empty.ts';
import { evaluateResults } from '../../src/protocol/results/evaluate-results.ts';
import type { LocationReport } from '../../src/protocol/results/location-report.ts';
import { visitIssues } from '../../src/protocol/validity/test-state.ts';
import { testStateFrom, type Validity } from '../../src/protocol/validity/validity.ts';

const detector = (id: string, x: number, pair: string | null): Detector => ({
  id,
  label: id.toUpperCase(),
  at: [x, 0],
  base: 762,
  radius: 50.8,
  tall: 25.4,
  pair,
});

/** Returns a plan with a detector for each result, pCi/L; `gap` is from rim to rim, mm, 6 in by default. */
export function planWith(values: readonly number[], change: Partial<Plan> = {}, gap = 152.4): Plan {
  const plan = emptyPlan();
  const detectors = values.map((_, i) => detector(`d${i + 1}`, i * (101.6 + gap), values.length > 1 ? 'A' : null));
  const readings = values.map((value, i): Reading => ({ detector: `d${i + 1}`, value, unit: 'pCi/L' }));
  return { ...plan, levels: plan.levels.map((level) => ({ ...level, detectors })), readings, ...change };
}
export const HOLDS = testStateFrom([]);
/** Returns the state of a test with one issue. */
export const failing = (validity: Exclude<Validity, 'holds'>) =>
  testStateFrom([{ validity, stage: 'time', text: 'The cause.', detectors: null }]);
/** Returns the validity by timing and conditions only. */
export const visitValidity = (plan: Plan): Validity => testStateFrom(visitIssues(plan)).validity;

export const evaluated = (values: readonly number[], change: Partial<Plan> = {}, state = HOLDS): LocationReport => {
  const [report] = evaluateResults(planWith(values, change), state);
  if (!report) throw new Error('no report');
  return report;
};
export const purpose = (of: Purpose): Partial<Plan> => ({ site: { ...emptyPlan().site, purpose: of } });
