import type { Level, Mm, Opening, Plan, Wall, XY } from '../plan/model.ts';
import { along, distance, roundCoordinate, roundPoint } from '../plane/point.ts';
import { JOINED } from '../plane/tolerances.ts';
import { formatLength } from '../units/index.ts';
import { type LevelEdit, SHORTEST_WALL } from './wall-edit.ts';
import { jointOf } from './walls-running-on.ts';

type Unit = Plan['display']['length'];
/** A split this near to a jamb, mm, is at the jamb: coordinates are rounded. */
const AT_JAMB: Mm = 0.005;

/**
 * Splits a wall at `at` mm from its `from` end: the first part keeps the id, the second, `newId`, follows it in the
 * list.
 * Openings stay in place. Refused within an opening and at the very ends. An unknown wall returns the level unchanged.
 */
export function withWallSplit(level: Level, id: string, at: Mm, newId: string, unit: Unit): LevelEdit {
  const wall = level.walls.find((each) => each.id === id);
  if (!wall) return { ok: true, level };
  const length = distance(wall.from, wall.to);
  if (!(at >= SHORTEST_WALL && at <= length - SHORTEST_WALL)) {
    return {
      ok: false,
      reason: `The wall is ${formatLength(length, unit)} long. Split it somewhere between its ends.`,
    };
  }
  const cut = level.openings.find(
    ({ wall: on, offset, width }) => on === id && offset + AT_JAMB < at && offset + width - AT_JAMB > at,
  );
  if (cut) {
    const beside = Math.min(at - cut.offset, cut.offset + cut.width - at);
    return {
      ok: false,
      reason: `The ${cut.kind} stands there. Split the wall ${formatLength(beside, unit, 'up')} to the side, or move the ${cut.kind} first.`,
    };
  }
  const joint = roundPoint(along(wall.from, wall.to, at / length));
  const walls = level.walls.flatMap((each) =>
    each === wall
      ? [
          { ...wall, to: joint },
          { ...wall, id: newId, from: joint },
        ]
      : [each],
  );
  const openings = level.openings.map((opening): Opening => {
    if (opening.wall !== id) return opening;
    if (opening.offset + AT_JAMB < at)
      return { ...opening, offset: within(opening, opening.offset, distance(wall.from, joint)) };
    return { ...opening, wall: newId, offset: within(opening, opening.offset - at, distance(joint, wall.to)) };
  });
  return { ok: true, level: { ...level, walls, openings } };
}

/**
 * Joins two collinear walls that meet; the result keeps the id, thickness and side of the first, and the openings of
 * both in place. Refused in words if they do not meet, are not collinear, or are built differently.
 */
export function withWallsJoined(level: Level, id: string, otherId: string, unit: Unit): LevelEdit {
  const wall = level.walls.find((each) => each.id === id);
  const other = level.walls.find((each) => each.id === otherId);
  if (!wall || !other || wall === other) return { ok: true, level };
  const joint = jointOf(wall, other);
  if (!joint) return { ok: false, reason: apartWords(wall, other, unit) };
  if (Math.abs(wall.thickness - other.thickness) > 0.05) {
    const [a, b] = [formatLength(wall.thickness, unit), formatLength(other.thickness, unit)];
    return { ok: false, reason: `The walls are ${a} and ${b} thick. Make them equally thick first.` };
  }
  if (wall.side !== other.side) {
    return {
      ok: false,
      reason: 'The walls are set to different sides (exterior, interior or automatic). Set both the same first.',
    };
  }
  const [own, met] = joint.ends;
  const far = other[met === 'from' ? 'to' : 'from'];
  const joined: Wall = { ...wall, [own]: far };
  const length = distance(joined.from, joined.to);
  const openings = level.openings.map((opening): Opening => {
    const on = [wall, other].find((each) => each.id === opening.wall);
    if (!on) return opening;
    const whole = distance(on.from, on.to) || 1;
    const jambs = [opening.offset, opening.offset + opening.width].map((mm) =>
      distanceAlong(joined, along(on.from, on.to, mm / whole)),
    );
    return { ...opening, wall: id, offset: within(opening, Math.min(...jambs), length) };
  });
  const walls = level.walls.filter((each) => each !== other).map((each) => (each === wall ? joined : each));
  return { ok: true, level: { ...level, walls, openings } };
}

function apartWords(wall: Wall, other: Wall, unit: Unit): string {
  const gap = Math.min(...[wall.from, wall.to].flatMap((a) => [other.from, other.to].map((b) => distance(a, b))));
  if (gap > JOINED)
    return `The walls are ${formatLength(gap, unit, 'up')} apart. Lengthen one until they meet end to end, then join them.`;
  return 'The walls turn where they meet. Only walls that run straight on can be joined.';
}

function distanceAlong({ from, to }: Wall, p: XY): Mm {
  const length = distance(from, to) || 1;
  return ((p[0] - from[0]) * (to[0] - from[0]) + (p[1] - from[1]) * (to[1] - from[1])) / length;
}

/** Clamps the offset, so that rounding never puts an opening past the end of its wall. */
function within({ width }: Opening, offset: Mm, length: Mm): Mm {
  return roundCoordinate(Math.max(0, Math.min(offset, length - width)));
}
