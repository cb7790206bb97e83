import type { Level, Mm } from '../plan/model.ts';
import type { EffectiveRule } from '../rules/profiles.ts';
import { distanceCheck, nearestAndNotClear } from './measure.ts';
import type { Cylinder } from './subjects.ts';
import type { Check } from './types.ts';

/** Returns the limit of the height band with the smaller margin; both when neither is clear. */
export function checkHeight({ base, tall }: Cylinder, rule: EffectiveRule, tapeTolerance: Mm): Check[] {
  const rows: Check[] = [];
  if (rule.least !== null) rows.push(distanceCheck(rule, null, rule.least, base, tapeTolerance));
  if (rule.most !== null) rows.push(distanceCheck(rule, null, rule.most, base + tall, tapeTolerance, 'most'));
  return nearestAndNotClear(rows);
}

/** Checks the distance from the top of the detector to the ceiling. */
export function checkCeiling(level: Level, { base, tall }: Cylinder, rule: EffectiveRule, tapeTolerance: Mm): Check[] {
  if (rule.least === null) return [];
  return [distanceCheck(rule, null, rule.least, level.ceiling - base - tall, tapeTolerance)];
}
