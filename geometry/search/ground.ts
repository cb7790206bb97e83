import { checkCeiling, checkHeight } from '../check/heights.ts';
import { roomBar } from '../check/room.ts';
import { isLevelWith, LIMIT_TOLERANCE, objectSubjects, type Subject } from '../check/subjects.ts';
import type { LevelModel, Room } from '../level/types.ts';
import type { Mm, Plan, PlanObject, XY } from '../plan/model.ts';
import { type Body, type Extent, overlaps, shapeBody, signedBodyDistance } from '../plane/body.ts';
import type { Probe } from '../region/types.ts';
import { effectiveRules } from '../rules/profiles.ts';
import { type MarginField, marginField } from './field/margin-field.ts';
import { roomFloor } from './room-floor.ts';
import { insetOf, isSeat } from './seats.ts';

/** Where detectors may be looked for: the floor of a room, or an object on it. */
export interface Ground {
  readonly room: Room;
  readonly field: MarginField;
  /** The object that carries the detector; null for any place at the probe's height. */
  readonly on: PlanObject | null;
  readonly extent: Extent;
  /** How far the whole rim lies inside the ground, mm; negative where some of it is out. Changes by at most the way moved. */
  inside(x: Mm, y: Mm): Mm;
}

/** What rounding may do to a distance, mm: a place on the very edge is not offered. */
const ROUNDING: Mm = 1e-9;

/**
 * The floor of every room that may hold a detector; none at a height that is barred on the whole level. An object whose top is
 * up to 3 mm above the probe carries it: such a top is a ground of its own, after the rooms.
 */
export function roomGrounds(plan: Plan, model: LevelModel, probe: Probe): Ground[] {
  const rooms = roomsAt(plan, model, probe);
  return [...rooms, ...raisedTops(model, probe, rooms)];
}

function roomsAt(plan: Plan, model: LevelModel, probe: Probe): Ground[] {
  if (!heightAllowed(plan, model, probe)) return [];
  const field = marginField(plan, model, probe);
  const least = probe.radius - LIMIT_TOLERANCE + ROUNDING;
  return allowedRooms(plan, model).map((room) => {
    const { extent, depth } = roomFloor(room);
    return { room, field, on: null, extent, inside: (x, y) => depth(x, y) - least };
  });
}

function raisedTops(model: LevelModel, probe: Probe, rooms: readonly Ground[]): Ground[] {
  const raised = objectSubjects(model.level.objects).filter(
    (subject) => subject.top > probe.base && isLevelWith(subject, probe),
  );
  const [first] = rooms;
  if (!first) return [];
  const open = first.field;
  return overlapping(raised).flatMap((stack) => {
    const [{ body }] = stack;
    const field = open.on(
      stack.map(({ id }) => id),
      body.extent,
    );
    const depth = (x: Mm, y: Mm) => Math.min(...stack.map((one) => onTop(one.body, x, y))) - footOf(probe);
    return rooms
      .filter(({ extent }) => overlaps(extent, body.extent))
      .map((ground) => ({
        ...ground,
        field,
        extent: body.extent,
        inside: (x, y) => Math.min(ground.inside(x, y), depth(x, y)),
      }));
  });
}

/** Each thing alone, and things that lie over one another together, up to three: a foot may stand on all of them. */
function overlapping(things: readonly Subject[]): (readonly [Subject, ...Subject[]])[] {
  const over = (a: Subject, b: Subject) => overlaps(a.body.extent, b.body.extent);
  return things.flatMap((a, i) => {
    const above = things.slice(i + 1).filter((b) => over(a, b));
    return [
      [a] as const,
      ...above.map((b) => [a, b] as const),
      ...above.flatMap((b, k) => above.slice(k + 1).map((c) => [a, b, c] as const)),
    ];
  });
}

/** How far the axis has to be inside the outline of what carries it, mm. */
function footOf({ radius }: Pick<Probe, 'radius'>): Mm {
  return Math.max(0, radius - LIMIT_TOLERANCE) + ROUNDING;
}

/** How far a point lies inside a body's outline, mm; negative outside. */
function onTop(body: Body, x: Mm, y: Mm): Mm {
  return -signedBodyDistance(body, x, y);
}

/** How the foot may stand on a thing: off its edge, as far as its size allows, or anywhere wholly on it. */
export type Footing = 'off-edge' | 'on-it';

/**
 * Every object that can carry the probe in a room that may hold one: its top at an allowed height, the whole foot on it, and no sofa
 * or bed. In the order of the level.
 */
export function objectGrounds(
  plan: Plan,
  model: LevelModel,
  probe: Pick<Probe, 'radius' | 'tall'>,
  footing: Footing,
): Ground[] {
  const grounds = new Map<Mm, Ground[]>();
  return model.level.objects.flatMap((object) => {
    if (isSeat(object)) return [];
    let rooms = grounds.get(object.top);
    if (!rooms) {
      rooms = roomsAt(plan, model, { ...probe, base: object.top });
      grounds.set(object.top, rooms);
    }
    return rooms.flatMap((ground) => groundOn(ground, object, probe, footing) ?? []);
  });
}

/** The part of a room's ground that lies on an object; null where they do not meet. */
export function groundOn(
  ground: Ground,
  object: PlanObject,
  probe: Pick<Probe, 'radius'>,
  footing: Footing,
): Ground | null {
  const body = shapeBody(object.shape);
  if (!overlaps(ground.extent, body.extent)) return null;
  const least = footing === 'on-it' ? footOf(probe) : insetOf(object, probe.radius) - LIMIT_TOLERANCE + ROUNDING;
  return {
    ...ground,
    on: object,
    extent: body.extent,
    inside: (x, y) => Math.min(ground.inside(x, y), onTop(body, x, y) - least),
  };
}

/** What the worst of several detectors has to spare, mm; null where some rim is not inside. */
export function marginOfAll({ field, inside }: Ground, at: readonly XY[]): Mm | null {
  let least = Number.POSITIVE_INFINITY;
  for (const [x, y] of at) {
    if (inside(x, y) < 0) return null;
    least = Math.min(least, field.margin(x, y));
  }
  return least;
}

/** Whether the height band and the ceiling let a probe be where it is. */
function heightAllowed(plan: Plan, model: LevelModel, probe: Probe): boolean {
  return effectiveRules(plan.protocol).every((rule) => {
    const { of } = rule.subject;
    if (of === 'height') return checkHeight(probe, rule, 0).every(({ verdict }) => verdict !== 'blocked');
    if (of !== 'ceiling') return true;
    return checkCeiling(model.level, probe, rule, 0).every(({ verdict }) => verdict !== 'blocked');
  });
}

function allowedRooms(plan: Plan, model: LevelModel): Room[] {
  return model.rooms.filter((room) => !roomBar(room, plan.protocol).reason && room.floorRings.length > 0);
}
