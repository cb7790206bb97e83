import { checkDetector } from '../check/check-detector.ts';
import { checkCeiling, checkHeight } from '../check/heights.ts';
import { roomAt, roomBar } from '../check/room.ts';
import type { Check } from '../check/types.ts';
import { SIDES, type Side } from '../dimension/wall-gaps.ts';
import type { LevelModel, Room } from '../level/types.ts';
import type { Detector, Fixture, Level, Mm, Plan, PlanObject, Shape, XY } from '../plan/model.ts';
import { type Body, bodyDistance, shapeBody, shapeMiddle, signedBodyDistance } from '../plane/body.ts';
import { translateShape } from '../plane/rigid-motion.ts';
import { LIMIT_TOLERANCE } from '../plane/tolerances.ts';
import { JUST_INSIDE } from '../region/nearest.ts';
import type { Probe } from '../region/types.ts';
import { effectiveRules } from '../rules/profiles.ts';
import { outlineOf } from '../snap/face-gap.ts';
import { shapeInWall } from '../snap/in-wall.ts';
import { marginField } from './field/margin-field.ts';
import { companionGap, rotatedOffsets } from './group-shapes.ts';
import { limitCheck } from './limit-check.ts';
import { roomFloor } from './room-floor.ts';
import { footprintInset, isSeat } from './seats.ts';

/** Whether an object is a good place for detectors, and if not, what would make it one. Lengths in mm. */
export type FurnitureVerdict =
  /** Its best positions pass: the axes with the greatest margin. */
  | { readonly kind: 'good'; readonly at: readonly XY[]; readonly margin: Mm }
  /** People sit or lie on it. */
  | { readonly kind: 'seat' }
  /** Its top is too low or too high. */
  | { readonly kind: 'height'; readonly check: Check }
  /** The footprint of one detector, or of all, does not fit on it. */
  | { readonly kind: 'small' }
  /** The room allows no detector, or it is in no room. */
  | { readonly kind: 'room'; readonly reason: string }
  /**
   * Too close to something: the check with the smallest margin at its best position, and the shortest helpful move
   * along a page axis.
   */
  | { readonly kind: 'near'; readonly check: Check | null; readonly move: FurnitureMove | null };

export interface FurnitureMove {
  readonly side: Side;
  readonly by: Mm;
  readonly way: XY;
}

/** Number of positions tried on a top, per axis, and rotations of a pair. */
const GRID = 9;
const TURNS: readonly number[] = [0, 45, 90, 135].map((turn) => (turn * Math.PI) / 180);
/** Greatest move that is tried, mm: 10 ft. */
const FARTHEST: Mm = 3048;
const STEP: Readonly<Record<Side, XY>> = { left: [-1, 0], right: [1, 0], up: [0, -1], down: [0, 1] };

type Size = Pick<Probe, 'radius' | 'tall'>;

/**
 * Returns whether one detector, or two side by side, may stand on an object; if not, why not and how far to move it:
 * along a page axis, in whole steps, within its room and without intersecting walls or items, until every rule is met
 * with the tape tolerance to spare.
 *
 * @param step step of a move, mm: an inch or 5 cm, so that the text states it exactly
 */
export function furnitureVerdict(
  plan: Plan,
  model: LevelModel,
  object: PlanObject,
  size: Size,
  members: 1 | 2,
  step: Mm,
): FurnitureVerdict {
  if (isSeat(object)) return { kind: 'seat' };
  const probe: Probe = { ...size, base: object.top };
  const tooHigh = heightTrouble(plan, model.level, probe);
  if (tooHigh) return { kind: 'height', check: tooHigh };
  const room = roomAt(model, shapeMiddle(object.shape));
  const { reason } = roomBar(room, plan.protocol);
  if (!room || reason) return { kind: 'room', reason };
  const places = placesOn(plan, object, probe, members);
  if (places.length === 0) return { kind: 'small' };
  const margin = marginIn(plan, model, room, probe);
  const best = bestOf(places, [0, 0], margin);
  if (best.margin >= 0) return { kind: 'good', ...best };
  const scene: Scene = { plan, model, object, probe, room, places, margin, step };
  return { kind: 'near', check: tightest(plan, model, probe, best.at), move: shortestMove(scene) };
}

function heightTrouble(plan: Plan, level: Level, probe: Probe): Check | null {
  const rows = effectiveRules(plan.protocol).flatMap((rule) => {
    if (rule.subject.of === 'height') return checkHeight(probe, rule, 0);
    return rule.subject.of === 'ceiling' ? checkCeiling(level, probe, rule, 0) : [];
  });
  return rows.find(({ verdict }) => verdict === 'blocked') ?? null;
}

