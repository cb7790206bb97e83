import type { Detector, Level, Plan } from '../plan/model.ts';
import type { EffectiveRule } from '../rules/profiles.ts';
import type { LevelChoice, Subject } from '../rules/types.ts';
import { apart, ringDistance } from './plane.ts';
import { type Case, leastRow, mostRow, notRunRow, wordRow } from './rows.ts';
import type { Row } from './types.ts';

/** The bases of a pair are no farther apart than this, mm. */
const ONE_HEIGHT = 102;
/** The rim may reach this far into a wall, mm: what a limit forgives. */
const FORGIVEN = 0.1;

/** The room that holds the axis has a use that is allowed, and the whole rim is in it. */
export function roomRow(one: Case, rule: EffectiveRule, barred: readonly string[]): Row {
  const { house, detector } = one;
  const room = house.roomAt(detector.at);
  const wall = Math.min(...house.bodies.map(({ ring }) => ringDistance(detector.at, ring)));
  if (room === null) return wordRow(rule, 'blocked');
  if (wall < detector.radius - FORGIVEN) return leastRow(one, rule, null, wall, { required: detector.radius });
  const uses = house.labelsIn(room).map(({ use }) => barred.includes(use));
  if (uses.length === 0 || new Set(uses).size > 1) return wordRow(rule, 'unknown');
  return wordRow(rule, uses[0] ? 'blocked' : 'clear');
}

/** The lowest level that counts; or each that is fit to live in and stands on the ground. */
export function levelRow(
  { plan, level }: Case,
  rule: EffectiveRule,
  { choice }: Extract<Subject, { of: 'level' }>,
): Row {
  const each = choice === 'each-on-the-ground';
  const counts = ({ living }: Level) =>
    living === 'lived-in' || (living === 'could-be' && (each || plan.site.purpose === 'property-transfer'));
  if (!counts(level)) return wordRow(rule, 'blocked');
  const lowest = Math.min(...plan.levels.filter(counts).map(({ order }) => order));
  const onGround = each && level.ground !== 'none';
  if (level.order !== lowest && !onGround) return wordRow(rule, 'blocked');
  return restsOnNoAnswer(plan, level, choice) ? notRunRow(rule) : wordRow(rule, 'clear');
}

/** Whether the choice of the level rests on what a new plan begins with, and nobody has answered. */
function restsOnNoAnswer({ site, levels }: Plan, level: Level, choice: LevelChoice): boolean {
  if (choice === 'each-on-the-ground') return level.livingAnswered === false;
  const lower = levels.filter(({ order }) => order <= level.order);
  return site.purposeAnswered === false || lower.some(({ livingAnswered }) => livingAnswered === false);
}

/** At least so high, and with its top no higher than so. */
export function heightRows(one: Case, rule: EffectiveRule): Row[] {
  const { base, tall } = one.detector;
  return [
    ...(rule.least === null ? [] : [leastRow(one, rule, null, base)]),
    ...(rule.most === null ? [] : [mostRow(one, rule, null, base + tall, rule.most)]),
  ];
}

export function ceilingRows(one: Case, rule: EffectiveRule): Row[] {
  const { level, detector } = one;
  return rule.least === null
    ? [notRunRow(rule)]
    : [leastRow(one, rule, null, level.ceiling - (detector.base + detector.tall))];
}

/**
 * The path of the sun is computed nowhere in this folder: with an opening to the outside the rule is not run, without one it
 * is clear.
 */
export function sunRows({ level, house }: Case, rule: EffectiveRule): Row[] {
  const opened = house.holes.some(({ outside }) => outside);
  const vouched = level.lookedFor?.includes(rule.id) || !opened;
  return [vouched ? { ...notRunRow(rule), verdict: 'clear', notRun: false } : notRunRow(rule)];
}

/** Each other detector of the pair, on this level, in this room, at this height, no nearer and no farther than the limits. */
export function companionRows(one: Case, rule: EffectiveRule): Row[] {
  const { level, detector } = one;
  if (detector.pair === null) return [];
  const others = level.detectors.filter(({ id, pair }) => id !== detector.id && pair === detector.pair);
  return others.length === 0 ? [wordRow(rule, 'unknown')] : others.flatMap((other) => besideRows(one, rule, other));
}

function besideRows(one: Case, rule: EffectiveRule, other: Detector): Row[] {
  const { detector, house } = one;
  const gap = Math.max(0, apart(detector.at, other.at) - detector.radius - other.radius);
  const room = house.roomAt(detector.at);
  const together =
    room !== null && room === house.roomAt(other.at) && Math.abs(detector.base - other.base) <= ONE_HEIGHT + FORGIVEN;
  const rows = [
    ...(rule.least === null ? [] : [leastRow(one, rule, other.id, gap)]),
    ...(rule.most === null ? [] : [mostRow(one, rule, other.id, gap, rule.most)]),
  ];
  return together ? rows : rows.map((row): Row => ({ ...row, verdict: 'blocked' }));
}
