import type { LevelModel, Room } from '../level/types.ts';
import type { Level, Mm, Plan, Wall, XY } from '../plan/model.ts';
import { assert } from '../plane/assert.ts';
import { lineCrossing } from '../plane/line.ts';
import { along, cross, distance, nearestOnSegment, nearestParameter, roundPoint } from '../plane/point.ts';
import { clockwiseOnScreen } from '../plane/ring.ts';
import { JOINED } from '../plane/tolerances.ts';
import type { Line, Ring } from '../plane/types.ts';
import { formatLength } from '../units/index.ts';
import { withWalls } from './move-items.ts';
import {
  adjustedQuad,
  impossibleDiagonal,
  QUAD_LINES,
  type Quad,
  type QuadLengths,
  quadLengths,
} from './quad-adjust.ts';
import { checkedWalls, type LevelEdit } from './wall-edit.ts';

type Unit = Plan['display']['length'];
/**
 * Taped lengths that no shape fits better than this do not belong to one room, mm; 2 in: more than the error of a tape
 * held by two people.
 */
const MOST_MISFIT: Mm = 50.8;
/** A corner with a smaller angle (sine) is ignored. */
const STRAIGHT = 1e-4;

/**
 * Returns the corners A to D of a room's floor, wall face to wall face, clockwise on screen; A is nearest to the top
 * left of the page.
 */
export function fourCorners(
  room: Room,
): { readonly ok: true; readonly quad: Quad } | { readonly ok: false; readonly reason: string } {
  const corners = realCorners(room.floorRings[0] ?? []);
  if (room.floorRings.length !== 1) {
    return {
      ok: false,
      reason: 'Walls stand free in this room. Two diagonals square up a room of four corners and nothing within.',
    };
  }
  if (corners.length !== 4 || realCorners(room.centerRings[0] ?? []).length !== 4) {
    return { ok: false, reason: `This room has ${corners.length} corners. Two diagonals square up a room of four.` };
  }
  return { ok: true, quad: startingTopLeft(corners) };
}

export type SquaredRoom =
  | { readonly ok: true; readonly level: Level; readonly says: string }
  | { readonly ok: false; readonly reason: string };

/**
 * Moves the room's four corners to where the six taped lengths (face to face) fit best, with its walls: openings keep
 * their offset, and items against the walls follow. Corner A stays, A-B keeps its direction.
 * Refused in words if the lengths do not belong to such a room, or the walls cannot follow.
 */
export function squaredRoom(model: LevelModel, room: Room, taped: QuadLengths, unit: Unit): SquaredRoom {
  const found = fourCorners(room);
  if (!found.ok) return found;
  const { quad } = found;
  const no = (reason: string) => ({ ok: false, reason }) as const;
  const impossible = impossibleWords(taped, unit);
  if (impossible) return no(impossible);
  const after = adjustedQuad(quad, taped);
  if (!after || !isConvexClockwise(after))
    return no('No room has these lengths. Check the tape again, one diagonal after the other.');
  const misfit = worstMisfit(after, taped);
  if (misfit.by > MOST_MISFIT) {
    return no(
      `These lengths do not belong to one room: the nearest shape still misses ${misfit.line} by ${formatLength(misfit.by, unit)}. Tape the diagonals again, then the sides.`,
    );
  }
  const edit = withCornersAt(model, room, quad, after, unit);
  return edit.ok ? { ok: true, level: edit.level, says: saysWhatMoved(quad, after, misfit.by, unit) } : edit;
}

function impossibleWords(taped: QuadLengths, unit: Unit): string {
  const none = QUAD_LINES.find((line) => taped[line] <= 0);
  if (none) return `${none} has some length. Write more than 0.`;
  const found = impossibleDiagonal(taped);
  if (!found) return '';
  const { line, sides, limit, tooLong } = found;
  const figures = `${sides.join(' and ')} ${tooLong ? 'together are' : 'differ by'} ${formatLength(limit, unit)}`;
  return `${line} cannot be ${formatLength(taped[line], unit)}: ${figures}. Check the tape again.`;
}

function worstMisfit(quad: Quad, taped: QuadLengths): { readonly line: string; readonly by: Mm } {
  const lengths = quadLengths(quad);
  return QUAD_LINES.map((line) => ({ line, by: Math.abs(lengths[line] - taped[line]) })).reduce((a, b) =>
    b.by > a.by ? b : a,
  );
}

function saysWhatMoved(before: Quad, after: Quad, misfit: Mm, unit: Unit): string {
  const moved = (['A', 'B', 'C', 'D'] as const).flatMap((letter, i) => {
    const by = distance(before[i] as XY, after[i] as XY);
    return by < 0.1 ? [] : [`${letter} ${formatLength(by, unit)}`];
  });
  const fit = misfit < 0.1 ? 'The lengths agree.' : `The lengths agree within ${formatLength(misfit, unit, 'up')}.`;
  if (moved.length === 0) return `The room is as taped already. ${fit}`;
  return `The room is squared up: corner ${moved.join(', ')}; A stays. ${fit}`;
}

