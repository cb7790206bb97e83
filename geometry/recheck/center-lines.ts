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

/** Points within this distance are the same point, mm. */
export const SAME = 0.01;
/** An end this close to another wall is joined to it, mm: half an inch. */
const JOIN_DISTANCE = 12.7;
/** A crossing of the two lines within this distance of both is the intended corner, mm. */
const CORNER_DISTANCE = 2 * JOIN_DISTANCE;
/** Sine of the angle between two walls below which they are parallel and have no nearby crossing. */
const PARALLEL = 1e-3;
/** A shorter wall has no direction, mm. */
const SHORTEST_WALL = 0.1;
/** No real drawing has an end that nearly meets more walls than this. */
const MOST_NEAR = 24;
/** Least half thickness of a wall, mm: a wall drawn without thickness still separates two rooms. */
const LEAST_HALF = 0.001;

/** The center-line of a wall, or of a short piece that joins its end to another wall. */
export interface Line {
  readonly wall: Wall;
  readonly from: XY;
  readonly to: XY;
  /** Unit vector from `from` to `to`. */
  readonly along: XY;
  readonly half: Mm;
  /** False for a joining piece. */
  readonly drawn: boolean;
  /** Whether it forms corners with the walls that it meets; a piece straight across a gap only fills it. */
  readonly corners: boolean;
}

/**
 * Returns the center-lines of the walls as drawn, and short pieces that extend an end to each wall that it nearly
 * meets: to the crossing of the two lines, or straight across where they are parallel. Each pair of walls is treated
 * independently of the others.
 */
export function centerLines(drawn: readonly Wall[]): Line[] {
  const walls = drawn.filter(({ from, to }) => apart(from, to) > SHORTEST_WALL);
  const pieces = walls.flatMap((wall) => [wall.from, wall.to].flatMap((end) => joiningLines(wall, end, walls)));
  return [...walls.map((wall) => lineOf(wall, wall.from, wall.to, true)), ...pieces];
}

const lineOf = (wall: Wall, from: XY, to: XY, drawn: boolean, corners = true): Line => ({
  wall,
  from,
  to,
  along: direction(from, to),
  half: Math.max(wall.thickness / 2, LEAST_HALF),
  drawn,
  corners,
});

function joiningLines(wall: Wall, end: XY, walls: readonly Wall[]): Line[] {
  const near = walls
    .map((other) => ({ other, gap: segmentDistance(end, other.from, other.to) }))
    .filter(({ other, gap }) => other !== wall && gap > SAME && gap <= JOIN_DISTANCE && !meetNear(wall, end, other));
  if (near.length > MOST_NEAR) throw new Error(`more than ${MOST_NEAR} walls all but meet at one place`);
  return near.flatMap(({ other }) => {
    const meant = intendedCrossing(wall, end, other);
    const to = meant ?? nearestOnSegment(end, other.from, other.to);
    return apart(end, to) > SAME ? [lineOf(wall, end, to, false, meant !== null)] : [];
  });
}

/**
 * Returns the crossing of the two lines if it is near the end, and on the other wall or near that wall's closer tip.
 */
function intendedCrossing(wall: Wall, end: XY, other: Wall): XY | null {
  const crossing = crossingOf(wall, other);
  if (!crossing || apart(crossing, end) > CORNER_DISTANCE) return null;
  if (segmentDistance(crossing, other.from, other.to) <= SAME) return crossing;
  const tip = apart(end, other.from) <= apart(end, other.to) ? other.from : other.to;
  return apart(end, tip) <= JOIN_DISTANCE && apart(crossing, tip) <= CORNER_DISTANCE ? crossing : null;
}

/** Returns whether the last inch of the wall already meets the other: it was drawn slightly too far. */
function meetNear(wall: Wall, end: XY, other: Wall): boolean {
  const far = end === wall.from ? wall.to : wall.from;
  const tail = plus(end, direction(end, far), Math.min(CORNER_DISTANCE, apart(end, far)));
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

/** Returns the position of a point along the line, mm. */
export const alongLine = (line: Line, p: XY): Mm => dot(vector(line.from, p), line.along);
