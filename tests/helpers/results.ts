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

/** Two detectors, rim to rim 6 in apart unless told, with these results in pCi/L. */
export function planWith(values: readonly number[], change: Partial<Plan> = {}, gap = 152.4): Plan {
  const plan = emptyPlan();
  const detectors = values.map((_, i) => detector(`d${i + 1}`, i * (101.6 + gap), values.length > 1 ? 'A' : null));
  const readings = values.map((value, i): Reading => ({ detector: `d${i + 1}`, value, unit: 'pCi/L' }));
  return { ...plan, levels: plan.levels.map((level) => ({ ...level, detectors })), readings, ...change };
}
export const HOLDS = testStateFrom([]);
/** A test that does not hold, for one cause. */
export const failing = (validity: Exclude<Validity, 'holds'>) =>
  testStateFrom([{ validity, stage: 'time', text: 'The cause.', detectors: null }]);
/** What the times and the house alone come to. */
export const visitValidity = (plan: Plan): Validity => testStateFrom(visitIssues(plan)).validity;

export const judged = (values: readonly number[], change: Partial<Plan> = {}, state = HOLDS): LocationReport => {
  const [report] = evaluateResults(planWith(values, change), state);
  if (!report) throw new Error('no report');
  return report;
};
export const purpose = (of: Purpose): Partial<Plan> => ({ site: { ...emptyPlan().site, purpose: of } });
