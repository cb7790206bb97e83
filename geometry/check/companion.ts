import type { LevelModel, Room } from '../level/types.ts';
import type { Detector, Mm } from '../plan/model.ts';
import { bodyDistance } from '../plane/body.ts';
import { citationFor } from '../rules/citation.ts';
import type { EffectiveRule } from '../rules/profiles.ts';
import { distanceCheck, nearestAndNotClear, witnessTo, wordCheck } from './measure.ts';
import { roomAt } from './room.ts';
import { detectorSubject, MEETS } from './subjects.ts';
import type { Check } from './types.ts';

/** The undersides of a pair differ by no more than this, mm: 4 in, rounded up. */
const ONE_HEIGHT: Mm = 102;

/**
 * Rim to rim to every other detector of the same pair, which has to stand in the same room and at the same height. A pair of one
 * cannot be decided.
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
  if (others.length === 0) return [wordCheck(rule, 'unknown', 'The other detector of the pair is not on this level.')];
  return nearestAndNotClear(
    others.flatMap((other) => {
      const apart = againstOther(detector, other, rule, tapeTolerance);
      const reason = notTogether(model, detector, room, other);
      return reason
        ? apart.map((check) => ({ ...check, ...citationFor(rule, 'together'), verdict: 'blocked', reason }))
        : apart;
    }),
  );
}

/** Why two detectors of a pair do not stand together, whatever lies between their rims; empty when they do. */
function notTogether(model: LevelModel, { base }: Detector, room: Room | null, other: Detector): string {
  if (room === null || roomAt(model, other.at) !== room)
    return 'The other detector of the pair is not in the same room.';
  const higher = Math.abs(other.base - base) > ONE_HEIGHT + MEETS;
  return higher ? 'The other detector of the pair is at another height.' : '';
}

/** The limit that is nearer to being broken. */
function againstOther(detector: Detector, other: Detector, rule: EffectiveRule, tapeTolerance: Mm): Check[] {
  const [x, y] = detector.at;
  const { body } = detectorSubject(other);
  const apart = Math.max(0, bodyDistance(body, x, y) - detector.radius);
  const rows: Check[] = [];
  if (rule.least !== null) rows.push(distanceCheck(rule, other.id, rule.least, apart, tapeTolerance));
  if (rule.most !== null) rows.push(distanceCheck(rule, other.id, rule.most, apart, tapeTolerance, 'most'));
  const [nearest] = nearestAndNotClear(rows);
  return nearest ? [{ ...nearest, witness: witnessTo(body, detector, detector.at) }] : [];
}
