import { SUPPORT_TOLERANCE } from '../check/subjects.ts';
import { standsOn, supports } from '../check/support.ts';
import type { Detector, Level, Mm, PlanObject, Shape, XY } from '../plan/model.ts';
import { bodyDistance, shapeBody, shapeRing } from '../plane/body.ts';
import { sameIfUnchanged } from '../plane/memoize.ts';
import { roundCoordinate } from '../plane/point.ts';
import { addAngles, type RigidMotion, rigidMotion, transformPoint, transformShape } from '../plane/rigid-motion.ts';
import { LIMIT_TOLERANCE } from '../plane/tolerances.ts';

/**
 * Returns the detectors that were supported by an object before an edit, are still on the level and are supported by
 * nothing now.
 */
export function detectorsWithoutSupport(before: Level, after: Level): readonly Detector[] {
  if (before.objects === after.objects && before.detectors === after.detectors) return [];
  const old = new Map(before.detectors.map((detector) => [detector.id, detector]));
  return after.detectors.filter((detector) => {
    const was = old.get(detector.id);
    const stated = detector.support === 'hung' || detector.support === 'stand';
    return was && !stated && isSupported(before, was) && !isSupported(after, detector);
  });
}

function isSupported({ objects }: Level, detector: Detector): boolean {
  return objects.some((object) => supports(object, detector));
}

/** How an edit moved an object, and by how much its top rose, mm. */
interface SupportMove {
  readonly object: PlanObject;
  /** Null if it was resized: items on it stay where they are. */
  readonly motion: RigidMotion | null;
  readonly lift: Mm;
}

/**
 * Moves, rotates and lifts whatever is on top of changed objects along with them: detectors, and items with their
 * whole footprint on the object, with what is on those in turn. Returns the same level if no such object changed.
 *
 * @param before the level before an edit
 * @param after the same level with its objects moved
 * @param placed ids of items that the edit itself positioned
 */
export function withSupportedItems(before: Level, after: Level, placed: ReadonlySet<string>): Level {
  if (before.objects === after.objects) return after;
  const done = new Set(placed);
  let next = after;
  const waiting = before.objects.flatMap((object) => supportMove(object, after) ?? []);
  for (let move = waiting.shift(); move; move = waiting.shift()) {
    const { object, motion, lift } = move;
    const items = [...before.objects, ...before.fixtures].filter(
      (item) => item.id !== object.id && !done.has(item.id) && standsWholly(item, object),
    );
    const supported = new Set([
      ...items.map(({ id }) => id),
      ...before.detectors.filter((one) => !done.has(one.id) && standsOn(one, object)).map(({ id }) => id),
    ]);
    for (const id of supported) done.add(id);
    next = moveSupported(next, supported, move);
    waiting.push(
      ...before.objects.filter(({ id }) => supported.has(id)).map((each) => ({ object: each, motion, lift })),
    );
  }
  return next;
}

/** Returns null if neither its position nor its top changed. */
function supportMove(object: PlanObject, after: Level): SupportMove | null {
  const now = after.objects.find(({ id }) => id === object.id);
  if (!now || now === object) return null;
  const motion = rigidMotion(object.shape, now.shape);
  const still = !motion || (motion.turn === 0 && motion.from[0] === motion.to[0] && motion.from[1] === motion.to[1]);
  const lift = now.top - object.top;
  return still && lift === 0 ? null : { object, motion: still ? null : motion, lift };
}

interface Solid {
  readonly shape: Shape;
  readonly bottom: Mm;
}

function standsWholly({ shape, bottom }: Solid, { shape: under, top }: PlanObject): boolean {
  if (top <= 0 || Math.abs(bottom - top) > SUPPORT_TOLERANCE) return false;
  const body = shapeBody(under);
  return shapeRing(shape).every(([x, y]) => bodyDistance(body, x, y) <= LIMIT_TOLERANCE);
}

function moveSupported(level: Level, supported: ReadonlySet<string>, { motion, lift }: SupportMove): Level {
  if (supported.size === 0) return level;
  const place = (at: XY): XY => (motion ? transformPoint(at, motion) : at);
  const up = (mm: Mm): Mm => (lift === 0 ? mm : roundCoordinate(mm + lift));
  const solid = <T extends { readonly id: string; readonly shape: Shape; readonly bottom: Mm; readonly top: Mm }>(
    item: T,
  ): T =>
    supported.has(item.id)
      ? {
          ...item,
          shape: motion ? transformShape(item.shape, motion) : item.shape,
          bottom: up(item.bottom),
          top: up(item.top),
        }
      : item;
  const fixtures = level.fixtures.map((fixture) => {
    const moved = solid(fixture);
    if (moved === fixture || !moved.stream || !motion) return moved;
    return { ...moved, stream: { ...moved.stream, direction: addAngles(moved.stream.direction, motion.turn) } };
  });
  const detectors = level.detectors.map((detector) =>
    supported.has(detector.id)
      ? { ...detector, at: place(detector.at), base: Math.max(0, up(detector.base)) }
      : detector,
  );
  return {
    ...level,
    objects: sameIfUnchanged(level.objects, level.objects.map(solid)),
    fixtures: sameIfUnchanged(level.fixtures, fixtures),
    detectors: sameIfUnchanged(level.detectors, detectors),
  };
}
