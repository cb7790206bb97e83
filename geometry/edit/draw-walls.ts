import { HALVES_BEYOND, type TapedBy } from '../dimension/taped-by.ts';
import type { LevelModel } from '../level/types.ts';
import type { Deg, Level, Mm, Wall, XY } from '../plan/model.ts';
import { along, distance, nearestOnSegment, nearestParameter, roundCoordinate, roundPoint } from '../plane/point.ts';
import type { Line } from '../plane/types.ts';
import { cornerLines } from '../snap/opening-fit.ts';
import { wallAtPoint } from './wall-run.ts';

/** Points closer than this are one corner, mm. */
const SAME_CORNER: Mm = 0.5;

/**
 * Returns the center-lines of the walls of a rectangular room whose corners `a` and `b` were taped inside, outside or
 * between the middles of its walls. A side within a wall's thickness of an existing wall is moved onto that wall's line; if
 * that wall spans the whole side, no second one is built.
 */
export function rectangleWalls(level: Level, a: XY, b: XY, thickness: Mm, by: TapedBy = 'inside'): readonly Line[] {
  const half = (-HALVES_BEYOND[by] * thickness) / 2;
  const left = sideOnWall(level, 0, Math.min(a[0], b[0]) - half, thickness);
  const right = sideOnWall(level, 0, Math.max(a[0], b[0]) + half, thickness);
  const top = sideOnWall(level, 1, Math.min(a[1], b[1]) - half, thickness);
  const bottom = sideOnWall(level, 1, Math.max(a[1], b[1]) + half, thickness);
  const sides: readonly Line[] = [
    [
      [left, top],
      [right, top],
    ],
    [
      [right, top],
      [right, bottom],
    ],
    [
      [right, bottom],
      [left, bottom],
    ],
    [
      [left, bottom],
      [left, top],
    ],
  ];
  return sides.filter((side) => distance(...side) > SAME_CORNER && !level.walls.some((wall) => covers(wall, side)));
}

/** Where a wall butts against an existing one, and the two lengths that set it out, from its faces to the corners. */
export interface Butt {
  readonly at: XY;
  readonly taped: readonly Line[];
}

/**
 * Returns the position on the wall at `at` for a wall of this thickness, so that the taped length from the corner of
 * the room to its face is a multiple of `step`. The corners are those of the room on the side of `beside`. Null if no
 * wall is at `at`.
 *
 * @param step mm; null for any length
 */
export function buttPosition(
  level: Level,
  model: LevelModel | null,
  at: XY,
  beside: XY,
  thickness: Mm,
  step: Mm | null,
): Butt | null {
  const wall = wallAtPoint(level, at);
  const length = wall ? distance(wall.from, wall.to) : 0;
  if (!wall || length < thickness) return null;
  const within = (offset: Mm) => Math.min(length - thickness, Math.max(0, offset));
  const wanted = within(nearestParameter(at, wall.from, wall.to) * length - thickness / 2);
  const [toCorner] = cornerLines(model, wall, wanted, thickness, beside);
  const reading = distance(...toCorner);
  const offset = within(step ? wanted + Math.round(reading / step) * step - reading : wanted);
  return {
    at: roundPoint(along(wall.from, wall.to, (offset + thickness / 2) / length)),
    taped: cornerLines(model, wall, offset, thickness, beside),
  };
}

/** Returns the angle between two walls at a corner, 0 to 180 degrees. */
export function cornerAngle(a: XY, corner: XY, b: XY): Deg {
  const first = Math.atan2(a[1] - corner[1], a[0] - corner[0]);
  const second = Math.atan2(b[1] - corner[1], b[0] - corner[0]);
  const turn = Math.abs(((second - first) * 180) / Math.PI) % 360;
  return turn > 180 ? 360 - turn : turn;
}

/** Returns the point `far` mm from `from` in the direction of `toward`; `from` itself if the two coincide. */
export function pointToward(from: XY, toward: XY, far: Mm): XY {
  const length = distance(from, toward) || 1;
  return [from[0] + ((toward[0] - from[0]) * far) / length, from[1] + ((toward[1] - from[1]) * far) / length];
}

/**
 * Returns the line of an existing wall square to the axis within a wall's thickness of `at`; `at` itself if there is
 * none.
 */
function sideOnWall(level: Level, axis: 0 | 1, at: Mm, thickness: Mm): Mm {
  let best = at;
  let least = Number.POSITIVE_INFINITY;
  for (const { from, to, thickness: own } of level.walls) {
    if (Math.abs(from[axis] - to[axis]) > SAME_CORNER) continue;
    const off = Math.abs(from[axis] - at);
    if (off <= (own + thickness) / 2 && off < least) {
      least = off;
      best = from[axis];
    }
  }
  return roundCoordinate(best);
}

function covers(wall: Wall, [a, b]: Line): boolean {
  return [a, b].every((point) => distance(point, nearestOnSegment(point, wall.from, wall.to)) <= SAME_CORNER);
}
