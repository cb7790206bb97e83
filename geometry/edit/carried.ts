import { LIMIT_TOLERANCE, SUPPORT_TOLERANCE } from '../check/subjects.ts';
import { standsOn, supports } from '../check/support.ts';
import type { Detector, Level, Mm, PlanObject, Shape, XY } from '../plan/model.ts';
import { bodyDistance, shapeBody, shapeRing } from '../plane/body.ts';
import { sameIfUnchanged } from '../plane/memoize.ts';
import { roundCoordinate } from '../plane/point.ts';
import { addAngles, type RigidMotion, rigidMotion, transformPoint, transformShape } from '../plane/rigid-motion.ts';

/** Detectors that stood on a piece of furniture with their whole foot, are on the level still and stand on nothing now. */
export function lostCarriers(before: Level, after: Level): readonly Detector[] {
  if (before.objects === after.objects && before.detectors === after.detectors) return [];
  const old = new Map(before.detectors.map((detector) => [detector.id, detector]));
  return after.detectors.filter((detector) => {
    const was = old.get(detector.id);
    const told = detector.support === 'hung' || detector.support === 'stand';
    return was && !told && isCarried(before, was) && !isCarried(after, detector);
  });
}

function isCarried({ objects }: Level, detector: Detector): boolean {
  return objects.some((object) => supports(object, detector));
}

/** How an edit moved a piece of furniture, and how far up its top went, mm. */
interface Carriage {
  readonly object: PlanObject;
  /** Null where it was made another size: what stands on it keeps its place. */
  readonly motion: RigidMotion | null;
  readonly lift: Mm;
}

/**
 * What stands on furniture moved, turned and lifted with it: detectors, and things that stand on it with all of their footprint
 * with what they carry in turn. The same level where nothing that carries anything changed.
 * @param before the level before an edit
 * @param after the same level with its furniture elsewhere
 * @param placed ids of what the edit has put where it belongs itself
 */
export function withLoad(before: Level, after: Level, placed: ReadonlySet<string>): Level {
  if (before.objects === after.objects) return after;
  const done = new Set(placed);
  let next = after;
  const waiting = before.objects.flatMap((object) => carriageOf(object, after) ?? []);
  for (let carriage = waiting.shift(); carriage; carriage = waiting.shift()) {
    const { object, motion, lift } = carriage;
    const things = [...before.objects, ...before.fixtures].filter(
      (thing) => thing.id !== object.id && !done.has(thing.id) && standsWholly(thing, object),
    );
    const riders = new Set([
      ...things.map(({ id }) => id),
      ...before.detectors.filter((one) => !done.has(one.id) && standsOn(one, object)).map(({ id }) => id),
    ]);
    for (const id of riders) done.add(id);
    next = withRiders(next, riders, carriage);
    waiting.push(...before.objects.filter(({ id }) => riders.has(id)).map((each) => ({ object: each, motion, lift })));
  }
  return next;
}

/** Null where neither its place nor its top changed. */
function carriageOf(object: PlanObject, after: Level): Carriage | null {
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

function withRiders(level: Level, riders: ReadonlySet<string>, { motion, lift }: Carriage): Level {
  if (riders.size === 0) return level;
  const place = (at: XY): XY => (motion ? transformPoint(at, motion) : at);
  const up = (mm: Mm): Mm => (lift === 0 ? mm : roundCoordinate(mm + lift));
  const solid = <T extends { readonly id: string; readonly shape: Shape; readonly bottom: Mm; readonly top: Mm }>(
    thing: T,
  ): T =>
    riders.has(thing.id)
      ? {
          ...thing,
          shape: motion ? transformShape(thing.shape, motion) : thing.shape,
          bottom: up(thing.bottom),
          top: up(thing.top),
        }
      : thing;
  const fixtures = level.fixtures.map((fixture) => {
    const moved = solid(fixture);
    if (moved === fixture || !moved.stream || !motion) return moved;
    return { ...moved, stream: { ...moved.stream, direction: addAngles(moved.stream.direction, motion.turn) } };
  });
  const detectors = level.detectors.map((detector) =>
    riders.has(detector.id) ? { ...detector, at: place(detector.at), base: Math.max(0, up(detector.base)) } : detector,
  );
  return {
    ...level,
    objects: sameIfUnchanged(level.objects, level.objects.map(solid)),
    fixtures: sameIfUnchanged(level.fixtures, fixtures),
    detectors: sameIfUnchanged(level.detectors, detectors),
  };
}
