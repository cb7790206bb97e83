import { roomAt } from '../check/room.ts';
import type { Check } from '../check/types.ts';
import type { LevelModel } from '../level/types.ts';
import type { Plan, XY } from '../plan/model.ts';
import { capital } from '../plan/nouns.ts';
import { nearestSpot } from '../region/nearest.ts';
import type { LevelRegion } from '../region/types.ts';
import { ruleOf } from '../rules/profiles.ts';
import { describeCheck } from './check.ts';
import { describeWay } from './move.ts';

/** The explanation for one point of the floor. */
export interface WhyNot {
  /** "Blocked: sump pit". "" where a detector may be, and off the floor. */
  readonly head: string;
  /** The subject, distance and limit; then the way to the nearest white (allowed) area. */
  readonly lines: readonly string[];
}

/**
 * Explains in words why a detector may not be at a point: the rule with the greatest shortfall, its subject, distance
 * and limit, then distance and direction to the nearest white area. `checks` are those of `blockingChecks` at the point,
 * worst first; `region` is what the plan shows white. Also covers white points and points off every floor.
 */
export function describeBlocked(
  checks: readonly Check[],
  region: LevelRegion,
  plan: Pick<Plan, 'display' | 'site' | 'protocol'>,
  model: LevelModel,
  at: XY,
): WhyNot {
  const room = roomAt(model, at);
  if (!room) return { head: '', lines: ['No floor of a closed room is here. Close the walls around it first.'] };
  const spot = nearestSpot(region, at);
  const [worst] = checks;
  if (!worst) {
    // A point outside the white area without a blocked check is at a limit, within the rounding of the shading.
    return {
      head: '',
      lines: ['Allowed area: no rule that ran excludes this spot. Place a detector for its verdict.'],
    };
  }
  const rule = ruleOf(plan.protocol, worst.rule).name.toLowerCase();
  const white = spot
    ? `The nearest allowed area is ${describeWay(spot, at, room.label?.id ?? null, plan, model)}.`
    : 'There is no allowed area on this level at this height.';
  return {
    head: `${capital(worst.verdict)}: ${rule}`,
    lines: [describeCheck(worst, plan, model.level), white],
  };
}
