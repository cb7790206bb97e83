import { measureSubject } from '../check/measure.ts';
import { roomAt, roomBar } from '../check/room.ts';
import { LIMIT_TOLERANCE, type Subject, subjectsOf } from '../check/subjects.ts';
import type { LevelModel } from '../level/types.ts';
import type { Mm, Plan, PlanObject, XY } from '../plan/model.ts';
import { bodyDistance, shapeBody, signedBodyDistance } from '../plane/body.ts';
import type { Probe } from '../region/types.ts';
import { type EffectiveRule, effectiveRules } from '../rules/profiles.ts';
import type { RuleId } from '../rules/types.ts';
import { roomFloor } from './room-floor.ts';

/** Why a detector may not be set lower, or higher. */
export interface HeightReason {
  /**
   * `floor` and `ceiling`: there is no more room, or the rule about the ceiling; `band`: the height band; `surface`: the top of
   * what is under the axis; `beside`: the top of what stands too near; `above`: what hangs or stands above.
   */
  readonly kind: 'floor' | 'ceiling' | 'band' | 'surface' | 'beside' | 'above';
  /** Null for the floor and the ceiling themselves. */
  readonly rule: RuleId | null;
  /** Id of the object; null where none is the reason. */
  readonly subject: string | null;
}

/** Heights of a detector's underside above the floor, mm, that are allowed: both ends, and all between. */
export interface HeightInterval {
  readonly from: Mm;
  readonly to: Mm;
  readonly below: HeightReason;
  readonly above: HeightReason;
}

/** What a check forgives, less 1e-9 mm: at the very end the last binary digit may decide against it, and no end may be blocked. */
const FORGIVEN: Mm = LIMIT_TOLERANCE - 1e-9;

type HeightProbe = Pick<Probe, 'radius' | 'tall'>;

/**
 * The heights at which a detector may be set with its axis at a point, the lowest first, and why each ends where it does. Ends are
 * the published limits, not the 0.1 mm that a check forgives; a height that only this allows is an interval of its own. Empty
 * where no height is allowed: outdoors, in a room that may hold none, or where a rule in plan or a wall blocks.
 */
export function heightsAt(plan: Plan, model: LevelModel, probe: HeightProbe, at: XY): HeightInterval[] {
  if (!standsAnywhere(plan, model, probe, at)) return [];
  const published = intervals(plan, model, probe, at, 0);
  const forgiven = intervals(plan, model, probe, at, FORGIVEN).filter(
    (one) => !published.some(({ from, to }) => from <= one.to && to >= one.from),
  );
  return [...published, ...forgiven].sort((a, b) => a.from - b.from);
}

/** What carries a detector. */
export interface Surface {
  readonly object: PlanObject;
  /** Above the floor, mm. */
  readonly top: Mm;
}

/** The highest object whose top carries a detector at a point, its whole rim on it; null for the floor. */
export function surfaceBelow(model: LevelModel, [x, y]: XY, radius: Mm): Surface | null {
  let best: PlanObject | null = null;
  for (const object of model.level.objects) {
    const carries = -signedBodyDistance(shapeBody(object.shape), x, y) >= radius - LIMIT_TOLERANCE;
    if (carries && (!best || object.top > best.top)) best = object;
  }
  return best && { object: best, top: best.top };
}

/** Whether what does not depend on the height allows a detector: the room and the rules in plan. */
function standsAnywhere(plan: Plan, model: LevelModel, { radius, tall }: HeightProbe, at: XY): boolean {
  const room = roomAt(model, at);
  if (!room || roomBar(room, plan.protocol).reason || roomFloor(room).depth(...at) < radius - LIMIT_TOLERANCE)
    return false;
  return effectiveRules(plan.protocol).every((rule) => {
    if (rule.measured !== 'plan') return true;
    return subjectsOf(rule, model).every((subject) => {
      if (!subject.stream && rule.least === null) return true;
      const measured = measureSubject(rule, subject, { base: 0, radius, tall }, ...at);
      return measured === null || measured - (subject.stream ? 0 : (rule.least ?? 0)) >= -LIMIT_TOLERANCE;
    });
  });
}

