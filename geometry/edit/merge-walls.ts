import { CROSSING_SINE } from '../level/tolerances.ts';
import { openingsRefusal } from '../messages/refusal.ts';
import type { Level, Mm, Opening, Plan, Wall, XY } from '../plan/model.ts';
import { along, distance, roundCoordinate, roundPoint } from '../plane/point.ts';
import { JOINED } from '../plane/tolerances.ts';
import type { LevelEdit } from './wall-edit.ts';

/** Walls with center-lines within this distance coincide, mm: half an inch, as for joined ends. */
const COINCIDENT: Mm = 12.7;
/** A remainder shorter than this is dropped, mm. */
const SHORTEST_REMAINDER: Mm = 25.4;

type Unit = Plan['display']['length'];

/**
 * Merges two coinciding walls: the thicker, then the longer, stays, and the coinciding part of the other is removed.
 * The remainders of the other become walls that start at it; if they have the same thickness and side, the wall is
 * lengthened instead. Openings keep their position on the page; walls that met the other one meet the one that stays.
 * Refused in words if they do not coincide, or if an opening does not fit.
 *
 * @param freshId for the second of two remainders
 */
export function mergedWalls(level: Level, ids: readonly [string, string], freshId: string, unit: Unit): LevelEdit {
  const [a, b] = ids.map((id) => level.walls.find((wall) => wall.id === id));
  if (!a || !b || a === b) return { ok: true, level };
  const [stays, other] = isMain(a, b) ? [a, b] : [b, a];
  const share = coincidingInterval(stays, other);
  if (!share) return { ok: false, reason: 'The walls do not lie on one another. There is nothing to make one of.' };
  const parts = partsLeft(stays, other, share);
  const whole = lengthened(stays, other, parts);
  const left = parts
    .filter((part) => !whole.taken.includes(part))
    .map((part, i) => wallOf(part, other, i > 0 ? freshId : other.id));
  const inPlace = new Map<Wall, readonly Wall[]>([
    [stays, [whole.wall]],
    [other, left],
  ]);
  const walls = level.walls
    .flatMap((wall) => inPlace.get(wall) ?? [wall])
    .map((wall) => (wall === whole.wall || left.includes(wall) ? wall : reconnected(wall, stays, other, whole.wall)));
  const openings = level.openings.map((opening) => rehosted(opening, stays, other, whole.wall, left));
  const after: Level = { ...level, walls, openings };
  const reason = openingsRefusal(level, after, unit);
  return reason ? { ok: false, reason } : { ok: true, level: after };
}

function isMain(a: Wall, b: Wall): boolean {
  if (Math.abs(a.thickness - b.thickness) > 0.05) return a.thickness > b.thickness;
  // Of two equally long walls, the first stays.
  return distance(a.from, a.to) >= distance(b.from, b.to) - SHORTEST_REMAINDER;
}

/**
 * Returns the interval of the other wall that coincides with the one that stays, as fractions of its length; null if
 * none does.
 */
function coincidingInterval(stays: Wall, other: Wall): readonly [number, number] | null {
  const [start, end] = [spotOn(stays, other.from), spotOn(stays, other.to)];
  const length = distance(stays.from, stays.to);
  const whole = distance(other.from, other.to);
  if (length === 0 || whole === 0) return null;
  if (Math.abs(end.off - start.off) > CROSSING_SINE * whole) return null;
  const [beside, level] = [within(start.off, end.off, -COINCIDENT, COINCIDENT), within(start.far, end.far, 0, length)];
  const [low, high] = [Math.max(beside[0], level[0]), Math.min(beside[1], level[1])];
  return (high - low) * whole > SHORTEST_REMAINDER ? [low, high] : null;
}

/** Returns the fractions between `a` and `b` at which a linear value is in an interval; empty if none. */
function within(a: number, b: number, least: number, most: number): [number, number] {
  if (Math.abs(b - a) < 1e-9) return a >= least && a <= most ? [0, 1] : [1, 0];
  const [p, q] = [(least - a) / (b - a), (most - a) / (b - a)];
  return [Math.max(0, Math.min(p, q)), Math.min(1, Math.max(p, q))];
}

