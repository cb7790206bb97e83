import { measureSubject } from '../check/measure.ts';
import { roomAt, roomBar } from '../check/room.ts';
import { type Subject, subjectsOf } from '../check/subjects.ts';
import type { LevelModel } from '../level/types.ts';
import type { Mm, Plan, PlanObject, XY } from '../plan/model.ts';
import { bodyDistance, shapeBody, signedBodyDistance } from '../plane/body.ts';
import { LIMIT_TOLERANCE } from '../plane/tolerances.ts';
import type { Probe } from '../region/types.ts';
import { type EffectiveRule, effectiveRules } from '../rules/profiles.ts';
import type { RuleId } from '../rules/types.ts';
import { roomFloor } from './room-floor.ts';
import { sunnyHeights } from './sunny-heights.ts';

/** Why a detector may not be lower, or higher. */
export interface HeightReason {
  /**
   * `floor` and `ceiling`: no more room, or the ceiling rule; `band`: the height band; `surface`: the top of the object
   * under the axis; `beside`: the top of a nearby item; `above`: an item above; `sun`: direct sun through an opening.
   */
  readonly kind: 'floor' | 'ceiling' | 'band' | 'surface' | 'beside' | 'above' | 'sun';
  /** Null for the floor and the ceiling themselves. */
  readonly rule: RuleId | null;
  /** Id of the object or the opening; null for other reasons. */
  readonly subject: string | null;
}

/** An interval of allowed base heights above the floor, mm, both ends included. */
export interface HeightInterval {
  readonly from: Mm;
  readonly to: Mm;
  readonly below: HeightReason;
  readonly above: HeightReason;
}

/** The limit tolerance minus 1e-9 mm: at the exact end, rounding could block, and no end may be blocked. */
const END_TOLERANCE: Mm = LIMIT_TOLERANCE - 1e-9;

type HeightProbe = Pick<Probe, 'radius' | 'tall'>;

/**
 * Returns the allowed base heights of a detector with its axis at a point, from low to high, and why each interval
 * ends. Ends are the published limits, without the limit tolerance (0.1 mm); a height that only the tolerance allows
 * is an interval of its own. Empty if no height is allowed: outdoors, in an excluded room, or where a rule in plan or
 * a wall blocks.
 */
export function heightsAt(plan: Plan, model: LevelModel, probe: HeightProbe, at: XY): HeightInterval[] {
  if (!standsAnywhere(plan, model, probe, at)) return [];
  const published = intervals(plan, model, probe, at, 0);
  const tolerance = intervals(plan, model, probe, at, END_TOLERANCE).filter(
    (one) => !published.some(({ from, to }) => from <= one.to && to >= one.from),
  );
  return [...published, ...tolerance].sort((a, b) => a.from - b.from);
}

/** An object that supports a detector. */
export interface Surface {
  readonly object: PlanObject;
  /** Above the floor, mm. */
  readonly top: Mm;
}

/** Returns the highest object whose top supports a detector at a point, under its whole rim; null for the floor. */
export function surfaceBelow(model: LevelModel, [x, y]: XY, radius: Mm): Surface | null {
  let best: PlanObject | null = null;
  for (const object of model.level.objects) {
    const carries = -signedBodyDistance(shapeBody(object.shape), x, y) >= radius - LIMIT_TOLERANCE;
    if (carries && (!best || object.top > best.top)) best = object;
  }
  return best && { object: best, top: best.top };
}

/** Returns whether the height-independent rules allow a detector: the room and the rules in plan. */
function standsAnywhere(plan: Plan, model: LevelModel, { radius, tall }: HeightProbe, at: XY): boolean {
  const room = roomAt(model, at);
  if (!room || roomBar(room, plan.protocol).reason || roomFloor(room).depth(...at) < radius - LIMIT_TOLERANCE)
    return false;
  return effectiveRules(plan.protocol).every((rule) => {
    if (rule.measured !== 'plan') return true;
    return subjectsOf(rule, model).every((subject) => {
      if (!subject.keepOut && rule.least === null) return true;
      const measured = measureSubject(rule, subject, { base: 0, radius, tall }, ...at);
      return measured === null || measured - (subject.keepOut ? 0 : (rule.least ?? 0)) >= -LIMIT_TOLERANCE;
    });
  });
}

interface End {
  readonly height: Mm;
  readonly reason: HeightReason;
}

/** An open interval of blocked heights. */
interface BlockedInterval {
  readonly from: End;
  readonly to: End;
}