interface End {
  readonly height: Mm;
  readonly reason: HeightReason;
}

/** Heights between which none is allowed, the ends excluded. */
interface Barred {
  readonly from: End;
  readonly to: End;
}

/** The allowed intervals when every limit is met that is missed by no more than `forgiven`, mm. */
function intervals(plan: Plan, model: LevelModel, probe: HeightProbe, at: XY, forgiven: Mm): HeightInterval[] {
  const [lowest, highest] = band(plan, model, probe.tall, forgiven);
  const found: HeightInterval[] = [];
  let low = lowest;
  for (const { from, to } of barredByObjects(plan, model, probe, at, forgiven)) {
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

/** The lowest and the highest underside by the height band, the ceiling and the room itself. */
function band(plan: Plan, { level }: LevelModel, tall: Mm, forgiven: Mm): [End, End] {
  const lows: End[] = [{ height: 0, reason: { kind: 'floor', rule: null, subject: null } }];
  const highs: End[] = [{ height: level.ceiling - tall, reason: { kind: 'ceiling', rule: null, subject: null } }];
  for (const { id, subject, least, most } of effectiveRules(plan.protocol)) {
    const reason = (kind: 'band' | 'ceiling'): HeightReason => ({ kind, rule: id, subject: null });
    if (subject.of === 'height' && least !== null) lows.push({ height: least - forgiven, reason: reason('band') });
    if (subject.of === 'height' && most !== null)
      highs.push({ height: most - tall + forgiven, reason: reason('band') });
    if (subject.of === 'ceiling' && least !== null) {
      highs.push({ height: level.ceiling - tall - least + forgiven, reason: reason('ceiling') });
    }
  }
  return [lows.reduce((a, b) => (b.height > a.height ? b : a)), highs.reduce((a, b) => (b.height < a.height ? b : a))];
}

/** The heights that objects and walls bar at a point, the lowest first. */
function barredByObjects(plan: Plan, model: LevelModel, probe: HeightProbe, at: XY, forgiven: Mm): Barred[] {
  const barred: Barred[] = [];
  for (const rule of effectiveRules(plan.protocol)) {
    for (const subject of subjectsOf(rule, model)) {
      const one = rule.measured === 'space' ? barredBy(rule, subject, probe, at, forgiven) : null;
      const other = one ?? barredInside(rule, subject, probe, at);
      if (other) barred.push(other);
    }
  }
  return barred.sort((a, b) => a.from.height - b.from.height);
}

/** Down to so far below an object, and up to its top, it is too near. */
function barredBy(rule: EffectiveRule, subject: Subject, probe: HeightProbe, at: XY, forgiven: Mm): Barred | null {
  const need = (rule.least ?? 0) - forgiven;
  const inPlan = Math.max(0, bodyDistance(subject.body, ...at) - probe.radius);
  return inPlan < need ? barredFor(rule, subject, probe, at, Math.sqrt(need * need - inPlan * inPlan)) : null;
}

/** Whatever the limit, and without one: no detector stands inside a body that reaches its height. */
function barredInside(rule: EffectiveRule, subject: Subject, probe: HeightProbe, at: XY): Barred | null {
  const isOver = subject.solid && signedBodyDistance(subject.body, ...at) < probe.radius - LIMIT_TOLERANCE;
  return isOver ? barredFor(rule, subject, probe, at, 0) : null;
}

function barredFor(rule: EffectiveRule, subject: Subject, { tall }: HeightProbe, at: XY, drop: Mm): Barred {
  const reason = (kind: HeightReason['kind']): HeightReason => ({ kind, rule: rule.id, subject: subject.id });
  const isUnder = bodyDistance(subject.body, ...at) === 0;
  return {
    from: { height: subject.bottom - tall - drop, reason: reason('above') },
    to: { height: subject.top, reason: reason(isUnder ? 'surface' : 'beside') },
  };
}