/** Moves the walls along the room's sides so that its floor has these corners. */
function withCornersAt(model: LevelModel, room: Room, before: Quad, after: Quad, unit: Unit): LevelEdit {
  const { level } = model;
  const old = cornersMatching(realCorners(room.centerRings[0] ?? []), before);
  const fresh = setOut(after, before, old);
  const moved = (p: XY): XY => {
    for (let i = 0; i < 4; i++) {
      const [a, b] = [old[i] as XY, old[(i + 1) % 4] as XY];
      if (distance(p, nearestOnSegment(p, a, b)) > JOINED) continue;
      return roundPoint(along(fresh[i] as XY, fresh[(i + 1) % 4] as XY, nearestParameter(p, a, b)));
    }
    return p;
  };
  const walls = level.walls.map((wall) => ({ ...wall, from: moved(wall.from), to: moved(wall.to) }));
  const past = passedCorner(level.walls, walls, old, fresh);
  if (past)
    return {
      ok: false,
      reason: `A wall runs straight on past corner ${past}. Split it there first, then square the room up.`,
    };
  const turned = withWalls(level, walls);
  const beside = (wall: Wall) => onSide(wall.from, old) && onSide(wall.to, old);
  const openings = turned.openings.map((opening, i) => {
    const was = level.walls.find(({ id }) => id === opening.wall);
    return was && beside(was) ? (level.openings[i] ?? opening) : opening;
  });
  return checkedWalls(model, { ...turned, openings }, unit);
}

/**
 * Returns the letter of a corner that a wall passes straight through, if the wall does not pass through the new corner;
 * null for none.
 */
function passedCorner(before: readonly Wall[], after: readonly Wall[], old: Quad, fresh: Quad): string | null {
  for (let i = 0; i < 4; i++) {
    const [corner, wanted] = [old[i] as XY, fresh[i] as XY];
    const passes = before.some((wall, k) => {
      const is = after[k] as Wall;
      const atEnd = distance(wall.from, corner) <= JOINED || distance(wall.to, corner) <= JOINED;
      const through = distance(corner, nearestOnSegment(corner, wall.from, wall.to)) <= JOINED;
      return through && !atEnd && distance(wanted, nearestOnSegment(wanted, is.from, is.to)) > JOINED;
    });
    if (passes) return 'ABCD'[i] ?? null;
  }
  return null;
}

function onSide(p: XY, quad: Quad): boolean {
  return quad.some((a, i) => distance(p, nearestOnSegment(p, a, quad[(i + 1) % 4] as XY)) <= JOINED);
}

/** Returns the center-line corners for new floor corners: each side keeps its distance from the floor. */
function setOut(after: Quad, floor: Quad, center: Quad): Quad {
  const lines = after.map((a, i) => {
    const b = after[(i + 1) % 4] as XY;
    const [f, g] = [floor[i] as XY, floor[(i + 1) % 4] as XY];
    // The floor is to the right of its sides, so the center-line is at a negative distance.
    const off = cross(f, g, center[i] as XY) / distance(f, g);
    const length = distance(a, b);
    const [nx, ny] = [-(b[1] - a[1]) / length, (b[0] - a[0]) / length];
    return [
      [a[0] + nx * off, a[1] + ny * off],
      [b[0] + nx * off, b[1] + ny * off],
    ] as const;
  });
  const corner = (i: number): XY => {
    const at = lineCrossing(lines[(i + 3) % 4] as Line, lines[i] as Line);
    assert(at !== null, 'the sides of a convex room cross');
    return roundPoint(at);
  };
  return [corner(0), corner(1), corner(2), corner(3)];
}

/** Returns whether the quadrilateral is convex and clockwise on screen, so that the walls around it cross. */
function isConvexClockwise(quad: Quad): boolean {
  return quad.every((b, i) => {
    const [a, c] = [quad[(i + 3) % 4] as XY, quad[(i + 1) % 4] as XY];
    return cross(a, b, c) > 0.01 * distance(a, b) * distance(b, c);
  });
}

/** Returns the corners that are not collinear. */
function realCorners(ring: Ring): Ring {
  return ring.filter((b, i) => {
    const [a, c] = [ring[(i + ring.length - 1) % ring.length] as XY, ring[(i + 1) % ring.length] as XY];
    return Math.abs(cross(a, b, c)) > STRAIGHT * distance(a, b) * distance(b, c);
  });
}

function startingTopLeft(ring: Ring): Quad {
  const turned = clockwiseOnScreen(ring);
  const first = turned.reduce(
    (best, [x, y], i) => (x + y < (turned[best]?.[0] ?? 0) + (turned[best]?.[1] ?? 0) - 0.01 ? i : best),
    0,
  );
  const at = (i: number) => turned[(first + i) % 4] as XY;
  return [at(0), at(1), at(2), at(3)];
}

/** Returns the center-line corners in the order of the floor's: the one nearest to A first. */
function cornersMatching(center: Ring, floor: Quad): Quad {
  const ring = clockwiseOnScreen(center);
  const first = ring.reduce(
    (best, p, i) => (distance(p, floor[0]) < distance(ring[best] as XY, floor[0]) ? i : best),
    0,
  );
  const at = (i: number) => ring[(first + i) % 4] as XY;
  return [at(0), at(1), at(2), at(3)];
}
