import { checkPlan } from '../../geometry/check/check-detector.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { compareOpinions } from '../../geometry/recheck/compare.ts';
import { recheck } from '../../geometry/recheck/recheck.ts';
import { type VerifiedLevel, verifiedLevels } from '../protocol/validity/verified-placement.ts';

/** Every detector judged, and judged again in another way: where the two differ nothing is decided. */
export function verifiedPlacement(plan: Plan): readonly VerifiedLevel[] {
  const { levels } = checkPlan(plan);
  const compared = compareOpinions({ levels }, recheck(plan), plan.tapeTolerance).flatMap(({ detectors }) => detectors);
  return verifiedLevels(plan, levels, new Map(compared.map(({ id, computed }) => [id, computed])));
}
