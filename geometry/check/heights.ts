import type { Detector, Level, Mm } from '../plan/model.ts';
import { LIMIT_TOLERANCE } from '../plane/tolerances.ts';
import type { EffectiveRule } from '../rules/profiles.ts';
import { distanceCheck, nearestAndNotClear, reasonCheck } from './measure.ts';
import type { Cylinder } from './subjects.ts';
import { UNMEASURED_CARRIER, unmeasuredCarrier } from './support.ts';
import type { Check } from './types.ts';

/** Returns the limit of the height band with the smaller margin; both when neither is clear. */
export function checkHeight({ base, tall }: Cylinder, rule: EffectiveRule, tapeTolerance: Mm): Check[] {
  const rows: Check[] = [];
  if (rule.least !== null) rows.push(distanceCheck(rule, null, rule.least, base, tapeTolerance));
  if (rule.most !== null) rows.push(distanceCheck(rule, null, rule.most, base + tall, tapeTolerance, 'most'));
  return nearestAndNotClear(rows);
}

/** Returns the rows of `checkHeight`, or one not-run row if the object under the detector is not measured and no row is blocked. */
export function checkHeightOn(level: Level, detector: Detector, rule: EffectiveRule, tapeTolerance: Mm): Check[] {
  const rows = checkHeight(detector, rule, tapeTolerance);
  const carrier = unmeasuredCarrier(level, detector);
  if (!carrier || rows.some(({ verdict }) => verdict === 'blocked')) return rows;
  return [{ ...reasonCheck(rule, 'unknown', UNMEASURED_CARRIER, true), subject: carrier.id }];
}

/** The lowest ceiling of a room that people live in, mm: 5 ft. Common practice, no published source. */
const LOWEST_CEILING: Mm = 1524;

/**
 * Checks the distance from the top of the detector to the ceiling. Where nobody has measured the ceiling, the check is clear if it would be
 * clear under the lowest ceiling, and otherwise not run. A blocked check stays blocked.
 */
export function checkCeiling(level: Level, { base, tall }: Cylinder, rule: EffectiveRule, tapeTolerance: Mm): Check[] {
  if (rule.least === null) return [];
  const row = distanceCheck(rule, null, rule.least, level.ceiling - base - tall, tapeTolerance);
  if (level.ceilingAnswered !== false || row.verdict === 'blocked') return [row];
  const isSure = row.verdict === 'clear' && LOWEST_CEILING - base - tall >= rule.least - LIMIT_TOLERANCE;
  return [
    isSure
      ? reasonCheck(rule, 'clear', 'Low enough under any ceiling (not measured).')
      : reasonCheck(rule, 'unknown', 'The ceiling is not measured.', true),
  ];
}
