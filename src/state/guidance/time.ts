import type { Plan } from '../../../geometry/plan/model.ts';
import { testStanding, timingReport } from '../../job/timing/report.ts';
import { type Hint, type SeenLevel, WEIGHT } from './hint.ts';

/** What of the times is missing or broken, once a detector is set. */
export function timeHints(plan: Plan, levels: readonly SeenLevel[]): readonly Hint[] {
  if (!isPlaced(levels)) return [];
  const open = { kind: 'stage', label: 'Look at the times', stage: 'time' } as const;
  if (plan.visit.start === null) {
    const text = 'When the house is closed and the detectors are set out is not written down yet.';
    return [{ text, act: open, missing: false, weight: WEIGHT.time }];
  }
  return timingReport(plan).checks.flatMap(({ rule, verdict, detail }): Hint[] => {
    if (verdict === 'blocked') return [{ text: detail, act: open, missing: true, weight: WEIGHT.timeBroken }];
    // Until it is fetched the end cannot be known.
    if (verdict !== 'unknown' || (rule === 'exposure' && plan.visit.end === null)) return [];
    return [{ text: detail, act: open, missing: true, weight: WEIGHT.time }];
  });
}

export const isPlaced = (levels: readonly SeenLevel[]): boolean =>
  levels.some(({ model }) => model.level.detectors.length > 0);

/** What is known of the times, in a few words; empty for nothing. */
export function timedInWords(plan: Plan): string {
  const { start, end } = plan.visit;
  if (start === null) return '';
  if (end === null) return 'Set out, not fetched yet.';
  const { exposureHours } = timingReport(plan);
  const hours = `${Math.floor(exposureHours ?? 0)} h laid out`;
  return testStanding(plan) === 'not-evaluated' ? `${hours}, not evaluated.` : `${hours}.`;
}
