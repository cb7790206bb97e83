import { HALVES_BEYOND, type TapedBy } from '../dimension/taped-by.ts';
import { wallLength } from '../plan/items.ts';
import type { Level, Mm, Wall, XY } from '../plan/model.ts';
import { lineCrossing, lineMoved, sineBetween } from '../plane/line.ts';
import { cross, distance, nearestOnSegment, roundPoint } from '../plane/point.ts';
import type { Line } from '../plane/types.ts';
import { withWallLength } from './stretch.ts';
import { ALONG, halfWallAt, SAME_CORNER } from './wall-run.ts';

/** Center-lines of walls drawn one after another as an open run, and the existing walls that the run continues. */

/** A run whose total turn is less than this encloses nothing, radians. */
const TURNS: number = Math.PI / 36;

export interface BuiltRun {
  /** Center-lines of the new walls. */
  readonly lines: readonly Line[];
  /** Existing walls whose open end becomes a corner of the run: the end that moves, and how much longer each wall becomes, mm. */
  readonly stretched: readonly { readonly id: string; readonly end: 'from' | 'to'; readonly by: Mm }[];
}

/** What one end of a run meets. */
type Met =
  | { readonly kind: 'nothing' }
  /** A wall that continues past the end of the run. */
  | { readonly kind: 'body'; readonly wall: Wall }
  /** The open end of a wall, from which the run turns off: that wall was taped up to there. */
  | { readonly kind: 'open'; readonly wall: Wall }
  /** The end of a wall that the run continues in line. */
  | { readonly kind: 'along'; readonly wall: Wall; readonly isOpen: boolean }
  | { readonly kind: 'corner' };

/**
 * Returns the center-lines of walls drawn one after another, without pieces of length zero. A run that turns was taped along its faces on
 * the side that it turns to (inside), along those on the other side (outside), or along its center-lines; a straight run is drawn on its
 * center-line. An end on the line of an existing wall stays there. Where the run turns off from the open end of a wall, the taped length of
 * that wall ends at the face of the new wall: it is stretched, or cut back, to the corner. A run that is interrupted and continued later
 * gives the same walls as one drawn without interruption.
 */
export function builtRun(level: Level, points: readonly XY[], thickness: Mm, by: TapedBy): BuiltRun {
  const run = points.filter((point, i) => i === 0 || distance(point, points[i - 1] as XY) > SAME_CORNER);
  const drawn = run.slice(1).map((to, i): Line => [run[i] as XY, to]);
  const [first, last] = [drawn[0], drawn.at(-1)];
  if (!first || !last) return { lines: [], stretched: [] };
  const met = [metAt(level, first), metAt(level, backwards(last))] as const;
  const off = offLeft(level, run, met, thickness, by);
  if (off === 0) return { lines: drawn, stretched: [] };
  const shifts = [shiftAt(met[0], first, off, thickness), shiftAt(met[1], backwards(last), -off, thickness)] as const;
  const whole = shifts[0] ?? (isFixed(met[0]) ? null : shifts[1]) ?? [0, 0];
  const moved = drawn.map((line) => lineMoved(translated(line, whole), off));
  const final = drawn.length - 1;
  if (final > 0 && shifts[1]) moved[final] = lineMoved(translated(last, shifts[1]), off);
  if (isFixed(met[1])) moved[final] = final > 0 ? backwards(lineFrom(met[1], backwards(last), thickness)) : last;
  if (isFixed(met[0])) moved[0] = first;
  const inner = moved.slice(1).map((line, i) => lineCrossing(moved[i] as Line, line) ?? line[0]);
  const [start, end] = [endOf(met[0], moved[0] as Line), endOf(met[1], backwards(moved[final] as Line))];
  const corners = [start, ...inner, end].map(roundPoint);
  return {
    lines: corners.slice(1).map((to, i): Line => [corners[i] as XY, to]),
    stretched: [stretchedTo(met[0], first[0], start), stretchedTo(met[1], last[1], end)].filter(
      (each) => each !== null,
    ),
  };
}

