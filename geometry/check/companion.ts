import { type Body, bodyDistance } from '../body.ts';
import type { Detector, Level, Mm } from '../plan/model.ts';
import type { EffectiveRule } from '../rules/profiles.ts';
import { distanceCheck, nearestAndNotClear, witnessTo, wordCheck } from './measure.ts';
import type { Check } from './types.ts';

/** Rim to rim to every other detector of the same pair. A pair of one cannot be decided. */
export function checkCompanion(level: Level, detector: Detector, rule: EffectiveRule, tapeTolerance: Mm): Check[] {
  if (detector.pair === null) return [];
  const others = level.detectors.filter(({ id, pair }) => id !== detector.id && pair === detector.pair);
  if (others.length === 0) return [wordCheck(rule, 'unknown', 'The other detector of the pair is not on this level.')];
  return nearestAndNotClear(others.flatMap((other) => againstOther(detector, other, rule, tapeTolerance)));
}

/** The limit that is nearer to being broken. */
function againstOther(detector: Detector, other: Detector, rule: EffectiveRule, tapeTolerance: Mm): Check[] {
  const [x, y] = detector.at;
  const [ox, oy] = other.at;
  const { radius } = other;
  const extent = { minX: ox - radius, minY: oy - radius, maxX: ox + radius, maxY: oy + radius };
  const body: Body = { kind: 'disc', x: ox, y: oy, radius, extent };
  const apart = Math.max(0, bodyDistance(body, x, y) - detector.radius);
  const rows: Check[] = [];
  if (rule.least !== null) rows.push(distanceCheck(rule, other.id, rule.least, apart, tapeTolerance));
  if (rule.most !== null) rows.push(distanceCheck(rule, other.id, rule.most, apart, tapeTolerance, 'most'));
  const [nearest] = nearestAndNotClear(rows);
  return nearest ? [{ ...nearest, witness: witnessTo(body, detector, detector.at) }] : [];
}
