import { compareVerdicts } from '../../../geometry/check/measure.ts';
import type { Verdict } from '../../../geometry/check/types.ts';
import type { PlanLook } from './records.ts';

/** The verdicts that there are, the worst first. */
export function inOrderOfWorst(verdicts: PlanLook['verdicts']): readonly (readonly [Verdict, number])[] {
  const there = (Object.entries(verdicts) as [Verdict, number][]).filter(([, count]) => count > 0);
  return there.sort(([a], [b]) => compareVerdicts(a, b));
}
