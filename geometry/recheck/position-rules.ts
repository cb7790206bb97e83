import type { Detector, Level, Plan } from '../plan/model.ts';
import type { EffectiveRule } from '../rules/profiles.ts';
import type { LevelChoice, RuleSubject } from '../rules/types.ts';
import { standsOnUnmeasured } from './distance-rules.ts';
import { apart, ringDistance } from './plane.ts';
import { type Case, leastRow, mostRow, notRunRow, reasonRow } from './rows.ts';
import type { Row } from './types.ts';

/** The greatest difference between the bases of a pair, mm. */
const HEIGHT_TOLERANCE = 102;
/** How far the rim may reach into a wall, mm: the limit tolerance. */
const LIMIT_TOLERANCE = 0.1;
/** Rounding error of the difference of two lengths, mm. */
const SUBTRACTION = 1e-9;

/** Returns the room row: the room that contains the axis must have an allowed use and contain the whole rim. */
export function roomRow(one: Case, rule: EffectiveRule, barred: readonly string[]): Row {
  const { layout, detector } = one;
  const room = layout.roomAt(detector.at);
  const wall = Math.min(...layout.bodies.map(({ ring }) => ringDistance(detector.at, ring)));
  if (room === null) return reasonRow(rule, 'blocked');
  if (wall < detector.radius - LIMIT_TOLERANCE) return leastRow(one, rule, null, wall, { required: detector.radius });
  const uses = layout.labelsIn(room).map(({ use }) => barred.includes(use));
  if (uses.length === 0 || new Set(uses).size > 1) return reasonRow(rule, 'unknown');
  return reasonRow(rule, uses[0] ? 'blocked' : 'clear');
}

/** Returns the level row: the lowest level lived in or, by choice and purpose, one that could be; or each such level on the ground, if any. */
export function levelRow(
  { plan, level }: Case,
  rule: EffectiveRule,
  { choice }: Extract<RuleSubject, { of: 'level' }>,
): Row {
  const wide =
    choice === 'each-on-the-ground' || (choice !== 'lowest-lived-in' && plan.site.purpose === 'property-transfer');
  const counts = ({ living }: Level) => living === 'lived-in' || (living === 'could-be' && wide);
  if (!counts(level)) return reasonRow(rule, 'blocked');
  const counted = plan.levels.filter(counts);
  const onGround = counted.filter(({ ground }) => ground !== 'none');
  const lowest = Math.min(...counted.map(({ order }) => order));
  const ofGround = choice === 'each-on-the-ground' && onGround.length > 0;
  if (ofGround ? !onGround.includes(level) : level.order !== lowest) return reasonRow(rule, 'blocked');
  return dependsOnDefaults(plan, level, choice) ? notRunRow(rule) : reasonRow(rule, 'clear');
}

/** Returns whether the choice of the level depends on defaults of a new plan that nobody has confirmed. */
function dependsOnDefaults({ site, levels }: Plan, level: Level, choice: LevelChoice): boolean {
  const isEach = choice === 'each-on-the-ground';
  if (isEach && level.ground !== 'none') return level.livingAnswered === false || level.groundAnswered === false;
  if (isEach && levels.some(({ groundAnswered }) => groundAnswered === false)) return true;
  const lower = levels.filter(({ order }) => order <= level.order);
  const byPurpose = choice === 'lowest' && site.purposeAnswered === false;
  return byPurpose || lower.some(({ livingAnswered }) => livingAnswered === false);
}

/** Returns the rows of the height band: base at or above the minimum, top at or below the maximum; not run on an unmeasured object. */
export function heightRows(one: Case, rule: EffectiveRule): Row[] {
  const { base, tall } = one.detector;
  const rows = [
    ...(rule.least === null ? [] : [leastRow(one, rule, null, base)]),
    ...(rule.most === null ? [] : [mostRow(one, rule, null, base + tall, rule.most)]),
  ];
  const isOpen = standsOnUnmeasured(one) && rows.every(({ verdict }) => verdict !== 'blocked');
  return isOpen ? [{ ...notRunRow(rule), required: null }] : rows;
}

/** Returns the row of the distance from the top to the ceiling; not run if the ceiling is not measured and may be too low. */
export function ceilingRows(one: Case, rule: EffectiveRule): Row[] {
  const { level, detector } = one;
  if (rule.least === null) return [notRunRow(rule)];
  const top = detector.base + detector.tall;
  const row = leastRow(one, rule, null, level.ceiling - top);
  if (level.ceilingAnswered !== false || row.verdict === 'blocked') return [row];
  // The ceiling is not measured: 5 ft is the lowest possible.
  const underLowest = leastRow(one, rule, null, 5 * 12 * 25.4 - top);
  const isSure = row.verdict === 'clear' && underLowest.verdict !== 'blocked';
  return [isSure ? reasonRow(rule, 'clear') : { ...notRunRow(rule), required: null }];
}

/** Returns the rows of the other detectors of the pair: each on this level, in this room, at this height, and between the limits. */
export function companionRows(one: Case, rule: EffectiveRule): Row[] {
  const { level, detector } = one;
  if (detector.pair === null) return [];
  const others = level.detectors.filter(({ id, pair }) => id !== detector.id && pair === detector.pair);
  return others.length === 0 ? [reasonRow(rule, 'unknown')] : others.flatMap((other) => besideRows(one, rule, other));
}

function besideRows(one: Case, rule: EffectiveRule, other: Detector): Row[] {
  const { detector, layout } = one;
  const gap = Math.max(0, apart(detector.at, other.at) - detector.radius - other.radius);
  const room = layout.roomAt(detector.at);
  const together =
    room !== null &&
    room === layout.roomAt(other.at) &&
    Math.abs(detector.base - other.base) <= HEIGHT_TOLERANCE + LIMIT_TOLERANCE + SUBTRACTION;
  const rows = [
    ...(rule.least === null ? [] : [leastRow(one, rule, other.id, gap)]),
    ...(rule.most === null ? [] : [mostRow(one, rule, other.id, gap, rule.most)]),
  ];
  return together ? rows : rows.map((row): Row => ({ ...row, verdict: 'blocked' }));
}
