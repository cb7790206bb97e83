import type { LevelModel } from '../level/types.ts';
import type { Fixture, Mm, PlanObject, Shape, XY } from '../plan/model.ts';
import { type Body, bodyDistance, ringBody, shapeBody, shapeMiddle, signedBodyDistance } from '../plane/body.ts';
import { gapToFace, isInFront, outlineOf } from './face-gap.ts';
import { facesAbout, type RoomFaces, TOUCHING } from './room-faces.ts';
import { facesInFront, pushedOut } from './snap-move.ts';

/** An item that reaches into a wall. */
export interface InWall {
  readonly id: string;
  /** How far it reaches into the wall, mm; null outdoors, where there is no face to measure to. */
  readonly by: Mm | null;
  /**
   * The vector that moves it to the face on the side of the room that contains its middle, mm; null if it does not fit
   * there.
   */
  readonly out: XY | null;
}

/** Returns the fixtures and objects that reach more than 1 mm into a wall, in file order. */
export function itemsInWalls(model: LevelModel): readonly InWall[] {
  const items: readonly (Fixture | PlanObject)[] = [...model.level.fixtures, ...model.level.objects];
  return items.flatMap(({ id, shape }) => {
    const found = shapeInWall(model, shape);
    return found ? [{ id, ...found }] : [];
  });
}

/** Returns how far a shape reaches into a wall, and the vector that moves it out; null if it is clear of walls. */
export function shapeInWall(model: LevelModel, shape: Shape): Omit<InWall, 'id'> | null {
  const faces = facesAbout(model, shapeMiddle(shape));
  if (!faces) return touchesWall(model, shape) ? { by: null, out: null } : null;
  const by = depth(shape, [0, 0], faces);
  if (by <= TOUCHING) return null;
  const { by: out } = pushedOut([outlineOf(shape)], [0, 0], faces);
  return { by, out: depth(shape, out, faces) <= TOUCHING ? out : null };
}

function depth(shape: Shape, by: XY, faces: RoomFaces): Mm {
  const outline = outlineOf(shape);
  return facesInFront(faces).reduce((most, face) => {
    // Most items are in front of every face, which their corners alone show.
    if (isInFront(outline, by, face)) return most;
    return Math.max(most, -(gapToFace(outline, by, face) ?? 0));
  }, 0);
}

/** Returns whether an item outdoors intersects a wall: a corner of either is inside the other. */
function touchesWall({ pieces }: LevelModel, shape: Shape): boolean {
  const body = shapeBody(shape);
  const { points, radius } = outlineOf(shape);
  return pieces.some(({ body: ring }) => {
    const wall = ringBody(ring);
    const corners = points.some(([x, y]) => bodyDistance(wall, x, y) < radius - TOUCHING || isDeep(wall, x, y));
    return corners || ring.some(([x, y]) => isDeep(body, x, y));
  });
}

function isDeep(body: Body, x: Mm, y: Mm): boolean {
  return signedBodyDistance(body, x, y) < -TOUCHING;
}
