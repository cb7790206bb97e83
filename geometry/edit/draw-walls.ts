import type { LevelModel } from '../level/types.ts';
import type { Deg, Level, Mm, Wall, XY } from '../plan/model.ts';
import { along, distance, nearestOnSegment, nearestParameter, roundCoordinate, roundPoint } from '../plane/point.ts';
import { signedArea } from '../plane/ring.ts';
import type { Line } from '../plane/types.ts';
import { cornerLines } from '../snap/opening-fit.ts';

/** Points closer than this are one corner, mm. */
const SAME_CORNER: Mm = 0.5;

/**
 * Returns the center-lines of the walls around an outline drawn along the inside faces: offset by half the
 * thickness, with mitered corners. Collinear corners are dropped; an outline without area gives none.
 */
export function wallsAroundOutline(points: readonly XY[], thickness: Mm): readonly Line[] {
  const ring = turningCorners(points);
  const area = signedArea(ring);
  if (ring.length < 3 || area === 0) return [];
  const clockwise = area > 0 ? ring : [...ring].reverse();
  const corners = clockwise.map((corner, i) => {
    const before = clockwise[(i + clockwise.length - 1) % clockwise.length] as XY;
    const after = clockwise[(i + 1) % clockwise.length] as XY;
    return setOut(before, corner, after, thickness / 2);
  });
  return corners.map(roundPoint).map((corner, i, all) => [corner, all[(i + 1) % all.length] as XY] as const);
}

/** Returns the center-lines of walls drawn one after another, without pieces of length zero. */
export function wallsAlongChain(points: readonly XY[]): readonly Line[] {
  const lines: Line[] = [];
  points.forEach((point, i) => {
    const before = points[i - 1];
    if (before && distance(before, point) > SAME_CORNER) lines.push([before, point]);
  });
  return lines;
}

/**
 * Returns the center-lines of the walls of a rectangular room with the inside corners `a` and `b`. A side within a
 * wall's thickness of an existing wall is moved onto that wall's line; if that wall spans the whole side, no second one
 * is built.
 */
export function rectangleWalls(level: Level, a: XY, b: XY, thickness: Mm): readonly Line[] {
  const half = thickness / 2;
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

/**
 * Returns the wall with the drawn point on its center-line or end: a line that starts or ends there joins that wall.
 */
export function wallAtPoint(level: Level, at: XY): Wall | null {
  return level.walls.find(({ from, to }) => distance(at, nearestOnSegment(at, from, to)) <= SAME_CORNER) ?? null;
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

/**
 * Returns the clear length of a line between two walls' center-lines, as taped: without half of each wall. An end
 * that is on no wall, or on a wall along the line, is not shortened. Never negative.
 */
export function clearLength(level: Level, [from, to]: Line): Mm {
  const length = distance(from, to);
  return Math.max(0, length - insetAtWall(level, from, to) - insetAtWall(level, to, from));
}

/** Returns how far the face of the wall at `end` is along the line to `other`, mm; 0 if no wall is crossed there. */
export function insetAtWall(level: Level, end: XY, other: XY): Mm {
  const wall = wallAtPoint(level, end);
  const length = distance(end, other);
  if (!wall || length === 0) return 0;
  const run = distance(wall.from, wall.to) || 1;
  const sine =
    Math.abs((wall.to[0] - wall.from[0]) * (other[1] - end[1]) - (wall.to[1] - wall.from[1]) * (other[0] - end[0])) /
    (run * length);
  return sine < 0.1 ? 0 : wall.thickness / 2 / sine;
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

function turningCorners(points: readonly XY[]): readonly XY[] {
  const apart = points.filter(
    (point, i) => distance(point, points[(i + points.length - 1) % points.length] as XY) > SAME_CORNER,
  );
  return apart.filter((b, i) => {
    const a = apart[(i + apart.length - 1) % apart.length] as XY;
    const c = apart[(i + 1) % apart.length] as XY;
    const turn = (b[0] - a[0]) * (c[1] - b[1]) - (b[1] - a[1]) * (c[0] - b[0]);
    return Math.abs(turn) > 1e-9 * distance(a, b) * distance(b, c);
  });
}

/** Returns the miter corner at distance `by` to the left of both sides of a ring that runs clockwise on screen. */
function setOut(before: XY, corner: XY, after: XY, by: Mm): XY {
  const [ux, uy] = unit(before, corner);
  const [vx, vy] = unit(corner, after);
  // The left normal of `before` → `corner` on screen is (uy, −ux).
  const [nx, ny] = [uy + vy, -ux - vx];
  const stretch = (2 * by) / (nx * nx + ny * ny);
  return [corner[0] + nx * stretch, corner[1] + ny * stretch];
}

function unit(a: XY, b: XY): XY {
  const length = distance(a, b) || 1;
  return [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
}
