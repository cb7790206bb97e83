import { distance, nearestOnSegment } from '../point.ts';
import type { Level, Mm, Wall, XY } from './model.ts';

/** Ends closer than this count as joined, mm: a hair above what rounding to 1/64 in leaves. */
const JOINED = 0.5;

/** Length of the centre-line, mm. */
export function wallLength(wall: Wall): Mm {
  return distance(wall.from, wall.to);
}

/**
 * The level with one wall made `length` mm long: its `from` end stays, its `to` end moves along the wall. Walls joined there
 * go along: one that runs the same way is stretched, any other is shifted whole, and so on from its other end. So a
 * square room stays square. Openings keep their place on the page where their wall is stretched.
 * The wall has some length; `length` is positive.
 */
export function withWallLength(level: Level, wallId: string, length: Mm): Level {
  const wall = level.walls.find(({ id }) => id === wallId);
  const now = wall && wallLength(wall);
  if (!wall || !now || length === now) return level;
  const by: XY = [
    ((wall.to[0] - wall.from[0]) / now) * (length - now),
    ((wall.to[1] - wall.from[1]) / now) * (length - now),
  ];
  const moved = movedEnds(level.walls, wall, by);
  const walls = level.walls.map((one) => {
    const from = moved.has(`${one.id}/from`) ? plus(one.from, by) : one.from;
    const to = moved.has(`${one.id}/to`) ? plus(one.to, by) : one.to;
    return from === one.from && to === one.to ? one : { ...one, from, to };
  });
  return { ...level, walls, openings: level.openings.map((opening) => heldInPlace(opening, level.walls, moved, by)) };
}

/** Ends ("id/from", "id/to") that move, found by walking from joint to joint. */
function movedEnds(walls: readonly Wall[], start: Wall, by: XY): ReadonlySet<string> {
  const moved = new Set([`${start.id}/to`]);
  const joints: XY[] = [start.to];
  const shifted = new Set<string>();
  for (let joint = joints.pop(); joint; joint = joints.pop()) {
    for (const wall of walls) {
      if (wall.id === start.id) continue;
      for (const end of ['from', 'to'] as const) {
        if (distance(wall[end], joint) > JOINED || moved.has(`${wall.id}/${end}`)) continue;
        moved.add(`${wall.id}/${end}`);
        if (runsAlong(wall, by) || shifted.has(wall.id)) continue;
        shifted.add(wall.id);
        const other = end === 'from' ? 'to' : 'from';
        if (distance(wall[other], start.from) <= JOINED) continue; // a triangle: the fixed corner stays
        moved.add(`${wall.id}/${other}`);
        joints.push(wall[other], ...endsOn(wall, walls));
      }
    }
  }
  return moved;
}

/** Ends of other walls that butt against the middle of this one: they must follow it, or their room would open. */
function endsOn(wall: Wall, walls: readonly Wall[]): readonly XY[] {
  return walls
    .filter(({ id }) => id !== wall.id)
    .flatMap(({ from, to }) => [from, to])
    .filter((end) => distance(end, nearestOnSegment(end, wall.from, wall.to)) <= JOINED);
}

function runsAlong(wall: Wall, by: XY): boolean {
  const dx = wall.to[0] - wall.from[0];
  const dy = wall.to[1] - wall.from[1];
  const sine = Math.abs(dx * by[1] - dy * by[0]) / (Math.hypot(dx, dy) * Math.hypot(by[0], by[1]) || 1);
  return sine < 1e-3; // 1 mm in a metre
}

function heldInPlace(
  opening: Level['openings'][number],
  walls: readonly Wall[],
  moved: ReadonlySet<string>,
  by: XY,
): Level['openings'][number] {
  const wall = walls.find(({ id }) => id === opening.wall);
  if (!wall || !moved.has(`${wall.id}/from`) || moved.has(`${wall.id}/to`)) return opening;
  const length = wallLength(wall) || 1;
  const along = (by[0] * (wall.to[0] - wall.from[0]) + by[1] * (wall.to[1] - wall.from[1])) / length;
  return { ...opening, offset: opening.offset - along };
}

function plus([x, y]: XY, [dx, dy]: XY): XY {
  return [x + dx, y + dy];
}
