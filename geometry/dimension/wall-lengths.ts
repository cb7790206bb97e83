import type { LevelModel } from '../level/types.ts';
import type { Mm, Wall, XY } from '../plan/model.ts';
import { along, distance, nearestOnSegment } from '../plane/point.ts';
import { ringsContain } from '../plane/ring.ts';
import { JOINED } from '../plane/tolerances.ts';
import type { TapedBy } from './taped-by.ts';

/** A room is looked up this far in front of a face, mm. */
const IN_FRONT: Mm = 2;
/** Sine of the angle below which a wall continues in line, or folds back over the other one. */
const IN_LINE = 0.05;

/** Right and left of the wall's direction, on screen. */
type Side = 1 | -1;

/**
 * Returns the length of a wall as taped in each of the three ways, mm. Inside: along its face toward the room, from the
 * face of the wall that meets it at one end to that at the other, ignoring walls that butt against it between. Outside:
 * along its other face. With rooms on both sides or on neither, inside is the mean of both faces, and outside is longer than
 * the center-line by as much as inside is shorter; without a room, if the faces differ, the shorter one is inside. A
 * free end is square.
 */
export function wallLengths(model: LevelModel, wall: Wall): Readonly<Record<TapedBy, Mm>> {
  const center = distance(wall.from, wall.to);
  const [right, left] = [faceLength(model.level.walls, wall, 1), faceLength(model.level.walls, wall, -1)];
  const rooms = ([1, -1] as const).filter((side) => hasRoom(model, wall, side));
  if (rooms.length === 1) {
    return rooms[0] === 1 ? { inside: right, outside: left, center } : { inside: left, outside: right, center };
  }
  if (rooms.length === 0 && Math.abs(right - left) > JOINED) {
    return { inside: Math.min(right, left), outside: Math.max(right, left), center };
  }
  const inside = (right + left) / 2;
  return { inside, outside: 2 * center - inside, center };
}

function faceLength(walls: readonly Wall[], wall: Wall, side: Side): Mm {
  const length = distance(wall.from, wall.to);
  return Math.max(0, length - inset(walls, wall, 'from', side) - inset(walls, wall, 'to', side));
}

/** Returns how far from the end of a wall its face on one side begins, mm; negative where the face extends beyond the end. */
function inset(walls: readonly Wall[], wall: Wall, end: 'from' | 'to', side: Side): Mm {
  const [node, other] = end === 'from' ? [wall.from, wall.to] : [wall.to, wall.from];
  const own = Math.atan2(other[1] - node[1], other[0] - node[0]);
  // Seen from the other end, the wall's right side is on the left.
  const turn = end === 'from' ? side : -side;
  let least = Number.POSITIVE_INFINITY;
  let thickness = 0;
  for (const { toward, thick } of spokesAt(walls, wall, node)) {
    const angle = Math.atan2(toward[1] - node[1], toward[0] - node[0]);
    const opened = ((((angle - own) * turn) % TURN) + TURN) % TURN;
    // Of several walls in one direction, the thickest counts.
    if (opened < least - 1e-6 || (opened < least + 1e-6 && thick > thickness)) {
      least = opened;
      thickness = thick;
    }
  }
  const sine = Math.sin(least);
  if (!Number.isFinite(least) || Math.abs(sine) < IN_LINE) return 0;
  return (thickness / 2 + (wall.thickness / 2) * Math.cos(least)) / sine;
}

const TURN = 2 * Math.PI;

/** Returns the directions in which other walls leave a point: one for an end there, two for a wall that passes through. */
function spokesAt(
  walls: readonly Wall[],
  wall: Wall,
  node: XY,
): readonly { readonly toward: XY; readonly thick: Mm }[] {
  return walls.flatMap(({ id, from, to, thickness }) => {
    if (id === wall.id || distance(node, nearestOnSegment(node, from, to)) > JOINED) return [];
    return [from, to].filter((end) => distance(end, node) > JOINED).map((toward) => ({ toward, thick: thickness }));
  });
}

/** Returns whether a room is on one side of a wall, at a third or two thirds of its length. */
function hasRoom({ rooms }: LevelModel, { from, to, thickness }: Wall, side: Side): boolean {
  const length = distance(from, to) || 1;
  const off = (thickness / 2 + IN_FRONT) * side;
  const [dx, dy] = [(-(to[1] - from[1]) * off) / length, ((to[0] - from[0]) * off) / length];
  return [1 / 3, 2 / 3].some((share) => {
    const [x, y] = along(from, to, share);
    return rooms.some(({ floorRings }) => ringsContain(floorRings, [x + dx, y + dy]));
  });
}
