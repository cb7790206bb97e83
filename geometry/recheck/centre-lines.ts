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
/** A wall shorter than this has no direction, mm. */
const SHORTEST = 0.1;
/** An end that all but meets more walls than this is no drawing. */
const MOST_NEAR = 24;
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
  /** Whether it is joined square with what it meets: a piece that leads straight across fills a gap, and turns no corner. */
  readonly corners: boolean;
}

/**
 * The centre-lines of the walls as drawn, and short pieces that lead an end on to each wall that it nearly meets: to where the two
 * lines cross, or straight across where they run beside one another. Every two walls are looked at by themselves.
 */
export function centerLines(drawn: readonly Wall[]): Line[] {
  const walls = drawn.filter(({ from, to }) => apart(from, to) > SHORTEST);
  const pieces = walls.flatMap((wall) => [wall.from, wall.to].flatMap((end) => joiningLines(wall, end, walls)));
  return [...walls.map((wall) => lineOf(wall, wall.from, wall.to, true)), ...pieces];
}

const lineOf = (wall: Wall, from: XY, to: XY, drawn: boolean, corners = true): Line => ({
  wall,
  from,
  to,
  along: direction(from, to),
  half: Math.max(wall.thickness / 2, THINNEST),
  drawn,
  corners,
});

function joiningLines(wall: Wall, end: XY, walls: readonly Wall[]): Line[] {
  const near = walls
    .map((other) => ({ other, gap: segmentDistance(end, other.from, other.to) }))
    .filter(({ other, gap }) => other !== wall && gap > SAME && gap <= JOINED && !meetNear(wall, end, other));
  if (near.length > MOST_NEAR) throw new Error(`more than ${MOST_NEAR} walls all but meet at one place`);
  return near.flatMap(({ other }) => {
    const meant = meantCrossing(wall, end, other);
    const to = meant ?? nearestOnSegment(end, other.from, other.to);
    return apart(end, to) > SAME ? [lineOf(wall, end, to, false, meant !== null)] : [];
  });
}

/** Where the two lines cross, if that is near the end, and on the other wall or near the tip of it that lies by the end. */
function meantCrossing(wall: Wall, end: XY, other: Wall): XY | null {
  const crossing = crossingOf(wall, other);
  if (!crossing || apart(crossing, end) > MEANT) return null;
  if (segmentDistance(crossing, other.from, other.to) <= SAME) return crossing;
  const tip = apart(end, other.from) <= apart(end, other.to) ? other.from : other.to;
  return apart(end, tip) <= JOINED && apart(crossing, tip) <= MEANT ? crossing : null;
}

/** Whether the last inch of the wall meets the other already: it was drawn a little too far. */
function meetNear(wall: Wall, end: XY, other: Wall): boolean {
  const far = end === wall.from ? wall.to : wall.from;
  const tail = plus(end, direction(end, far), Math.min(MEANT, apart(end, far)));
  const isOnTail = (p: XY) => segmentDistance(p, end, tail) <= SAME;
  const isOnOther = (p: XY) => segmentDistance(p, other.from, other.to) <= SAME;
  const crossing = crossingOf(wall, other);
  return (
    isOnTail(other.from) ||
    isOnTail(other.to) ||
    isOnOther(tail) ||
    (crossing !== null && isOnTail(crossing) && isOnOther(crossing))
  );
}

function crossingOf(a: Wall, b: Wall): XY | null {
  const sine = cross(direction(a.from, a.to), direction(b.from, b.to));
  return Math.abs(sine) < PARALLEL ? null : lineCrossing(a.from, a.to, b.from, b.to);
}

/** How far along the line a point lies, mm. */
export const alongLine = (line: Line, p: XY): Mm => dot(vector(line.from, p), line.along);
