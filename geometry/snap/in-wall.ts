import type { LevelModel } from '../level/types.ts';
import type { Fixture, Mm, PlanObject, Shape, XY } from '../plan/model.ts';
import { type Body, bodyDistance, ringBody, shapeBody, shapeMiddle, signedBodyDistance } from '../plane/body.ts';
import { gapToFace, outlineOf } from './past-face.ts';
import { type Faces, facesAbout, TOUCHING } from './room-faces.ts';
import { facesBefore, pushedOut } from './snap-move.ts';

/** A thing that reaches into a wall. */
export interface InWall {
  readonly id: string;
  /** How far, mm; null outdoors, where no face tells. */
  readonly by: Mm | null;
  /** The way out, to the face on the side of the room that its middle is in, mm; null where it does not fit there. */
  readonly out: XY | null;
}

/** Fixtures and objects that reach more than 1 mm into a wall, in the order of the level. */
export function thingsInWalls(model: LevelModel): readonly InWall[] {
  const things: readonly (Fixture | PlanObject)[] = [...model.level.fixtures, ...model.level.objects];
  return things.flatMap(({ id, shape }) => {
    const found = shapeInWall(model, shape);
    return found ? [{ id, ...found }] : [];
  });
}

/** How far a shape reaches into a wall, and the way out; null where it stands clear of walls. */
export function shapeInWall(model: LevelModel, shape: Shape): Omit<InWall, 'id'> | null {
  const faces = facesAbout(model, shapeMiddle(shape));
  if (!faces) return touchesWall(model, shape) ? { by: null, out: null } : null;
  const by = depth(shape, [0, 0], faces);
  if (by <= TOUCHING) return null;
  const { by: out } = pushedOut([outlineOf(shape)], [0, 0], faces);
  return { by, out: depth(shape, out, faces) <= TOUCHING ? out : null };
}

function depth(shape: Shape, by: XY, faces: Faces): Mm {
  const outline = outlineOf(shape);
  return facesBefore(faces).reduce((most, face) => Math.max(most, -(gapToFace(outline, by, face) ?? 0)), 0);
}

/** Whether a thing outdoors reaches into a wall: a corner of either inside the other. */
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