/** Returns the level with its existing walls stretched to the corners of a run. Unchecked: see `checkedWalls`. */
export function withWallsStretched(level: Level, { stretched }: BuiltRun): Level {
  return stretched.reduce((now, { id, end, by }) => {
    const wall = now.walls.find((each) => each.id === id);
    return wall ? withWallLength(now, id, wallLength(wall) + by, end) : now;
  }, level);
}

/**
 * Returns by how much the next wall of a run is longer than `typedWallEnd` alone would make it, mm. Not 0 where the run turns away from the
 * side on which an existing wall was taped, and after a first wall that continues an existing one in line, on its center-line.
 */
export function beyondTape(level: Level, points: readonly XY[], toward: XY, thickness: Mm, by: TapedBy): Mm {
  const [from, corner] = points;
  if (!from || points.length > 2) return 0;
  const start: Line = [from, corner ?? toward];
  const met = metAt(level, start);
  const off = offLeft(level, [...points, toward], [met, { kind: 'nothing' }], thickness, by);
  if (off === 0) return 0;
  if (!corner)
    return met.kind === 'open'
      ? aheadTo(start, faceOf(met.wall, from, off, thickness)) + HALVES_BEYOND[by] * halfWallAt(level, from, toward)
      : 0;
  if (!isFixed(met) || sineBetween(start, [corner, toward]) < ALONG) return 0;
  return aheadTo([corner, toward], lineMoved(start, -off));
}

/** Returns how far ahead of its first point a line crosses another one, mm; negative behind it. */
function aheadTo(line: Line, other: Line): Mm {
  const [at, toward] = line;
  const found = lineCrossing(line, other);
  if (!found) return 0;
  const [dx, dy] = [toward[0] - at[0], toward[1] - at[1]];
  return ((found[0] - at[0]) * dx + (found[1] - at[1]) * dy) / distance(at, toward);
}

/** Returns whether the center-line of the run passes through this end, whichever way the run was taped. */
function isFixed({ kind }: Met): boolean {
  return kind === 'along' || kind === 'corner';
}

/** Returns what is at the first point of a line. */
function metAt({ walls }: Level, line: Line): Met {
  const [at] = line;
  const [one, ...others] = walls.filter(({ from, to }) => distance(at, nearestOnSegment(at, from, to)) <= SAME_CORNER);
  if (!one) return { kind: 'nothing' };
  const ending = [one, ...others].filter((wall) => endAt(wall, at) !== null);
  const along = ending.find(({ from, to }) => sineBetween([from, to], line) < ALONG);
  if (along) return { kind: 'along', wall: along, isOpen: others.length === 0 };
  if (ending.length === 0) return { kind: 'body', wall: one };
  return others.length === 0 ? { kind: 'open', wall: one } : { kind: 'corner' };
}

function endAt({ from, to }: Wall, at: XY): 'from' | 'to' | null {
  if (distance(from, at) <= SAME_CORNER) return 'from';
  return distance(to, at) <= SAME_CORNER ? 'to' : null;
}

/** Returns how far the center-lines are to the left of the taped line, mm; 0 where the run encloses nothing. */
function offLeft(level: Level, run: readonly XY[], met: readonly [Met, Met], thickness: Mm, by: TapedBy): Mm {
  const [start, end] = [run[0], run.at(-1)];
  if (!start || !end) return 0;
  const [before, after] = [wallsBefore(level, met[0], start), wallsBefore(level, met[1], end).reverse()];
  // The existing walls are already built on one side of their taped lines, so their turn decides first.
  const turn = [before, after, [...before.slice(0, -1), ...run, ...after.slice(1)]]
    .map(turnOf)
    .find((each) => Math.abs(each) >= TURNS);
  return (-HALVES_BEYOND[by] * Math.sign(turn ?? 0) * thickness) / 2;
}

