import { floorContains } from '../level/floor-contains.ts';
import type { LevelModel, Room } from '../level/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import { type Body, bodyDistance, ringBody } from '../plane/body.ts';
import { memoize } from '../plane/memoize.ts';
import { distance } from '../plane/point.ts';
import { nearestOnRing, ringEdges, ringsContain } from '../plane/ring.ts';
import type { Line, Ring } from '../plane/types.ts';

/** A smaller gap counts as touching, mm: no tape resolves it. */
export const TOUCHING: Mm = 1;

/** The wall faces of the room that contains an item. */
export interface RoomFaces {
  /** Edges of its floor, with the room on the right of the direction, on screen. */
  readonly lines: readonly Line[];
  /** A point of the room's floor, from which the faces are seen. */
  readonly from: XY;
}

/** A point closer than this to a wall's body is in the wall, mm. */
const IN_WALL_DISTANCE = 0.01;

/**
 * Returns the room of an item with its middle at a point: the one whose floor contains the point; for a point within a
 * wall, the one with the nearest floor, the first of several. Null outdoors.
 */
export function roomOf(model: LevelModel, at: XY): Room | null {
  const on = model.rooms.find((room) => floorContains(room, at));
  if (on || !inWallBody(model, at)) return on ?? null;
  const far = ({ floorRings }: Room) => Math.min(...floorRings.map((ring) => distance(at, nearestOnRing(at, ring))));
  return model.rooms.reduce<Room | null>((best, room) => {
    return room.floorRings.length > 0 && (!best || far(room) < far(best) - IN_WALL_DISTANCE) ? room : best;
  }, null);
}

const wallBody = memoize((ring: Ring): Body => ringBody(ring));

function inWallBody({ pieces }: LevelModel, [x, y]: XY): boolean {
  return pieces.some(({ body }) => bodyDistance(wallBody(body), x, y) <= IN_WALL_DISTANCE);
}

/** Returns the faces around a point: those of its room. Null outdoors. */
export function facesAbout(model: LevelModel, at: XY): RoomFaces | null {
  const room = roomOf(model, at);
  if (!room) return null;
  return { lines: facesOf(room), from: onFloor(room, at) };
}

const facesOf = memoize(({ floorRings }: Room): readonly Line[] => floorRings.flatMap(ringEdges));

/** Returns the point itself if it is on the floor, else the nearest floor point. */
export function onFloor({ floorRings }: Room, at: XY): XY {
  if (ringsContain(floorRings, at)) return at;
  const points = floorRings.map((ring) => nearestOnRing(at, ring));
  return points.reduce((best, point) => (distance(at, point) < distance(at, best) ? point : best), points[0] ?? at);
}
