import { measureSubject } from '../check/measure.ts';
import { sunSubjects } from '../check/sun.ts';
import type { LevelModel } from '../level/types.ts';
import type { Mm, Plan, XY } from '../plan/model.ts';
import { LIMIT_TOLERANCE } from '../plane/tolerances.ts';
import type { Probe } from '../region/types.ts';
import type { EffectiveRule } from '../rules/profiles.ts';

/** An interval of base heights at which a detector would be too close to the sun, and the opening that lets it in. */
export interface SunnyInterval {
  readonly from: Mm;
  readonly to: Mm;
  readonly opening: string;
}

/** Ends of intervals are accurate to this, mm. */
const FINEST: Mm = 25;

/**
 * Returns the base heights between two at which direct sun blocks a detector at a point, from low to high. If an interval is clear of
 * the light at all its heights together, it is clear at each: so a blocked interval may be too long by 25 mm at either end, and is never
 * too short. Empty if the sun is not computed.
 */
export function sunnyHeights(
  plan: Plan,
  model: LevelModel,
  rule: EffectiveRule,
  probe: Pick<Probe, 'radius' | 'tall'>,
  at: XY,
  [low, high]: readonly [Mm, Mm],
): readonly SunnyInterval[] {
  const found: SunnyInterval[] = [];
  const search = (from: Mm, to: Mm) => {
    const opening = blocking(plan, model, rule, { ...probe, base: from, tall: to - from + probe.tall }, at);
    if (opening === null) return;
    if (to - from > FINEST) {
      search(from, (from + to) / 2);
      search((from + to) / 2, to);
      return;
    }
    const last = found[found.length - 1];
    if (last?.to === from) found[found.length - 1] = { ...last, to };
    else found.push({ from, to, opening });
  };
  // Searches from one step lower to one step higher, so that the ends of the range are inside an interval, not at its end.
  if (high >= low) search((Math.floor(low / FINEST) - 1) * FINEST, (Math.ceil(high / FINEST) + 1) * FINEST);
  return found;
}

/** Returns the opening whose light blocks a probe; null for none. */
function blocking(plan: Plan, model: LevelModel, rule: EffectiveRule, probe: Probe, at: XY): string | null {
  for (const subject of sunSubjects(plan, model, rule, probe)) {
    const measured = measureSubject(rule, subject, probe, ...at);
    const required = subject.keepOut ? 0 : (rule.least ?? 0);
    if (measured !== null && measured - required < -LIMIT_TOLERANCE) return subject.id;
  }
  return null;
}
