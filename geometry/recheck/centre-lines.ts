import type { Mm, Wall, XY } from '../plan/model.ts';
import {
  apart,
  cross,
  direction,
  dot,
  lineCrossing,
  nearestOnSegment,
  plus,
  segmentDistance,
  vector,
} from './plane.ts';

/** Points within this distance are one, mm. */
export const SAME = 0.01;
/** An end this near to another wall is joined to it: half an inch. */
const JOINED = 12.7;
/** A crossing of the two lines no farther than this from both, mm, is where they were meant to meet. */
const MEANT = 2 * JOINED;
/** Two walls run the same way below this sine of the angle between them: their lines cross nowhere near. */
const PARALLEL = 1e-3;
/** The thinnest half of a wall, mm: a wall drawn without thickness still parts two rooms. */
const THINNEST = 0.001;

/** The centre-line of a wall, or of a short piece that joins its end to another wall. */
export interface Line {
  readonly wall: Wall;
  readonly from: XY;
  readonly to: XY;
  /** From `from` to `to`, of length 1. */
  readonly along: XY;
  readonly half: Mm;
  /** False of a piece that joins. */
  readonly drawn: boolean;
}

/**
 * The centre-lines of the walls as drawn, and short pieces that lead an end on to each wall that it nearly meets: to where the two
 * lines cross, or straight across where they run beside one another.
 */
export function centreLines(drawn: readonly Wall[]): Line[] {
  const walls = drawn.filter(({ from, to }) => apart(from, to) > SAME);
  const joints = walls.flatMap((wall) =>
    [wall.from, wall.to].flatMap((end) =>
      walls.filter((other) => other !== wall).flatMap((other) => joiningLines(wall, end, other)),
    ),
  );
  return [...walls.map((wall) => lineOf(wall, wall.from, wall.to)), ...joints];
}

const lineOf = (wall: Wall, from: XY, to: XY): Line => ({
  wall,
  from,
  to,
  along: direction(from, to),
  half: Math.max(wall.thickness / 2, THINNEST),
  drawn: from === wall.from && to === wall.to,
});

function joiningLines(wall: Wall, end: XY, other: Wall): Line[] {
  const gap = segmentDistance(end, other.from, other.to);
  if (gap <= SAME || gap > JOINED || meetNear(wall, end, other)) return [];
  const crossing = crossingOf(wall, other);
  const isMeant = crossing && apart(crossing, end) <= MEANT && segmentDistance(crossing, other.from, other.to) <= MEANT;
  if (!isMeant) return [lineOf(wall, end, nearestOnSegment(end, other.from, other.to))];
  const near = nearestOnSegment(crossing, other.from, other.to);
  return [lineOf(wall, end, crossing), ...(apart(near, crossing) > SAME ? [lineOf(other, near, crossing)] : [])];
}

/** Whether the two walls meet already near the end: it was drawn a little too far. */
function meetNear(wall: Wall, end: XY, other: Wall): boolean {
  const far = end === wall.from ? wall.to : wall.from;
  const tail = plus(end, direction(end, far), Math.min(MEANT, apart(end, far)));
  const crossing = lineCrossing(end, tail, other.from, other.to);
  const touches = [other.from, other.to].some((corner) => segmentDistance(corner, end, tail) <= SAME);
  return (
    touches ||
    (crossing !== null &&
      segmentDistance(crossing, end, tail) <= SAME &&
      segmentDistance(crossing, other.from, other.to) <= SAME)
  );
}

function crossingOf(a: Wall, b: Wall): XY | null {
  const sine = cross(direction(a.from, a.to), direction(b.from, b.to));
  return Math.abs(sine) < PARALLEL ? null : lineCrossing(a.from, a.to, b.from, b.to);
}

/** How far along the line a point lies, mm. */
export const alongLine = (line: Line, p: XY): Mm => dot(vector(line.from, p), line.along);
