import type { LevelModel, Room } from '../level/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import { bodyDistance, ringBody } from '../plane/body.ts';
import { distance } from '../plane/point.ts';
import { nearestOnRing, ringEdges, ringsContain } from '../plane/ring.ts';
import type { Line } from '../plane/types.ts';

/** A gap below this, mm, is none: no tape reads it. */
export const TOUCHING: Mm = 1;

/** The wall faces of one room, from the side that something is on. */
export interface Faces {
  /** Edges of its floor; the room lies to the right of one who walks from the first point to the second, as the page shows it. */
  readonly lines: readonly Line[];
  /** A point of its floor: where it is looked at from. */
  readonly from: XY;
}

/** Nearer than this to a wall's body is in it, mm. */
const IN_WALL = 0.01;

/**
 * The room that a thing with its middle at a point is in: the one whose floor it is on; for a point within a wall the one whose
 * floor is nearest, the first of several. Null outdoors.
 */
export function roomOf(model: LevelModel, at: XY): Room | null {
  const on = model.rooms.find(({ floorRings }) => ringsContain(floorRings, at));
  if (on || !inWallBody(model, at)) return on ?? null;
  const far = ({ floorRings }: Room) => Math.min(...floorRings.map((ring) => distance(at, nearestOnRing(at, ring))));
  return model.rooms.reduce<Room | null>((best, room) => {
    return room.floorRings.length > 0 && (!best || far(room) < far(best) - IN_WALL) ? room : best;
  }, null);
}

function inWallBody({ pieces }: LevelModel, [x, y]: XY): boolean {
  return pieces.some(({ body }) => bodyDistance(ringBody(body), x, y) <= IN_WALL);
}

/** The faces about a point: of the room that it is in. None outdoors. */
export function facesAbout(model: LevelModel, at: XY): Faces | null {
  const room = roomOf(model, at);
  if (!room) return null;
  return { lines: room.floorRings.flatMap(ringEdges), from: onFloor(room, at) };
}

/** The point itself where it is on the floor, else the nearest one that is. */
export function onFloor({ floorRings }: Room, at: XY): XY {
  if (ringsContain(floorRings, at)) return at;
  const points = floorRings.map((ring) => nearestOnRing(at, ring));
  return points.reduce((best, point) => (distance(at, point) < distance(at, best) ? point : best), points[0] ?? at);
}
