import type { LevelModel, Room } from '../level/types.ts';
import type { Detector, Mm } from '../plan/model.ts';
import { bodyDistance } from '../plane/body.ts';
import { LIMIT_TOLERANCE } from '../plane/tolerances.ts';
import { citationFor } from '../rules/citation.ts';
import type { EffectiveRule } from '../rules/profiles.ts';
import { distanceCheck, nearestAndNotClear, reasonCheck, witnessTo } from './measure.ts';
import { roomAt } from './room.ts';
import { SAME_HEIGHT } from './side-by-side.ts';
import { detectorSubject, SUBTRACTION } from './subjects.ts';
import type { Check } from './types.ts';

/**
 * Checks the rim-to-rim distance to every other detector of the same pair, which must be in the same room and at the
 * same height. For a pair with one detector the check is undecided.
 */
export function checkCompanion(
  model: LevelModel,
  detector: Detector,
  room: Room | null,
  rule: EffectiveRule,
  tapeTolerance: Mm,
  level: readonly Detector[],
): Check[] {
  if (detector.pair === null) return [];
  const others = level.filter(({ id, pair }) => id !== detector.id && pair === detector.pair);
  if (others.length === 0)
    return [reasonCheck(rule, 'unknown', 'The other detector of the pair is not on this level.')];
  return nearestAndNotClear(
    others.flatMap((other) => {
      const apart = limitChecks(detector, other, rule, tapeTolerance);
      const reason = whyApart(model, detector, room, other);
      return reason
        ? apart.map((check) => ({ ...check, ...citationFor(rule, 'together'), verdict: 'blocked', reason }))
        : apart;
    }),
  );
}

/** Returns why two detectors of a pair are not together, whatever their distance; "" when they are. */
function whyApart(model: LevelModel, { base }: Detector, room: Room | null, other: Detector): string {
  if (room === null || roomAt(model, other.at) !== room)
    return 'The other detector of the pair is not in the same room.';
  const higher = Math.abs(other.base - base) > SAME_HEIGHT + LIMIT_TOLERANCE + SUBTRACTION;
  return higher ? 'The other detector of the pair is at another height.' : '';
}

/** Checks the minimum and the maximum, and returns the limit with the smaller margin. */
function limitChecks(detector: Detector, other: Detector, rule: EffectiveRule, tapeTolerance: Mm): Check[] {
  const [x, y] = detector.at;
  const { body } = detectorSubject(other);
  const apart = Math.max(0, bodyDistance(body, x, y) - detector.radius);
  const rows: Check[] = [];
  if (rule.least !== null) rows.push(distanceCheck(rule, other.id, rule.least, apart, tapeTolerance));
  if (rule.most !== null) rows.push(distanceCheck(rule, other.id, rule.most, apart, tapeTolerance, 'most'));
  const [nearest] = nearestAndNotClear(rows);
  return nearest ? [{ ...nearest, witness: witnessTo(body, detector, detector.at) }] : [];
}
