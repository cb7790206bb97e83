import { bodyDistance } from '../body.ts';
import { buildLevel } from '../level/build-level.ts';
import type { LevelModel, Room } from '../level/types.ts';
import { type Detector, type Level, type Mm, type Plan, ROOM_USES_ALLOWED, type XY } from '../plan/model.ts';
import { ringsContain } from '../ring.ts';
import { type EffectiveRule, effectiveRules } from '../rules/profiles.ts';
import { capital } from '../words/nouns.ts';
import { distanceCheck, measureSubject, witnessTo, wordCheck, worstVerdict } from './measure.ts';
import { type Cylinder, MEETS, type Subject, subjectsOf } from './subjects.ts';
import type { Check, DetectorReport } from './types.ts';

/** Every detector of the plan against the plan's profile. */
export function checkPlan(plan: Plan): { levels: { id: string; detectors: DetectorReport[] }[] } {
  return {
    levels: plan.levels.map((level) => {
      const model = buildLevel(level);
      return { id: level.id, detectors: level.detectors.map((detector) => checkDetector(plan, model, detector)) };
    }),
  };
}

/**
 * One detector against the plan's profile: for each rule that applies the nearest subject and every subject that is not
 * clear, in the order of the profile, the least to spare first. The detector need not be one of the level's own: a dragged
 * one is measured where it is held; its companion is any other detector of the level with the same pair.
 */
export function checkDetector(plan: Plan, model: LevelModel, detector: Detector): DetectorReport {
  const room = roomAt(model, detector.at);
  const checks = effectiveRules(plan.protocol).flatMap((rule) => checkRule(plan, model, detector, room, rule));
  return { id: detector.id, verdict: worstVerdict(checks), room: room?.label?.id ?? null, checks };
}

/** The room on whose floor a point lies: not one whose walls it is inside of. Null outdoors and within walls. */
export function roomAt(model: LevelModel, [x, y]: XY): Room | null {
  const p: XY = [x, y];
  return model.rooms.find(({ floorRings }) => ringsContain(floorRings, p)) ?? null;
}

/** Why no detector may stand in a room; empty when one may. `certain` is false where it cannot be decided. */
export function roomBar(room: Room | null): { reason: string; certain: boolean } {
  if (!room) return { reason: 'It stands in no room.', certain: true };
  const { labels } = room;
  const barred = labels.filter(({ use }) => !isAllowed(use));
  const [first] = barred;
  if (labels.length === 0) return { reason: 'The room has no label, so its use is not known.', certain: false };
  if (!first) return { reason: '', certain: true };
  if (barred.length < labels.length) {
    return {
      reason: `The room is labelled both for a use that may hold a detector and as ${roomWords(first.use)}.`,
      certain: false,
    };
  }
  return { reason: `No detector in ${roomWords(first.use)}.`, certain: true };
}

function isAllowed(use: string): boolean {
  return (ROOM_USES_ALLOWED as readonly string[]).includes(use);
}

/** How a barred use is said in "No detector in …". */
const IN_WORDS: Readonly<Record<string, string>> = {
  laundry: 'a laundry room',
  utility: 'a utility room',
  storage: 'a storage room',
  stair: 'a stairway',
  hall: 'a hallway',
  crawlspace: 'a crawl space',
};

function roomWords(use: string): string {
  return IN_WORDS[use] ?? `a ${use}`;
}

function checkRule(plan: Plan, model: LevelModel, detector: Detector, room: Room | null, rule: EffectiveRule): Check[] {
  switch (rule.subject.of) {
    case 'room':
      return [checkRoom(model, detector, room, rule)];
    case 'level':
      return [checkLevel(plan, model.level, rule)];
    case 'height':
      return checkHeight(detector, rule, plan.tapeTolerance);
    case 'ceiling':
      return [
        distanceCheck(
          rule,
          null,
          rule.least ?? 0,
          model.level.ceiling - detector.base - detector.tall,
          plan.tapeTolerance,
        ),
      ];
    case 'sun':
      return checkSun(plan, model, rule);
    case 'companion':
      return checkCompanion(plan, model.level, detector, rule);
    default:
      return checkSubjects(plan, model, detector, rule);
  }
}

function checkRoom(model: LevelModel, detector: Detector, room: Room | null, rule: EffectiveRule): Check {
  const bar = roomBar(room);
  if (bar.reason) return wordCheck(rule, bar.certain ? 'blocked' : 'unknown', bar.reason);
  const [x, y] = detector.at;
  let toWall: Mm = Number.POSITIVE_INFINITY;
  for (const { body } of wallBodies(model)) toWall = Math.min(toWall, bodyDistance(body, x, y));
  if (toWall >= detector.radius - MEETS) return wordCheck(rule, 'clear', '');
  return {
    ...wordCheck(rule, 'blocked', 'Its rim reaches into a wall.'),
    required: detector.radius,
    measured: toWall,
    margin: toWall - detector.radius,
  };
}

/** The bodies of all walls, outside and inside. */
export function wallBodies(model: LevelModel): readonly Subject[] {
  return WALL_RULES.flatMap((rule) => subjectsOf(rule, model)).filter(({ top }) => top === Number.POSITIVE_INFINITY);
}

/** Rows that list walls only through their subject; no profile's figures are used. */
const WALL_RULES = (['outside-wall', 'object'] as const).map(
  (of): EffectiveRule => ({
    id: of,
    name: '',
    says: '',
    subject: { of },
    least: null,
    most: null,
    measured: 'plan',
    sources: [],
    override: null,
  }),
);

