import type { Mm, Wall, XY } from '../plan/model.ts';
import { apart, direction, dot, lineCrossing, nearestOnSegment, segmentDistance, vector } from './plane.ts';

/** Points within this distance are one, mm. */
export const SAME = 0.01;
/** A loose end this near to another loose end or to a wall is joined to it: half an inch. */
const JOINED = 12.7;
/** The thinnest half of a wall, mm: a wall drawn without thickness still parts two rooms. */
const THINNEST = 0.001;

/** The centre-line of one wall, its loose ends joined. */
export interface Line {
  readonly wall: Wall;
  readonly from: XY;
  readonly to: XY;
  /** From `from` to `to` as drawn: joining turns no wall. */
  readonly along: XY;
  readonly half: Mm;
}

interface Loose {
  readonly wall: Wall;
  readonly end: 'from' | 'to';
  readonly at: XY;
}

/** The centre-lines of the walls: a loose end near another loose end or a wall is led on to where the two lines cross. */
export function centreLines(drawn: readonly Wall[]): Line[] {
  const walls = drawn.filter(({ from, to }) => apart(from, to) > SAME);
  const loose = walls.flatMap((wall) =>
    (['from', 'to'] as const)
      .map((end): Loose => ({ wall, end, at: wall[end] }))
      .filter(({ at }) => !walls.some((other) => other !== wall && segmentDistance(at, other.from, other.to) <= SAME)),
  );
  return walls.map((wall) => ({
    wall,
    from: joinedEnd(wall, 'from', walls, loose),
    to: joinedEnd(wall, 'to', walls, loose),
    along: direction(wall.from, wall.to),
    half: Math.max(wall.thickness / 2, THINNEST),
  }));
}

function joinedEnd(wall: Wall, end: 'from' | 'to', walls: readonly Wall[], loose: readonly Loose[]): XY {
  const at = wall[end];
  if (!loose.some((one) => one.wall === wall && one.end === end)) return at;
  const mate = nearest(
    loose.filter((one) => one.wall !== wall),
    (one) => apart(at, one.at),
  );
  if (mate) return crossingNear(wall, mate.wall, at) ?? middleOf(at, mate.at);
  const other = nearest(
    walls.filter((one) => one !== wall),
    (one) => segmentDistance(at, one.from, one.to),
  );
  return other ? (crossingNear(wall, other, at) ?? nearestOnSegment(at, other.from, other.to)) : at;
}

function nearest<T>(among: readonly T[], distance: (one: T) => Mm): T | null {
  let best: T | null = null;
  let least = JOINED;
  for (const one of among) {
    const d = distance(one);
    if (d > least) continue;
    least = d;
    best = one;
  }
  return best;
}

/** Where the lines of two walls cross, unless that is far from the end: they run nearly the same way then. */
function crossingNear(a: Wall, b: Wall, end: XY): XY | null {
  const x = lineCrossing(a.from, a.to, b.from, b.to);
  return x && apart(x, end) <= 4 * JOINED ? x : null;
}

const middleOf = (a: XY, b: XY): XY => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];

/** How far along the line a point lies, mm from where the wall was drawn from. */
export const alongLine = (line: Line, p: XY): Mm => dot(vector(line.wall.from, p), line.along);
