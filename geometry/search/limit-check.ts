import { checkDetector } from '../check/check-detector.ts';
import type { Check } from '../check/types.ts';
import type { LevelModel } from '../level/types.ts';
import type { Plan, XY } from '../plan/model.ts';
import type { Probe } from '../region/types.ts';
import type { Limit } from './field/primitives.ts';

/**
 * Returns the check for the limit of a good place, with its measured line; for several detectors, the one with the
 * smallest margin. The best place is often midway between two items of one rule; the check may then name the other
 * item. Null if there is no such check.
 */
export function limitCheck(
  plan: Plan,
  model: LevelModel,
  probe: Probe,
  axes: readonly XY[],
  limit: Limit,
): Check | null {
  const rows = axes.flatMap((at) =>
    checkDetector(plan, model, { ...probe, id: '', label: '', at, pair: null }, []).checks.filter((check) =>
      isOf(limit, check),
    ),
  );
  const named = rows.filter(({ subject }) => subject === limit.subject);
  return least(named) ?? least(rows);
}

/** Returns whether a check is that of a limit. A fixture has one check for its distance and one for its stream, which has no limit. */
function isOf({ rule, stream }: Limit, check: Check): boolean {
  return check.rule === rule && check.margin !== null && !check.notRun && (!stream || check.required === 0);
}

function least(checks: readonly Check[]): Check | null {
  return checks.reduce<Check | null>((a, b) => (a && (a.margin ?? 0) <= (b.margin ?? 0) ? a : b), null);
}
