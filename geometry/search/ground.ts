import { checkCeiling, checkHeight } from '../check/heights.ts';
import { roomBars } from '../check/room.ts';
import { isLevelWith, objectSubjects, type Subject } from '../check/subjects.ts';
import type { LevelModel, Room } from '../level/types.ts';
import type { Mm, Plan, PlanObject, XY } from '../plan/model.ts';
import { type Body, shapeBody, signedBodyDistance } from '../plane/body.ts';
import { type Extent, overlaps } from '../plane/extent.ts';
import { LIMIT_TOLERANCE } from '../plane/tolerances.ts';
import type { Probe } from '../region/types.ts';
import { effectiveRules } from '../rules/profiles.ts';
import { type MarginField, marginField } from './field/margin-field.ts';
import { roomFloor } from './room-floor.ts';
import { footprintInset, isSeat } from './seats.ts';

/** Where detectors may be placed: the floor of a room, or an object on it. */
export interface Ground {
  readonly room: Room;
  readonly field: MarginField;
  /** The object that supports the detector; null for any position at the probe's height. */
  readonly on: PlanObject | null;
  readonly extent: Extent;
  /** How far the whole rim is inside the ground, mm; negative if part of it is outside. 1-Lipschitz. */
  inside(x: Mm, y: Mm): Mm;
}

/** Rounding of a distance, mm: a position exactly on the edge is not offered. */
const ROUNDING: Mm = 1e-9;

/**
 * Returns the floor of every room that allows a detector; none at a height that is excluded on the whole level. An
 * object whose top is up to 3 mm above the probe's base supports it: such a top is a ground of its own, after the
 * rooms.
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

/** Returns each item alone, and overlapping items together, up to three, because a footprint may be on all of them. */
function overlapping(items: readonly Subject[]): (readonly [Subject, ...Subject[]])[] {
  const over = (a: Subject, b: Subject) => overlaps(a.body.extent, b.body.extent);
  return items.flatMap((a, i) => {
    const above = items.slice(i + 1).filter((b) => over(a, b));
    return [
      [a] as const,
      ...above.map((b) => [a, b] as const),
      ...above.flatMap((b, k) => above.slice(k + 1).map((c) => [a, b, c] as const)),
    ];
  });
}

/** How far the axis must be inside the outline of the supporting item, mm. */
function footOf({ radius }: Pick<Probe, 'radius'>): Mm {
  return Math.max(0, radius - LIMIT_TOLERANCE) + ROUNDING;
}

/** Returns how far a point is inside a body's outline, mm; negative outside. */
function onTop(body: Body, x: Mm, y: Mm): Mm {
  return -signedBodyDistance(body, x, y);
}

/** How the footprint may be on an item: away from its edge, as far as its size allows, or anywhere wholly on it. */
export type Footing = 'off-edge' | 'on-it';

/**
 * Returns every object that can support the probe in a room that allows a detector: its top at an allowed height, large
 * enough for the footprint, and no sofa or bed. In file order.
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

/** Returns the part of a room's ground on an object; null if they do not meet. */
export function groundOn(
  ground: Ground,
  object: PlanObject,
  probe: Pick<Probe, 'radius'>,
  footing: Footing,
): Ground | null {
  const body = shapeBody(object.shape);
  if (!overlaps(ground.extent, body.extent)) return null;
  const least = footing === 'on-it' ? footOf(probe) : footprintInset(object, probe.radius) - LIMIT_TOLERANCE + ROUNDING;
  return {
    ...ground,
    on: object,
    extent: body.extent,
    inside: (x, y) => Math.min(ground.inside(x, y), onTop(body, x, y) - least),
  };
}

/** Returns the least margin of several detectors, mm; null if some rim is not inside. */
export function marginOfAll({ field, inside }: Ground, at: readonly XY[]): Mm | null {
  let least = Number.POSITIVE_INFINITY;
  for (const [x, y] of at) {
    if (inside(x, y) < 0) return null;
    least = Math.min(least, field.margin(x, y));
  }
  return least;
}

/** Returns whether the height band and the ceiling allow the probe. */
function heightAllowed(plan: Plan, model: LevelModel, probe: Probe): boolean {
  return effectiveRules(plan.protocol).every((rule) => {
    const { of } = rule.subject;
    if (of === 'height') return checkHeight(probe, rule, 0).every(({ verdict }) => verdict !== 'blocked');
    if (of !== 'ceiling') return true;
    return checkCeiling(model.level, probe, rule, 0).every(({ verdict }) => verdict !== 'blocked');
  });
}

function allowedRooms(plan: Plan, model: LevelModel): Room[] {
  const bars = roomBars(model.rooms, plan.protocol);
  return model.rooms.filter(({ floorRings }, i) => !bars[i]?.reason && floorRings.length > 0);
}
