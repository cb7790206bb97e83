import { openingsRefusal } from '../messages/refusal.ts';
import type { Level, Mm, Opening, Plan, Wall, XY } from '../plan/model.ts';
import { along, distance, roundCoordinate, roundPoint } from '../plane/point.ts';
import { JOINED } from './move-items.ts';
import type { LevelEdit } from './wall-edit.ts';

/** Walls whose centre-lines run this near to one another lie on one another, mm: half an inch, as ends that count as joined. */
const LAID: Mm = 12.7;
/** Walls turned by more than this against each other, as the sine of the angle, cross. */
const STEEP = 0.1;
/** What is left of a wall and shorter than this is no wall of its own, mm. */
const LEFT_OVER: Mm = 25.4;

type Unit = Plan['display']['length'];

/**
 * Of two walls that lie on one another one: the thicker, then the longer, stays where it is, and the other one goes as far as it
 * lies on it. What of the other runs on beyond it stays as a wall that begins at it; a wall of the same build is lengthened
 * instead. Openings are hung on what is now there, in their place on the page; walls that met the other one meet the one that
 * stays. Refused, in words, where they do not lie on one another, or an opening finds no place.
 * @param freshId for the second of two parts that are left
 */
export function wallsMadeOne(level: Level, ids: readonly [string, string], freshId: string, unit: Unit): LevelEdit {
  const [a, b] = ids.map((id) => level.walls.find((wall) => wall.id === id));
  if (!a || !b || a === b) return { ok: true, level };
  const [stays, other] = isMain(a, b) ? [a, b] : [b, a];
  const share = laidShare(stays, other);
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
    .map((wall) => (wall === whole.wall || left.includes(wall) ? wall : metAgain(wall, stays, other, whole.wall)));
  const openings = level.openings.map((opening) => hungAgain(opening, stays, other, whole.wall, left));
  const after: Level = { ...level, walls, openings };
  const reason = openingsRefusal(level, after, unit);
  return reason ? { ok: false, reason } : { ok: true, level: after };
}

function isMain(a: Wall, b: Wall): boolean {
  if (Math.abs(a.thickness - b.thickness) > 0.05) return a.thickness > b.thickness;
  // Of two that are as long as one another the first.
  return distance(a.from, a.to) >= distance(b.from, b.to) - LEFT_OVER;
}

/** From where to where along the other wall, as shares of it, it lies on the one that stays; null where it does not. */
function laidShare(stays: Wall, other: Wall): readonly [number, number] | null {
  const [start, end] = [spotOn(stays, other.from), spotOn(stays, other.to)];
  const length = distance(stays.from, stays.to);
  const whole = distance(other.from, other.to);
  if (length === 0 || whole === 0) return null;
  if (Math.abs(end.off - start.off) > STEEP * whole) return null;
  const [beside, level] = [within(start.off, end.off, -LAID, LAID), within(start.far, end.far, 0, length)];
  const [low, high] = [Math.max(beside[0], level[0]), Math.min(beside[1], level[1])];
  return (high - low) * whole > LEFT_OVER ? [low, high] : null;
}

/** The shares of the way from `a` to `b` between which a value is in an interval; none where it never is. */
function within(a: number, b: number, least: number, most: number): [number, number] {
  if (Math.abs(b - a) < 1e-9) return a >= least && a <= most ? [0, 1] : [1, 0];
  const [p, q] = [(least - a) / (b - a), (most - a) / (b - a)];
  return [Math.max(0, Math.min(p, q)), Math.min(1, Math.max(p, q))];
}

/** Where a point is by a wall: along it from its `from`, and how far off its line, mm. */
function spotOn({ from, to }: Wall, [x, y]: XY): { readonly far: Mm; readonly off: Mm } {
  const length = distance(from, to) || 1;
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const [dx, dy] = [x - from[0], y - from[1]];
  return { far: dx * ux + dy * uy, off: dy * ux - dx * uy };
}

/** What is left of the other wall: `cut` is its new end on the wall that stays, `end` the one that it had. */
interface Part {
  readonly end: 'from' | 'to';
  readonly cut: XY;
  readonly far: XY;
}

function partsLeft(stays: Wall, other: Wall, [low, high]: readonly [number, number]): readonly Part[] {
  const whole = distance(other.from, other.to);
  const part = (end: 'from' | 'to', share: number): Part => {
    return { end, cut: onLine(stays, along(other.from, other.to, share)), far: other[end] };
  };
  return [
    ...(low * whole > LEFT_OVER ? [part('from', low)] : []),
    ...((1 - high) * whole > LEFT_OVER ? [part('to', high)] : []),
  ];
}

/** The foot of a point on the line of a wall. */
function onLine(wall: Wall, at: XY): XY {
  const length = distance(wall.from, wall.to) || 1;
  return roundPoint(along(wall.from, wall.to, spotOn(wall, at).far / length));
}

/** The wall that stays with the parts taken on that run straight on from it and are built as it is. */
function lengthened(
  stays: Wall,
  other: Wall,
  parts: readonly Part[],
): { readonly wall: Wall; readonly taken: readonly Part[] } {
  const alike = Math.abs(stays.thickness - other.thickness) <= 0.05 && stays.side === other.side;
  const taken = alike ? parts.filter(({ far }) => Math.abs(spotOn(stays, far).off) <= LAID) : [];
  let wall = stays;
  for (const { far } of taken) {
    const at = onLine(stays, far);
    wall = spotOn(wall, far).far < 0 ? { ...wall, from: at } : { ...wall, to: at };
  }
  return { wall, taken };
}

function wallOf({ end, cut, far }: Part, other: Wall, id: string): Wall {
  return end === 'from' ? { ...other, id, from: far, to: cut } : { ...other, id, from: cut, to: far };
}

/** Ends that met an end of the other wall, and had the same line, meet the one that stays. */
function metAgain(wall: Wall, stays: Wall, other: Wall, now: Wall): Wall {
  const end = (at: XY): XY => {
    const met = distance(at, other.from) <= JOINED || distance(at, other.to) <= JOINED;
    const { far, off } = spotOn(now, at);
    const beside = far >= -LAID && far <= distance(now.from, now.to) + LAID;
    if (!met || !beside || Math.abs(off) > LAID) return at;
    // A corner stays a corner.
    return [now.from, now.to].find((corner) => distance(corner, at) <= LAID) ?? onLine(stays, at);
  };
  const [from, to] = [end(wall.from), end(wall.to)];
  return from === wall.from && to === wall.to ? wall : { ...wall, from, to };
}

/** On the wall that its middle is beside now, in the same place on the page. */
function hungAgain(opening: Opening, stays: Wall, other: Wall, now: Wall, left: readonly Wall[]): Opening {
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