/** Returns the allowed intervals when every limit may be missed by `tolerance`, mm. */
function intervals(plan: Plan, model: LevelModel, probe: HeightProbe, at: XY, tolerance: Mm): HeightInterval[] {
  const [lowest, highest] = band(plan, model, probe.tall, tolerance);
  const found: HeightInterval[] = [];
  let low = lowest;
  const blocked = [
    ...blockedByObjects(plan, model, probe, at, tolerance),
    ...blockedBySun(plan, model, probe, at, [lowest.height, highest.height]),
  ].sort((a, b) => a.from.height - b.from.height);
  for (const { from, to } of blocked) {
    if (to.height <= low.height) continue;
    if (from.height >= highest.height) break;
    if (from.height >= low.height) found.push(interval(low, from));
    low = to;
  }
  if (low.height <= highest.height) found.push(interval(low, highest));
  return found;
}

function interval(low: End, high: End): HeightInterval {
  return { from: low.height, to: high.height, below: low.reason, above: high.reason };
}

/** Returns the lowest and highest base height by the height band, the ceiling and the room itself. */
function band(plan: Plan, { level }: LevelModel, tall: Mm, tolerance: Mm): [End, End] {
  const lows: End[] = [{ height: 0, reason: { kind: 'floor', rule: null, subject: null } }];
  const highs: End[] = [{ height: level.ceiling - tall, reason: { kind: 'ceiling', rule: null, subject: null } }];
  for (const { id, subject, least, most } of effectiveRules(plan.protocol)) {
    const reason = (kind: 'band' | 'ceiling'): HeightReason => ({ kind, rule: id, subject: null });
    if (subject.of === 'height' && least !== null) lows.push({ height: least - tolerance, reason: reason('band') });
    if (subject.of === 'height' && most !== null)
      highs.push({ height: most - tall + tolerance, reason: reason('band') });
    if (subject.of === 'ceiling' && least !== null) {
      highs.push({ height: level.ceiling - tall - least + tolerance, reason: reason('ceiling') });
    }
  }
  return [lows.reduce((a, b) => (b.height > a.height ? b : a)), highs.reduce((a, b) => (b.height < a.height ? b : a))];
}

/** Returns the heights that objects and walls block at a point. */
function blockedByObjects(plan: Plan, model: LevelModel, probe: HeightProbe, at: XY, tolerance: Mm): BlockedInterval[] {
  const blocked: BlockedInterval[] = [];
  for (const rule of effectiveRules(plan.protocol)) {
    for (const subject of subjectsOf(rule, model)) {
      const one = rule.measured === 'space' ? blockedBy(rule, subject, probe, at, tolerance) : null;
      const other = one ?? blockedInside(rule, subject, probe, at);
      if (other) blocked.push(other);
    }
  }
  return blocked;
}

/** Returns the heights at which direct sun blocks a point, if the sun is computed. The ends are found to 25 mm. */
function blockedBySun(
  plan: Plan,
  model: LevelModel,
  probe: HeightProbe,
  at: XY,
  range: readonly [Mm, Mm],
): BlockedInterval[] {
  return effectiveRules(plan.protocol)
    .filter(({ subject }) => subject.of === 'sun')
    .flatMap((rule) =>
      sunnyHeights(plan, model, rule, probe, at, range).map(({ from, to, opening }) => {
        const reason: HeightReason = { kind: 'sun', rule: rule.id, subject: opening };
        return { from: { height: from, reason }, to: { height: to, reason } };
      }),
    );
}

/** Returns the heights at which a detector is too close to an object: from some distance below it up to its top. */
function blockedBy(
  rule: EffectiveRule,
  subject: Subject,
  probe: HeightProbe,
  at: XY,
  tolerance: Mm,
): BlockedInterval | null {
  const need = (rule.least ?? 0) - tolerance;
  const inPlan = Math.max(0, bodyDistance(subject.body, ...at) - probe.radius);
  return inPlan < need ? blockedFor(rule, subject, probe, at, Math.sqrt(need * need - inPlan * inPlan)) : null;
}

/** Returns the heights at which a detector intersects a body, which is never allowed, whatever the limit. */
function blockedInside(rule: EffectiveRule, subject: Subject, probe: HeightProbe, at: XY): BlockedInterval | null {
  const isOver = subject.solid && signedBodyDistance(subject.body, ...at) < probe.radius - LIMIT_TOLERANCE;
  return isOver ? blockedFor(rule, subject, probe, at, 0) : null;
}

function blockedFor(rule: EffectiveRule, subject: Subject, { tall }: HeightProbe, at: XY, drop: Mm): BlockedInterval {
  const reason = (kind: HeightReason['kind']): HeightReason => ({ kind, rule: rule.id, subject: subject.id });
  const isUnder = bodyDistance(subject.body, ...at) === 0;
  return {
    from: { height: subject.bottom - tall - drop, reason: reason('above') },
    to: { height: subject.top, reason: reason(isUnder ? 'surface' : 'beside') },
  };
}
