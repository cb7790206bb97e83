import type { Level, Opening, Shape, Wall, XY } from '../plan/model.ts';
import { sameIfUnchanged } from '../plane/memoize.ts';
import { along, distance, nearestParameter, roundCoordinate } from '../plane/point.ts';
import { translateShape } from '../plane/rigid-motion.ts';
import { JOINED } from '../plane/tolerances.ts';
import { withSupportedItems } from './supported-items.ts';

/**
 * Moves items by `by`. Walls that meet a moved wall end to end are stretched, and walls that butt against its middle
 * follow it sideways, so that no room opens. Openings stay on their walls; an opening alone slides by the component
 * of `by` along its wall. What is on top of a moved object moves with it.
 */
export function withItemsMoved(level: Level, ids: ReadonlySet<string>, by: XY): Level {
  return withSupportedItems(level, withOnlyItemsMoved(level, ids, by), ids);
}

/** `withItemsMoved` without what is on top of moved objects. */
export function withOnlyItemsMoved(level: Level, ids: ReadonlySet<string>, by: XY): Level {
  const shift = <T extends { readonly id: string; readonly at: XY }>(item: T): T =>
    ids.has(item.id) ? { ...item, at: plus(item.at, by) } : item;
  const shiftShape = <T extends { readonly id: string; readonly shape: Shape }>(item: T): T =>
    ids.has(item.id) ? { ...item, shape: translateShape(item.shape, by) } : item;
  const walls = level.walls.some(({ id }) => ids.has(id)) ? wallsMoved(level.walls, ids, by) : level.walls;
  const moved = withWalls(level, walls);
  return {
    ...moved,
    openings: moved.openings.map((opening) =>
      ids.has(opening.id) && !ids.has(opening.wall) ? slid(moved, opening, by) : opening,
    ),
    rooms: sameIfUnchanged(level.rooms, level.rooms.map(shift)),
    fixtures: sameIfUnchanged(level.fixtures, level.fixtures.map(shiftShape)),
    objects: sameIfUnchanged(level.objects, level.objects.map(shiftShape)),
    detectors: sameIfUnchanged(level.detectors, level.detectors.map(shift)),
  };
}

function wallsMoved(walls: readonly Wall[], ids: ReadonlySet<string>, by: XY): readonly Wall[] {
  const movers = walls.filter(({ id }) => ids.has(id));
  const follow = (end: XY): XY => {
    if (movers.some(({ from, to }) => distance(from, end) <= JOINED || distance(to, end) <= JOINED))
      return plus(end, by);
    const held = movers.find(
      ({ from, to }) => distance(end, along(from, to, nearestParameter(end, from, to))) <= JOINED,
    );
    return held ? plus(end, sideways(held, by)) : end;
  };
  return walls.map((wall) =>
    ids.has(wall.id)
      ? { ...wall, from: plus(wall.from, by), to: plus(wall.to, by) }
      : { ...wall, from: follow(wall.from), to: follow(wall.to) },
  );
}

/** Returns the component of a movement square to the wall. */
function sideways({ from, to }: Wall, by: XY): XY {
  const length = distance(from, to) || 1;
  const [ux, uy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
  const ahead = by[0] * ux + by[1] * uy;
  return [by[0] - ahead * ux, by[1] - ahead * uy];
}

/** Replaces walls; their openings keep their position on the page as far as the wall still extends there. */
export function withWalls(level: Level, walls: readonly Wall[]): Level {
  const same = walls.every((wall, i) => {
    const old = level.walls[i];
    return old && samePoint(old.from, wall.from) && samePoint(old.to, wall.to);
  });
  if (same) return level;
  const openings = level.openings.map((opening) => {
    const before = level.walls.find(({ id }) => id === opening.wall);
    const after = walls.find(({ id }) => id === opening.wall);
    return before && after ? heldInPlace(opening, before, after) : opening;
  });
  return { ...level, walls, openings };
}

function heldInPlace(opening: Opening, before: Wall, after: Wall): Opening {
  const [old, length] = [distance(before.from, before.to), distance(after.from, after.to)];
  if (old === 0 || length === 0) return opening;
  // The openings of a translated wall move with it.
  const rigid = samePoint(minus(after.from, before.from), minus(after.to, before.to));
  if (rigid) return opening;
  const middle = along(before.from, before.to, (opening.offset + opening.width / 2) / old);
  const wanted = nearestParameter(middle, after.from, after.to) * length - opening.width / 2;
  return { ...opening, offset: clamp(roundCoordinate(wanted), 0, Math.max(0, length - opening.width)) };
}

function slid(level: Level, opening: Opening, by: XY): Opening {
  const wall = level.walls.find(({ id }) => id === opening.wall);
  const length = wall ? distance(wall.from, wall.to) : 0;
  if (!wall || length === 0) return opening;
  const ahead = (by[0] * (wall.to[0] - wall.from[0]) + by[1] * (wall.to[1] - wall.from[1])) / length;
  return { ...opening, offset: clamp(roundCoordinate(opening.offset + ahead), 0, Math.max(0, length - opening.width)) };
}

function plus([x, y]: XY, [dx, dy]: XY): XY {
  return [roundCoordinate(x + dx), roundCoordinate(y + dy)];
}
function minus([x, y]: XY, [dx, dy]: XY): XY {
  return [x - dx, y - dy];
}
function samePoint(a: XY, b: XY): boolean {
  return Math.abs(a[0] - b[0]) < 1e-9 && Math.abs(a[1] - b[1]) < 1e-9;
}
function clamp(value: number, least: number, most: number): number {
  return Math.min(most, Math.max(least, value));
}
