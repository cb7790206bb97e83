import { checkDetector } from '../../geometry/check/check-detector.ts';
import { compareVerdicts } from '../../geometry/check/measure.ts';
import { supports } from '../../geometry/check/support.ts';
import type { Verdict } from '../../geometry/check/types.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Detector, Mm, Plan, XY } from '../../geometry/plan/model.ts';
import { distance } from '../../geometry/plane/point.ts';
import { JUST_INSIDE } from '../../geometry/region/nearest.ts';
import { effectiveRules } from '../../geometry/rules/profiles.ts';
import { companionGaps } from '../../geometry/search/group-shapes.ts';

/** Number of directions around the companion to try: one every 5 degrees. */
const DIRECTIONS = 72;

export interface SpotBeside {
  readonly at: XY;
  /** From rim to rim, mm. */
  readonly gap: Mm;
  readonly verdict: Verdict;
  /** The distance that all published lists accept, if the spot has another one because it is better here; else null. */
  readonly insteadOf: Pick<SpotBeside, 'gap' | 'verdict'> | null;
}

/**
 * Returns the best spot of one detector of a pair beside the other: at the distance that all published lists accept (see `companionGaps`),
 * unless the verdict is better midway between the least and the greatest distance of the plan's `companion` rule; in the direction with the
 * best verdict, then the shortest move. Null if the profile has no such rule.
 */
export function spotBeside(plan: Plan, model: LevelModel, detector: Detector, other: Detector): SpotBeside | null {
  const rule = effectiveRules(plan.protocol).find(({ id }) => id === 'companion');
  if (!rule || rule.least === null) return null;
  const midway = rule.most === null ? rule.least + plan.tapeTolerance + JUST_INSIDE : (rule.least + rule.most) / 2;
  const own = spotAt(plan, model, detector, other, midway);
  const [shared, wider] = companionGaps(plan);
  if (!shared || !wider) return own;
  const preferred = spotAt(plan, model, detector, other, shared.best);
  return compareVerdicts(preferred.verdict, own.verdict) >= 0 ? preferred : { ...own, insteadOf: preferred };
}

/** The best of the spots at one distance. */
function spotAt(plan: Plan, model: LevelModel, detector: Detector, other: Detector, gap: Mm): SpotBeside {
  const far = gap + detector.radius + other.radius;
  const carrier = model.level.objects.find((object) => supports(object, other));
  const spots = Array.from({ length: DIRECTIONS }, (_, step): SpotBeside & { readonly move: Mm } => {
    const angle = (step / DIRECTIONS) * 2 * Math.PI;
    const at: XY = [other.at[0] + far * Math.cos(angle), other.at[1] + far * Math.sin(angle)];
    const off = carrier !== undefined && !supports(carrier, { ...detector, at });
    // Beyond the edge of the carrier of the other detector, nothing would carry it.
    const verdict = off ? 'blocked' : checkDetector(plan, model, { ...detector, at }).verdict;
    return { at, gap, verdict, insteadOf: null, move: distance(detector.at, at) };
  });
  return spots.reduce((best, spot) => {
    const better = compareVerdicts(spot.verdict, best.verdict);
    return better > 0 || (better === 0 && spot.move < best.move) ? spot : best;
  });
}