function checkLevel(plan: Plan, level: Level, rule: EffectiveRule): Check {
  const bar = levelBar(plan, level);
  return wordCheck(rule, bar ? 'blocked' : 'clear', bar);
}

/** Why this is not the level to test for the plan's purpose; empty when it is. */
export function levelBar({ levels, site: { purpose } }: Plan, level: Level): string {
  const inSale = purpose === 'property-transfer';
  const counts = (one: Level) => one.living === 'lived-in' || (inSale && one.living === 'could-be');
  if (!counts(level)) return inSale ? 'Nobody could live on this level.' : 'This level is not lived in.';
  const lower = levels.filter((one) => counts(one) && one.order < level.order);
  const [lowest] = lower.sort((a, b) => a.order - b.order);
  if (!lowest) return '';
  return `${lowest.name || 'A level'} is lower and ${inSale ? 'could be lived in' : 'is lived in'}: test there.`;
}

/** The limit that is nearer to being broken; both when neither is clear. */
function checkHeight({ base, tall }: Cylinder, rule: EffectiveRule, tapeTolerance: Mm): Check[] {
  const rows: Check[] = [];
  if (rule.least !== null) rows.push(distanceCheck(rule, null, rule.least, base, tapeTolerance));
  if (rule.most !== null) rows.push(distanceCheck(rule, null, rule.most, base + tall, tapeTolerance, 'most'));
  return nearestAndNotClear(rows);
}

/**
 * Direct sun is not worked out yet. On a level that has an outside door or window it stands as not run; on one that has
 * none there is no sun to keep away from.
 */
function checkSun({ site, visit }: Plan, model: LevelModel, rule: EffectiveRule): Check[] {
  if (!model.openings.some(({ outside, opening }) => outside && opening.kind !== 'passage')) return [];
  const placed = site.latitude !== null && site.longitude !== null;
  const timed = visit.start !== null && visit.end !== null;
  const missing = [placed ? '' : 'the place of the house', timed ? '' : 'the times of the test'].filter(Boolean);
  const reason = missing.length
    ? `${capital(missing.join(' and '))} ${missing.length > 1 || !timed ? 'are' : 'is'} not given. Keep out of direct sun.`
    : 'The path of the sun is not worked out here. Keep out of direct sun.';
  return [{ ...wordCheck(rule, 'unknown', reason, true), required: rule.least }];
}

/** Rim to rim to every other detector of the same pair. A pair of one cannot be decided. */
function checkCompanion(plan: Plan, level: Level, detector: Detector, rule: EffectiveRule): Check[] {
  if (detector.pair === null) return [];
  const others = level.detectors.filter(({ id, pair }) => id !== detector.id && pair === detector.pair);
  if (others.length === 0) return [wordCheck(rule, 'unknown', 'The other detector of the pair is not on this level.')];
  const [x, y] = detector.at;
  return nearestAndNotClear(
    others.map((other) => {
      const body = { kind: 'disc', x: other.at[0], y: other.at[1], radius: other.radius, extent: NOWHERE } as const;
      const apart = Math.max(0, bodyDistance(body, x, y) - detector.radius);
      const short = rule.least === null ? null : distanceCheck(rule, other.id, rule.least, apart, plan.tapeTolerance);
      const far =
        rule.most === null ? null : distanceCheck(rule, other.id, rule.most, apart, plan.tapeTolerance, 'most');
      const row = !short || (far && (far.margin ?? 0) < (short.margin ?? 0)) ? far : short;
      const subject: Subject = { id: other.id, body, bottom: 0, top: 0, stream: false };
      return { ...(row as Check), witness: witnessTo(subject, detector, detector.at) };
    }),
  );
}

const NOWHERE = { minX: 0, minY: 0, maxX: 0, maxY: 0 };

function checkSubjects(plan: Plan, model: LevelModel, detector: Detector, rule: EffectiveRule): Check[] {
  const [x, y] = detector.at;
  /** The nearest body of each id: a wall has several pieces. A fixture's stream is a row of its own. */
  const nearest = new Map<string, { subject: Subject; measured: Mm }>();
  for (const subject of subjectsOf(rule, model)) {
    const measured = measureSubject(rule, subject, detector, x, y);
    if (measured === null) continue;
    const key = subject.stream ? `${subject.id} stream` : subject.id;
    const known = nearest.get(key);
    if (!known || measured < known.measured) nearest.set(key, { subject, measured });
  }
  const rows: { check: Check; subject: Subject }[] = [];
  for (const { subject, measured } of nearest.values()) {
    const check = distanceCheck(rule, subject.id, subject.stream ? 0 : (rule.least ?? 0), measured, plan.tapeTolerance);
    rows.push({ check: subject.stream ? { ...check, reason: 'Its stream of air.' } : check, subject });
  }
  const shown = new Set(nearestAndNotClear(rows.map(({ check }) => check)));
  return rows
    .filter(({ check }) => shown.has(check))
    .sort((a, b) => (a.check.margin ?? 0) - (b.check.margin ?? 0))
    .map(({ check, subject }) => ({ ...check, witness: witnessTo(subject, detector, detector.at) }));
}

/** Of several rows of one rule: the one with least to spare, and every one that is not clear; least to spare first. */
function nearestAndNotClear(rows: readonly Check[]): Check[] {
  const sorted = [...rows].sort((a, b) => (a.margin ?? 0) - (b.margin ?? 0));
  return sorted.filter((check, i) => i === 0 || check.verdict !== 'clear');
}
