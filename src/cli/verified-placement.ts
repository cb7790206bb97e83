import { checkPlan } from '../../geometry/check/check-detector.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { compareOpinions } from '../../geometry/recheck/compare.ts';
import { recheck } from '../../geometry/recheck/recheck.ts';
import { type VerifiedLevel, verifiedLevels } from '../protocol/validity/verified-placement.ts';

/** Returns the reports of every detector, computed twice: the verdict is unknown if the two computations differ. */
export function verifiedPlacement(plan: Plan): readonly VerifiedLevel[] {
  const { levels } = checkPlan(plan);
  const compared = compareOpinions({ levels }, recheck(plan), plan.tapeTolerance).flatMap(({ detectors }) => detectors);
  return verifiedLevels(plan, levels, new Map(compared.map(({ id, computed }) => [id, computed])));
}

/** Whether no detector is blocked or unknown: what exit code 0 says. */
export function isPlacementFine(levels: readonly VerifiedLevel[]): boolean {
  return levels.every(({ detectors }) =>
    detectors.every(({ verdict }) => verdict !== 'blocked' && verdict !== 'unknown'),
  );
}
