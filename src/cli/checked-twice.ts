import { checkPlan } from '../../geometry/check/check-detector.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { compareOpinions } from '../../geometry/recheck/compare.ts';
import { recheck } from '../../geometry/recheck/recheck.ts';
import { type ComputedLevel, settledLevels } from '../protocol/standing/placed.ts';

/** Every detector judged, and judged again in another way: where the two differ nothing is decided. */
export function checkedTwice(plan: Plan): readonly ComputedLevel[] {
  const { levels } = checkPlan(plan);
  const compared = compareOpinions({ levels }, recheck(plan), plan.tapeTolerance).flatMap(({ detectors }) => detectors);
  return settledLevels(plan, levels, new Map(compared.map(({ id, computed }) => [id, computed])));
}