/** Returns axes on the top, each with its whole footprint away from the edges; a pair at the best gap. */
function placesOn(plan: Plan, object: PlanObject, { radius }: Probe, members: 1 | 2): readonly (readonly XY[])[] {
  const body = shapeBody(object.shape);
  const { minX, minY, maxX, maxY } = body.extent;
  const inset = footprintInset(object, radius) - LIMIT_TOLERANCE;
  const half = radius + companionGap(plan).best / 2;
  const offsets: readonly XY[] =
    members === 1
      ? [[0, 0]]
      : [
          [-half, 0],
          [half, 0],
        ];
  const own = 'box' in object.shape ? (object.shape.box.turn * Math.PI) / 180 : 0;
  const turns = members === 1 ? [0] : TURNS.map((turn) => turn + own);
  const [x0, y0] = shapeMiddle(object.shape);
  const share = Array.from({ length: GRID }, (_, k) => k / (GRID - 1) - 0.5);
  return share
    .flatMap((i) => share.map((j): XY => [x0 + i * (maxX - minX), y0 + j * (maxY - minY)]))
    .flatMap(([x, y]) => turns.map((turn) => rotatedOffsets(offsets, x, y, turn)))
    .filter((at) => at.every(([x, y]) => -signedBodyDistance(body, x, y) >= inset));
}

type MarginAt = (at: XY) => Mm;

/** Returns the margin at a point: the least over the rules, or the negative distance of the rim outside the room. */
function marginIn(plan: Plan, model: LevelModel, room: Room, probe: Probe): MarginAt {
  const field = marginField(plan, model, probe);
  const { depth } = roomFloor(room);
  return ([x, y]) => {
    const inside = depth(x, y) - probe.radius + LIMIT_TOLERANCE;
    return inside < 0 ? Math.min(inside, field.margin(x, y)) : field.margin(x, y);
  };
}

function bestOf(places: readonly (readonly XY[])[], [dx, dy]: XY, margin: MarginAt): { at: readonly XY[]; margin: Mm } {
  let best: { at: readonly XY[]; margin: Mm } = { at: [], margin: Number.NEGATIVE_INFINITY };
  for (const place of places) {
    const at = place.map(([x, y]): XY => [x + dx, y + dy]);
    const least = Math.min(...at.map(margin));
    if (least > best.margin) best = { at, margin: least };
  }
  return best;
}

function tightest(plan: Plan, model: LevelModel, probe: Probe, at: readonly XY[]): Check | null {
  const field = marginField(plan, model, probe);
  const [worst] = [...at].sort((a, b) => field.margin(...a) - field.margin(...b));
  const limit = worst && field.limitedBy(...worst);
  return limit ? limitCheck(plan, model, probe, at, limit) : null;
}

interface Scene {
  readonly plan: Plan;
  readonly model: LevelModel;
  readonly object: PlanObject;
  readonly probe: Probe;
  readonly room: Room;
  readonly places: readonly (readonly XY[])[];
  readonly margin: MarginAt;
  readonly step: Mm;
}

function shortestMove(scene: Scene): FurnitureMove | null {
  const { plan, places, margin, step } = scene;
  const need = plan.tapeTolerance + JUST_INSIDE;
  for (let by = step; by <= FARTHEST; by += step) {
    for (const side of SIDES) {
      const way: XY = [STEP[side][0] * by || 0, STEP[side][1] * by || 0];
      const best = bestOf(places, way, margin);
      if (best.margin >= need && standsFree(scene, way) && passes(scene, way, best.at)) return { side, by, way };
    }
  }
  return null;
}

/** Returns whether the moved object is in its room and intersects nothing. */
function standsFree({ model, object, room }: Scene, way: XY): boolean {
  const shape = translateShape(object.shape, way);
  if (roomAt(model, shapeMiddle(shape)) !== room || shapeInWall(model, shape)) return false;
  const body = shapeBody(shape);
  return [...model.level.objects, ...model.level.fixtures]
    .filter((other) => other.id !== object.id && other.top > object.bottom && other.bottom < object.top)
    .every((other) => !overlaps(body, shape, other));
}

function overlaps(body: Body, shape: Shape, other: PlanObject | Fixture): boolean {
  const [own, theirs] = [outlineOf(shape), outlineOf(other.shape)];
  const otherBody = shapeBody(other.shape);
  return (
    own.points.some(
      ([x, y]) => bodyDistance(otherBody, x, y) < own.radius || signedBodyDistance(otherBody, x, y) < 0,
    ) || theirs.points.some(([x, y]) => bodyDistance(body, x, y) < theirs.radius || signedBodyDistance(body, x, y) < 0)
  );
}

/** Runs the checks on the moved object. */
function passes({ plan, model, object, probe }: Scene, way: XY, at: readonly XY[]): boolean {
  const objects = model.level.objects.map((each) =>
    each.id === object.id ? { ...each, shape: translateShape(each.shape, way) } : each,
  );
  const moved: LevelModel = { ...model, level: { ...model.level, objects, detectors: [] } };
  return at.every((axis) => {
    const detector: Detector = { ...probe, id: '', label: '', at: axis, pair: null };
    return checkDetector(plan, moved, detector).checks.every(({ verdict, notRun }) => notRun || verdict !== 'blocked');
  });
}
