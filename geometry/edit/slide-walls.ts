import { wallLength } from '../plan/items.ts';
import type { Level, Mm, Opening, Wall, XY } from '../plan/model.ts';
import { lineCrossing, sineBetween } from '../plane/line.ts';
import { sameIfUnchanged } from '../plane/memoize.ts';
import { distance, nearestOnSegment, plus, roundCoordinate, roundPoint } from '../plane/point.ts';
import { JOINED } from '../plane/tolerances.ts';
import { ALONG } from './wall-run.ts';

/** Walls that move without turning any other: the walls that they meet are lengthened or cut back along their own lines. */

/**
 * Returns the level with the center-lines of walls translated, id → movement. Ends of all walls that are joined slide along their own lines,
 * so that no wall turns; openings of a translated wall go along with it, others keep their position on the page. Null where a wall that
 * continues in line would be left beside another. Unchecked: see `checkedWalls`.
 */
export function withLinesShifted(level: Level, shifts: ReadonlyMap<string, XY>): Level | null {
  const walls: Wall[] = [];
  for (const wall of level.walls) {
    const from = cornerAfter(level.walls, shifts, wall, 'from');
    const to = cornerAfter(level.walls, shifts, wall, 'to');
    if (!from || !to) return null;
    walls.push(from === wall.from && to === wall.to ? wall : { ...wall, from, to });
  }
  const openings = level.openings.map((opening) =>
    heldInPlace(opening, level.walls, walls, shifts.get(opening.wall) ?? NO_SHIFT),
  );
  return { ...level, walls, openings: sameIfUnchanged(level.openings, openings) };
}

/**
 * Returns where a wall ends if its line, or one that it meets there, is shifted: where the two lines cross. Of several crossings, returns the
 * farthest, so that the wall reaches all of them. Null where a wall that continues in line would be left beside it.
 */
function cornerAfter(
  walls: readonly Wall[],
  shifts: ReadonlyMap<string, XY>,
  wall: Wall,
  end: 'from' | 'to',
): XY | null {
  const at = wall[end];
  const far = end === 'from' ? wall.to : wall.from;
  const by = shifts.get(wall.id) ?? NO_SHIFT;
  const met = walls.filter(
    ({ id, from, to }) => id !== wall.id && distance(at, nearestOnSegment(at, from, to)) <= JOINED,
  );
  if (by === NO_SHIFT && !met.some(({ id }) => shifts.has(id))) return at;
  const own = [plus(at, by), plus(far, by)] as const;
  const crossings: XY[] = [];
  for (const other of met) {
    const otherBy = shifts.get(other.id) ?? NO_SHIFT;
    const isAlong = sineBetween([wall.from, wall.to], [other.from, other.to]) < ALONG;
    const isTogether = isAlong && distance(by, otherBy) <= Math.hypot(...by) * ALONG * 2;
    if (isAlong && !isTogether) continue;
    const at = lineCrossing(own, [plus(other.from, otherBy), plus(other.to, otherBy)]);
    if (at) crossings.push(at);
  }
  if (crossings.length === 0) {
    const isLeft = met.some(({ id }) => distance(by, shifts.get(id) ?? NO_SHIFT) > ROUNDING);
    return isLeft ? null : roundPoint(own[0]);
  }
  const ahead = (to: XY) => (to[0] - own[1][0]) * (at[0] - far[0]) + (to[1] - own[1][1]) * (at[1] - far[1]);
  return roundPoint(crossings.reduce((most, each) => (ahead(each) > ahead(most) ? each : most)));
}

const NO_SHIFT: XY = [0, 0];
/** Two shifts that differ by less than this are equal, mm. */
const ROUNDING: Mm = 1e-6;

/** Returns an opening after the `from` end of its wall, which its offset is measured from, has moved; the opening itself moves by `by`. */
function heldInPlace(opening: Opening, before: readonly Wall[], after: readonly Wall[], by: XY): Opening {
  const index = before.findIndex(({ id }) => id === opening.wall);
  const [was, is] = [before[index], after[index]];
  if (!was || !is || was === is) return opening;
  const [dx, dy] = [by[0] - is.from[0] + was.from[0], by[1] - is.from[1] + was.from[1]];
  const along = (dx * (was.to[0] - was.from[0]) + dy * (was.to[1] - was.from[1])) / (wallLength(was) || 1);
  const offset = roundCoordinate(opening.offset + along);
  return offset === opening.offset ? opening : { ...opening, offset };
}

/**
 * Returns the level with one wall translated by `by`, mm, together with the walls that continue it in line; null as for
 * `withLinesShifted`.
 */
export function withWallSlid(level: Level, wallId: string, by: XY): Level | null {
  return withLinesShifted(level, shiftsOf(inLineWith(level.walls, [wallId]), by));
}

/**
 * Returns the level with the given end of a wall moved by `by`, along the wall, with the walls that it meets there; null as for
 * `withLinesShifted`.
 */
export function withEndSlid(level: Level, wall: Wall, end: 'from' | 'to', by: XY): Level | null {
  const at = wall[end];
  const met = level.walls.filter(
    (other) =>
      other.id !== wall.id &&
      distance(at, nearestOnSegment(at, other.from, other.to)) <= JOINED &&
      sineBetween([wall.from, wall.to], [other.from, other.to]) >= ALONG,
  );
  if (met.length === 0) return null;
  const ids = met.map(({ id }) => id);
  return withLinesShifted(level, shiftsOf(inLineWith(level.walls, ids), by));
}

/** Returns whether an edit has changed the direction of a wall. */
export function turnsAny(before: readonly Wall[], after: readonly Wall[]): boolean {
  return before.some((was, i) => {
    const is = after[i];
    if (!is || is === was) return false;
    const [dx, dy] = [was.to[0] - was.from[0], was.to[1] - was.from[1]];
    const [ex, ey] = [is.to[0] - is.from[0], is.to[1] - is.from[1]];
    return Math.abs(dx * ey - dy * ex) > TURNED * Math.hypot(dx, dy);
  });
}

/** An end that lies beside the former line of its wall by more than this has turned it, mm. */
const TURNED: Mm = 0.01;

const shiftsOf = (ids: ReadonlySet<string>, by: XY): ReadonlyMap<string, XY> => new Map([...ids].map((id) => [id, by]));

/** Returns the ids with those of the walls that continue one of them in line, end to end. */
function inLineWith(walls: readonly Wall[], ids: readonly string[]): ReadonlySet<string> {
  const found = new Set(ids);
  const waiting = walls.filter(({ id }) => found.has(id));
  for (let wall = waiting.pop(); wall; wall = waiting.pop()) {
    for (const other of walls) {
      if (found.has(other.id) || !continues(wall, other)) continue;
      found.add(other.id);
      waiting.push(other);
    }
  }
  return found;
}

function continues(wall: Wall, other: Wall): boolean {
  const meet = [wall.from, wall.to].some((a) => [other.from, other.to].some((b) => distance(a, b) <= JOINED));
  return meet && sineBetween([wall.from, wall.to], [other.from, other.to]) < ALONG;
}