/** Returns the position of a point relative to a wall, mm: along it from its `from`, and off its line. */
function spotOn({ from, to }: Wall, [x, y]: XY): { readonly far: Mm; readonly off: Mm } {
  const length = distance(from, to) || 1;
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const [dx, dy] = [x - from[0], y - from[1]];
  return { far: dx * ux + dy * uy, off: dy * ux - dx * uy };
}

/** A remainder of the other wall: `cut` is its new end on the wall that stays, `end` its old one. */
interface Remainder {
  readonly end: 'from' | 'to';
  readonly cut: XY;
  readonly far: XY;
}

function partsLeft(stays: Wall, other: Wall, [low, high]: readonly [number, number]): readonly Remainder[] {
  const whole = distance(other.from, other.to);
  const part = (end: 'from' | 'to', share: number): Remainder => {
    return { end, cut: onLine(stays, along(other.from, other.to, share)), far: other[end] };
  };
  return [
    ...(low * whole > SHORTEST_REMAINDER ? [part('from', low)] : []),
    ...((1 - high) * whole > SHORTEST_REMAINDER ? [part('to', high)] : []),
  ];
}

/** Returns the foot of a point on the line of a wall. */
function onLine(wall: Wall, at: XY): XY {
  const length = distance(wall.from, wall.to) || 1;
  return roundPoint(along(wall.from, wall.to, spotOn(wall, at).far / length));
}

/** Returns the wall that stays, lengthened by remainders that are collinear with it and built alike. */
function lengthened(
  stays: Wall,
  other: Wall,
  parts: readonly Remainder[],
): { readonly wall: Wall; readonly taken: readonly Remainder[] } {
  const alike = Math.abs(stays.thickness - other.thickness) <= 0.05 && stays.side === other.side;
  const taken = alike ? parts.filter(({ far }) => Math.abs(spotOn(stays, far).off) <= COINCIDENT) : [];
  let wall = stays;
  for (const { far } of taken) {
    const at = onLine(stays, far);
    wall = spotOn(wall, far).far < 0 ? { ...wall, from: at } : { ...wall, to: at };
  }
  return { wall, taken };
}

function wallOf({ end, cut, far }: Remainder, other: Wall, id: string): Wall {
  return end === 'from' ? { ...other, id, from: far, to: cut } : { ...other, id, from: cut, to: far };
}

/** Ends that met an end of the other wall on its line now meet the one that stays. */
function reconnected(wall: Wall, stays: Wall, other: Wall, now: Wall): Wall {
  const end = (at: XY): XY => {
    const met = distance(at, other.from) <= JOINED || distance(at, other.to) <= JOINED;
    const { far, off } = spotOn(now, at);
    const beside = far >= -COINCIDENT && far <= distance(now.from, now.to) + COINCIDENT;
    if (!met || !beside || Math.abs(off) > COINCIDENT) return at;
    // A corner stays a corner.
    return [now.from, now.to].find((corner) => distance(corner, at) <= COINCIDENT) ?? onLine(stays, at);
  };
  const [from, to] = [end(wall.from), end(wall.to)];
  return from === wall.from && to === wall.to ? wall : { ...wall, from, to };
}

/** Moves an opening to the wall next to its middle, at the same position on the page. */
function rehosted(opening: Opening, stays: Wall, other: Wall, now: Wall, left: readonly Wall[]): Opening {
  const was = [stays, other].find(({ id }) => id === opening.wall);
  if (!was || (was === stays && now.from === stays.from)) return opening;
  const middle = along(was.from, was.to, (opening.offset + opening.width / 2) / (distance(was.from, was.to) || 1));
  const on = (was === other && left.find((wall) => isBeside(wall, middle))) || now;
  const length = distance(on.from, on.to);
  const offset = spotOn(on, middle).far - opening.width / 2;
  return {
    ...opening,
    wall: on.id,
    offset: roundCoordinate(Math.max(0, Math.min(offset, Math.max(0, length - opening.width)))),
  };
}

function isBeside(wall: Wall, at: XY): boolean {
  const { far } = spotOn(wall, at);
  return far >= 0 && far <= distance(wall.from, wall.to);
}
