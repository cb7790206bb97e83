import type { Notice } from '../level/types.ts';
import { openingsRefusal } from '../messages/refusal.ts';
import type { Level, Mm, Plan, Wall, XY } from '../plan/model.ts';
import { lineCrossing } from '../plane/line.ts';
import { distance, nearestOnSegment, roundPoint } from '../plane/point.ts';
import { JOINED } from '../plane/tolerances.ts';
import { withWalls } from './move-items.ts';
import type { LevelEdit } from './wall-edit.ts';

/** A gap that counts as closed is reported where the walls would meet: at most this far from the end, mm. */
const NEAR: Mm = 25.4;

/** An end is lengthened along its wall by at most this many times the width of the gap; beyond that it goes straight across. */
const FARTHEST = 3;

type End = 'from' | 'to';

/** A wall and the end of it that misses the other wall. */
interface LooseEnd {
  readonly wall: Wall;
  readonly end: End;
}

/**
 * Returns the level with the walls of a notice joined: the loose end is lengthened, or cut back, along its wall to the
 * center-line of the other wall. Two loose ends both go to the corner where their lines cross. If the lines do not cross
 * near the gap, the end goes straight across. Openings keep their position. Refused if an opening would no longer fit, or
 * if the walls are no longer as reported.
 */
export function mendedGap(level: Level, { ids, at, length }: Notice, unit: Plan['display']['length']): LevelEdit {
  const walls = ids.flatMap((id) => level.walls.find((wall) => wall.id === id) ?? []);
  const loose = looseEnd(level, walls, at, Math.max(length ?? 0, NEAR) + JOINED);
  const other = loose && nearestWall(walls, loose);
  if (!loose || !other) return { ok: false, reason: 'The walls are not as they were. Draw one end onto the other.' };
  const moves = joined(level, loose, other, length ?? 0);
  const after = withWalls(
    level,
    level.walls.map((wall) => {
      const move = moves.find((each) => each.wall === wall);
      return move ? { ...wall, [move.end]: move.to } : wall;
    }),
  );
  const reason = openingsRefusal(level, after, unit);
  return reason ? { ok: false, reason } : { ok: true, level: after };
}

/** Returns the loose end that the notice is about: of the ends that no other wall meets, the one nearest to the notice. */
function looseEnd(level: Level, walls: readonly Wall[], at: XY, reach: Mm): LooseEnd | null {
  let best: LooseEnd | null = null;
  let least = reach;
  for (const wall of walls) {
    for (const end of ['from', 'to'] as const) {
      const far = distance(wall[end], at);
      if (far <= least && isLoose(level, wall, end)) {
        least = far;
        best = { wall, end };
      }
    }
  }
  return best;
}

function isLoose({ walls }: Level, wall: Wall, end: End): boolean {
  return walls.every(
    ({ id, from, to }) => id === wall.id || distance(wall[end], nearestOnSegment(wall[end], from, to)) > JOINED,
  );
}

function nearestWall(walls: readonly Wall[], { wall, end }: LooseEnd): Wall | null {
  const far = ({ from, to }: Wall) => distance(wall[end], nearestOnSegment(wall[end], from, to));
  const [nearest] = walls.filter((each) => each !== wall).sort((a, b) => far(a) - far(b));
  return nearest ?? null;
}

/** Returns the ends that move, and where to. */
function joined(level: Level, loose: LooseEnd, other: Wall, gap: Mm): readonly (LooseEnd & { readonly to: XY })[] {
  const { wall, end } = loose;
  const from = wall[end];
  const near = nearestOnSegment(from, other.from, other.to);
  const crossing = lineCrossing([wall.from, wall.to], [other.from, other.to]);
  const isNear = crossing !== null && distance(crossing, from) <= FARTHEST * Math.max(gap, distance(from, near));
  const to = roundPoint(isNear ? crossing : near);
  if (distance(to, nearestOnSegment(to, other.from, other.to)) <= JOINED) return [{ ...loose, to }];
  // The crossing is beyond the end of the other wall: that end, if it is loose too, moves to the corner.
  const tip: End = distance(to, other.from) <= distance(to, other.to) ? 'from' : 'to';
  if (isLoose(level, other, tip))
    return [
      { ...loose, to },
      { wall: other, end: tip, to },
    ];
  return [{ ...loose, to: other[tip] }];
}
