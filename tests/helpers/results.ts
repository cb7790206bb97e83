import { emptyPlan } from '../../geometry/index.ts';
import type { Detector, Plan, Purpose, Reading } from '../../geometry/plan/model.ts';
import { judgeReadings, type SetReport, type TestStanding } from '../../src/job/readings/judge.ts';

export const detector = (id: string, x: number, pair: string | null): Detector => ({
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
export const judged = (
  values: readonly number[],
  change: Partial<Plan> = {},
  standing: TestStanding = 'holds',
): SetReport => {
  const [report] = judgeReadings(planWith(values, change), standing);
  if (!report) throw new Error('no report');
  return report;
};
export const purpose = (of: Purpose): Partial<Plan> => ({ site: { ...emptyPlan().site, purpose: of } });
