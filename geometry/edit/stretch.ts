import { wallLength } from '../plan/items.ts';
import type { Level, Mm, Wall, XY } from '../plan/model.ts';
import { sameIfUnchanged } from '../plane/memoize.ts';
import { distance, nearestOnSegment, roundCoordinate } from '../plane/point.ts';
import { JOINED } from '../plane/tolerances.ts';

/** Which end of a wall moves when its length is corrected; `both` by half each. */
export type MovingEnd = 'from' | 'to' | 'both';

/**
 * Returns the level with one wall made `length` mm long by moving the given end along the wall. Joined walls
 * follow: parallel ones are stretched, others are translated, and so on from their other ends; so does a wall
 * that the end butts against. A square room stays square. Openings of a stretched wall keep their position on the page.
 * The wall has a length; `length` is positive. Unchecked: see `correctedWall`.
 */
export function withWallLength(level: Level, wallId: string, length: Mm, moves: MovingEnd = 'to'): Level {
  const wall = level.walls.find(({ id }) => id === wallId);
  const now = wall && wallLength(wall);
  if (!wall || !now || length === now) return level;
  if (moves === 'both') {
    return withWallLength(withWallLength(level, wallId, (now + length) / 2, 'to'), wallId, length, 'from');
  }
  const fixed = moves === 'to' ? wall.from : wall.to;
  const by: XY = [
    ((wall[moves][0] - fixed[0]) / now) * (length - now),
    ((wall[moves][1] - fixed[1]) / now) * (length - now),
  ];
  return withEndsMoved(level, movedEnds(level.walls, wall, [moves], fixed, by), by);
}

/**
 * Returns the level with one wall translated by `by`, mm, across its own line. Walls joined to its ends are stretched
 * if parallel to the movement and translated if not, as for a corrected length; walls that it butts against stay, and
 * its ends slide along them. Unchecked: see `checkedWalls`.
 */
export function withWallShifted(level: Level, wallId: string, by: XY): Level {
  const wall = level.walls.find(({ id }) => id === wallId);
  if (!wall || (by[0] === 0 && by[1] === 0)) return level;
  return withEndsMoved(level, movedEnds(level.walls, wall, ['from', 'to'], null, by), by);
}

function withEndsMoved(level: Level, moved: ReadonlySet<string>, by: XY): Level {
  const walls = level.walls.map((one) => {
    const from = moved.has(`${one.id}/from`) ? plus(one.from, by) : one.from;
    const to = moved.has(`${one.id}/to`) ? plus(one.to, by) : one.to;
    return from === one.from && to === one.to ? one : { ...one, from, to };
  });
  const openings = level.openings.map((opening) => heldInPlace(opening, level.walls, moved, by));
  return { ...level, walls, openings: sameIfUnchanged(level.openings, openings) };
}

/**
 * Returns the ends ("id/from", "id/to") that move, found by a traversal from joint to joint. The first wall moves by
 * `ends`; its `fixed` end stays.
 */
function movedEnds(
  walls: readonly Wall[],
  start: Wall,
  ends: readonly ('from' | 'to')[],
  fixed: XY | null,
  by: XY,
): ReadonlySet<string> {
  const moved = new Set(ends.map((end) => `${start.id}/${end}`));
  const joints: XY[] = [...ends.map((end) => start[end]), ...(fixed ? [] : endsOn(start, walls))];
  const shifted = new Set<string>();
  const shift = (wall: Wall, reached: 'from' | 'to' | null) => {
    if (runsAlong(wall, by) || shifted.has(wall.id)) return;
    shifted.add(wall.id);
    const others = (['from', 'to'] as const).filter((own) => own !== reached);
    if (fixed && others.some((own) => distance(wall[own], fixed) <= JOINED)) return; // a triangle: the fixed corner stays
    for (const own of others) {
      moved.add(`${wall.id}/${own}`);
      joints.push(wall[own]);
    }
    joints.push(...endsOn(wall, walls));
  };
  for (let joint = joints.pop(); joint; joint = joints.pop()) {
    for (const wall of walls) {
      if (wall.id === start.id) continue;
      const own = (['from', 'to'] as const).find((each) => distance(wall[each], joint as XY) <= JOINED);
      if (own && !moved.has(`${wall.id}/${own}`)) {
        moved.add(`${wall.id}/${own}`);
        shift(wall, own);
      } else if (!own && distance(joint, nearestOnSegment(joint, wall.from, wall.to)) <= JOINED) shift(wall, null);
    }
  }
  return moved;
}

/**
 * Returns the ends of other walls that butt against the middle of this one: they must follow, or their room would open.
 */
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
  return sine < 1e-3; // 1 mm in a meter
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
  return { ...opening, offset: roundCoordinate(opening.offset - along) };
}

function plus([x, y]: XY, [dx, dy]: XY): XY {
  return [roundCoordinate(x + dx), roundCoordinate(y + dy)];
}