/** Returns the corners of the existing walls that lead to an open end, the end last; empty where the end is not open. */
function wallsBefore({ walls }: Level, met: Met, at: XY): XY[] {
  const isOpen = met.kind === 'open' || (met.kind === 'along' && met.isOpen);
  const found: XY[] = isOpen ? [at] : [];
  let wall = isOpen ? met.wall : null;
  let end = at;
  while (wall && found.length <= walls.length) {
    const now: Wall = wall;
    end = endAt(now, end) === 'from' ? now.to : now.from;
    found.unshift(end);
    const next = walls.filter(
      ({ id, from, to }) => id !== now.id && distance(end, nearestOnSegment(end, from, to)) <= SAME_CORNER,
    );
    wall = next.length === 1 && next[0] && endAt(next[0], end) ? next[0] : null;
  }
  return found;
}

/**
 * Returns the translation that makes the taped line of a run begin at the end of the taped face of the wall whose open end it turns off from.
 * A run drawn from the center-line already begins there at a right angle, but not at a slant.
 */
function shiftAt(met: Met, line: Line, off: Mm, thickness: Mm): XY | null {
  if (met.kind !== 'open') return null;
  const [at] = line;
  const face = faceOf(met.wall, at, off, thickness);
  const drawn = lineCrossing(line, face);
  return drawn && [face[1][0] - drawn[0], face[1][1] - drawn[1]];
}

/** Returns the taped face of a wall that ends at a point; the second point of the face is the one beside that point. */
function faceOf(wall: Wall, at: XY, off: Mm, thickness: Mm): Line {
  const own: Line = endAt(wall, at) === 'from' ? [wall.to, wall.from] : [wall.from, wall.to];
  return lineMoved(own, (-off * wall.thickness) / thickness);
}

/** Returns the line of a run that begins at the end of an existing wall; in line with that wall if it was drawn less than half a wall beside it. */
function lineFrom(met: Met, line: Line, thickness: Mm): Line {
  const [at, far] = line;
  if (met.kind !== 'along') return line;
  const { from, to } = met.wall;
  const length = distance(from, to);
  const beside = Math.abs(cross(from, to, far)) / length;
  if (beside > thickness / 2 + 1) return line;
  const sign = (to[0] - from[0]) * (far[0] - at[0]) + (to[1] - from[1]) * (far[1] - at[1]) > 0 ? 1 : -1;
  return [at, [at[0] + (sign * (to[0] - from[0])) / length, at[1] + (sign * (to[1] - from[1])) / length]];
}

/** Returns the point where the run begins, given its first line. */
function endOf(met: Met, line: Line): XY {
  return (
    (met.kind === 'open' || met.kind === 'body' ? lineCrossing(line, [met.wall.from, met.wall.to]) : null) ?? line[0]
  );
}

function stretchedTo(met: Met, open: XY, corner: XY): BuiltRun['stretched'][number] | null {
  const end = met.kind === 'open' ? endAt(met.wall, open) : null;
  if (met.kind !== 'open' || !end) return null;
  const { id, from, to } = met.wall;
  return { id, end, by: distance(corner, end === 'from' ? to : from) - distance(from, to) };
}

/** Returns the total turn of a run, radians; positive to the right. */
function turnOf(run: readonly XY[]): number {
  return run.slice(2).reduce((sum, c, i) => {
    const [a, b] = [run[i] as XY, run[i + 1] as XY];
    const dot = (b[0] - a[0]) * (c[0] - b[0]) + (b[1] - a[1]) * (c[1] - b[1]);
    return sum + Math.atan2(cross(a, b, c), dot);
  }, 0);
}

const backwards = ([a, b]: Line): Line => [b, a];

function translated([a, b]: Line, [dx, dy]: XY): Line {
  return [
    [a[0] + dx, a[1] + dy],
    [b[0] + dx, b[1] + dy],
  ];
}
