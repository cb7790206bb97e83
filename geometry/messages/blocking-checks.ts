import { roomAt } from '../check/room.ts';
import type { Check } from '../check/types.ts';
import type { LevelModel } from '../level/types.ts';
import type { Plan, XY } from '../plan/model.ts';
import { capital } from '../plan/nouns.ts';
import { nearestSpot } from '../region/nearest.ts';
import type { LevelRegion } from '../region/types.ts';
import { ruleOf } from '../rules/profiles.ts';
import { describeCheck } from './check.ts';
import { wayTo } from './move.ts';
import { VERDICT_WORD } from './verdict-word.ts';

/** The answer for one spot of the floor. */
export interface WhyNot {
  /** "Blocked: sump pit". Empty where a detector may sit, and off the floor. */
  readonly head: string;
  /** The one subject with the one distance and its need; then the way to the nearest white. */
  readonly lines: readonly string[];
}

/**
 * Why a detector may not sit at a spot, in words: the rule that is missed by most, its subject, the distance and the need, then how
 * far the nearest white is and which way. `checks` are those of `blockingChecks` there, worst first; `region` is what the sheet shows white.
 * A white spot and a spot off every floor are told as such.
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
    // Without a blocked check a spot off the white lies on a limit, within the rounding that shading keeps to the safe side.
    return {
      head: '',
      lines: ['White: no rule that ran keeps a detector from this spot. Set one down for its verdict.'],
    };
  }
  const rule = ruleOf(plan.protocol, worst.rule).name.toLowerCase();
  const white = spot
    ? `The nearest white is ${wayTo(spot, at, room.label?.id ?? null, plan, model)}.`
    : 'No spot on this level is white at this height.';
  return {
    head: `${capital(VERDICT_WORD[worst.verdict])}: ${rule}`,
    lines: [describeCheck(worst, plan, model.level), white],
  };
}
