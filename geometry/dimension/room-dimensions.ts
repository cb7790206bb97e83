import type { LevelModel, Room } from '../level/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import { memoize } from '../plane/memoize.ts';
import { distance } from '../plane/point.ts';
import { signedArea, withoutStraightCorners } from '../plane/ring.ts';
import type { Ring } from '../plane/types.ts';

/** A dimension on the drawing: from wall face to wall face along one face of a room. */
export interface Dimension {
  readonly from: XY;
  readonly to: XY;
  readonly length: Mm;
  /** Unit normal of the face, out of the room. */
  readonly outward: XY;
  /** Thickness of the wall behind the face if it is an outside wall; null next to another room. */
  readonly wallBehind: Mm | null;
  /** Key of the room that it measures. */
  readonly room: string;
}

/** Shorter faces are not dimensioned, mm: a jog of 8 in is of no use to a tester. */
const LEAST_FACE: Mm = 300;

/**
 * Returns the inside lengths of every room, one per length and direction: of two parallel faces of equal length the
 * one in an outside wall, so that the figure can be placed outside the drawing.
 */
export function roomDimensions(model: LevelModel): readonly Dimension[] {
  return model.rooms.flatMap((room) => {
    const faces = roomFaces(model, room);
    const order = [...faces].sort((a, b) => Number(b.wallBehind !== null) - Number(a.wallBehind !== null));
    const result: Dimension[] = [];
    for (const face of order) if (!result.some((other) => sameMeasure(face, other))) result.push(face);
    return result;
  });
}

/** Returns every straight face of a room that is long enough for a dimension, in ring order. */
export function roomFaces(model: LevelModel, { key, floorRings }: Room): readonly Dimension[] {
  const outer = floorRings.filter((ring) => signedArea(ring) > 0);
  return outer.flatMap((ring) => ringFaces(model, key, ring)).filter(({ length }) => length >= LEAST_FACE);
}

function ringFaces(model: LevelModel, room: string, ring: Ring): readonly Dimension[] {
  const corners = withoutStraightCorners(ring);
  return corners.map((to, i) => {
    const from = corners[(i + corners.length - 1) % corners.length] as XY;
    const length = distance(from, to) || 1;
    // The room is on the right of its ring's direction, so outward is left.
    const outward: XY = [(to[1] - from[1]) / length, -(to[0] - from[0]) / length];
    return { from, to, length, outward, wallBehind: outsideWallBehind(model, from, to, outward), room };
  });
}

/** The outside walls of a level with their length and direction: every face of every room is compared with them. */
const outsideWalls = memoize((model: LevelModel) =>
  model.pieces
    .filter(({ outside }) => outside)
    .map(({ from: [x, y], to, thickness }) => {
      const length = distance([x, y], to) || 1;
      return { x, y, thickness, length, ux: (to[0] - x) / length, uy: (to[1] - y) / length };
    }),
);

function outsideWallBehind(model: LevelModel, from: XY, to: XY, outward: XY): Mm | null {
  const middleX = (from[0] + to[0]) / 2;
  const middleY = (from[1] + to[1]) / 2;
  const wall = outsideWalls(model).find(({ x, y, thickness, length, ux, uy }) => {
    if (Math.abs(ux * outward[0] + uy * outward[1]) >= 0.01) return false;
    const off = (middleX - x) * outward[0] + (middleY - y) * outward[1];
    const ahead = (middleX - x) * ux + (middleY - y) * uy;
    return Math.abs(off + thickness / 2) < 1 && ahead >= 0 && ahead <= length;
  });
  return wall?.thickness ?? null;
}

function sameMeasure(a: Dimension, b: Dimension): boolean {
  const parallel = Math.abs(a.outward[0] * b.outward[1] - a.outward[1] * b.outward[0]) < 0.01;
  return parallel && Math.abs(a.length - b.length) < 1;
}
