import type { LevelModel } from '../level/types.ts';
import type { Plan } from '../plan/model.ts';
import type { RuleId } from '../rules/types.ts';
import { EVERYWHERE, freeBoundary, type Grown } from './free-boundary.ts';
import { obstaclesOf } from './obstacles.ts';
import { linkRings } from './rings.ts';
import type { ArcRing, Probe } from './types.ts';

/** All that one rule takes away, as one area. */
export interface RuleZone {
  readonly rule: RuleId;
  /** Boundary of the area, exact lines and arcs, for the even-odd rule: outer rings and the holes between subjects. */
  readonly rings: readonly ArcRing[];
}

/**
 * The zones of a level joined rule by rule, in the order of the profile: for drawing, where overlapping outlines of one
 * rule would say nothing. Rules that take nothing away at the probe's height are left out.
 */
export function ruleZones(plan: Plan, model: LevelModel, probe: Probe): readonly RuleZone[] {
  const byRule = new Map<RuleId, Grown[]>();
  for (const { grown, zone } of obstaclesOf(plan, model, probe, 0)) {
    if (!zone) continue;
    const own = byRule.get(zone.rule);
    if (own) own.push(grown);
    else byRule.set(zone.rule, [grown]);
  }
  return [...byRule].flatMap(([rule, bodies]) => {
    const rings = linkRings(freeBoundary(bodies, EVERYWHERE));
    return rings.length > 0 ? [{ rule, rings }] : [];
  });
}
