import { buildLevel } from '../level/build-level.ts';
import type { LevelModel } from '../level/types.ts';
import { wallLength } from '../plan/items.ts';
import type { Level, Mm, Plan, Wall } from '../plan/model.ts';
import { distance, nearestOnSegment } from '../plane/point.ts';
import { JOINED } from '../plane/tolerances.ts';
import { formatLength } from '../units/index.ts';
import { withItemsAtWalls } from './follow-walls.ts';
import { withItemsMoved } from './move-items.ts';
import { turnsAny, withEndSlid } from './slide-walls.ts';
import { type MovingEnd, withWallLength } from './stretch.ts';

/** The edited level, or why the edit is refused: one or two sentences, naming the item first and the remedy last. */
export type LevelEdit = { readonly ok: true; readonly level: Level } | { readonly ok: false; readonly reason: string };
type Unit = Plan['display']['length'];

/** Least length of a wall, mm. */
export const SHORTEST_WALL: Mm = 6;

/**
 * Makes a wall `length` mm long along its center-line by moving the given end. Joined walls follow; none of them turns if that can be
 * avoided, so that the wall becomes as much longer on its faces as on its center-line. Items against the moved walls follow. Refused if an opening would no longer be in its wall, a wall would fold, or a room would open or be divided.
 */
export function correctedWall(model: LevelModel, id: string, length: Mm, moves: MovingEnd, unit: Unit): LevelEdit {
  if (length < SHORTEST_WALL) return { ok: false, reason: 'A wall has some length. To remove it, delete it.' };
  const stretched = withWallLength(model.level, id, length, moves);
  const slid = turnsAny(model.level.walls, stretched.walls) ? withLengthSlid(model.level, id, length, moves) : null;
  return checkedWalls(model, slid ?? stretched, unit);
}

function withLengthSlid(level: Level, id: string, length: Mm, moves: MovingEnd): Level | null {
  const wall = level.walls.find((each) => each.id === id);
  const now = wall && wallLength(wall);
  if (!wall || !now) return null;
  if (moves === 'both') {
    const half = withLengthSlid(level, id, (now + length) / 2, 'to');
    return half && withLengthSlid(half, id, length, 'from');
  }
  const fixed = moves === 'to' ? wall.from : wall.to;
  const share = (length - now) / now;
  return withEndSlid(level, wall, moves, [(wall[moves][0] - fixed[0]) * share, (wall[moves][1] - fixed[1]) * share]);
}

/**
 * Returns the default end of a wall to move when its length is corrected: the end where only inside walls meet it; `to` if
 * that holds for both ends or neither.
 */
export function insideEnd({ level, pieces }: LevelModel, wall: Wall): 'from' | 'to' {
  const outside = new Set(pieces.filter((piece) => piece.outside).map((piece) => piece.wall.id));
  const isInside = (end: 'from' | 'to') => {
    const met = level.walls.filter(
      (each) => each.id !== wall.id && distance(wall[end], nearestOnSegment(wall[end], each.from, each.to)) <= JOINED,
    );
    return met.length > 0 && met.every(({ id }) => !outside.has(id));
  };
  return isInside('from') && !isInside('to') ? 'from' : 'to';
}

/**
 * Translates a wall square to itself by `by` mm, to the right or down the page (negative: to the left or up), with
 * the walls that meet it and the items against them. Refused like a corrected length. A wall without length stays.
 */
export function shiftedWall(model: LevelModel, id: string, by: Mm, unit: Unit): LevelEdit {
  const wall = model.level.walls.find((each) => each.id === id);
  const length = wall ? distance(wall.from, wall.to) : 0;
  if (!wall || length === 0 || by === 0) return { ok: true, level: model.level };
  const [ux, uy] = [(wall.to[0] - wall.from[0]) / length, (wall.to[1] - wall.from[1]) / length];
  const level = Math.abs(ux) >= Math.abs(uy);
  const sign = Math.sign(level ? ux : -uy) || 1;
  return checkedWalls(model, withItemsMoved(model.level, new Set([id]), [-uy * sign * by, ux * sign * by]), unit);
}

/**
 * Returns the level with walls moved by an edit, and the items against them; refused if the result is not possible.
 * Wall ids are unchanged.
 */
export function checkedWalls(model: LevelModel, moved: Level, unit: Unit): LevelEdit {
  if (moved === model.level) return { ok: true, level: moved };
  const reason = impossibleWalls(model, moved, unit);
  return reason ? { ok: false, reason } : { ok: true, level: withItemsAtWalls(model, moved) };
}

/** Returns why the walls of a level are impossible after an edit, in words; "" if they are possible. */
export function impossibleWalls(model: LevelModel, moved: Level, unit: Unit): string {
  return openingTrouble(moved, unit) || foldTrouble(model.level, moved) || roomCountProblem(model, moved);
}

function openingTrouble(level: Level, unit: Unit): string {
  for (const { wall: id, kind, offset, width } of level.openings) {
    const wall = level.walls.find((each) => each.id === id);
    if (!wall) continue;
    const past = Math.max(-offset, offset + width - distance(wall.from, wall.to));
    if (past > 0.1) {
      return `The ${kind} would reach ${formatLength(past, unit, 'up')} past the end of its wall. Slide it back or make it narrower first, or move the other end.`;
    }
  }
  return '';
}

function foldTrouble(before: Level, after: Level): string {
  for (const wall of after.walls) {
    const was = before.walls.find(({ id }) => id === wall.id);
    if (!was || distance(was.from, was.to) < SHORTEST_WALL) continue;
    const ahead =
      (was.to[0] - was.from[0]) * (wall.to[0] - wall.from[0]) + (was.to[1] - was.from[1]) * (wall.to[1] - wall.from[1]);
    if (ahead / distance(was.from, was.to) < SHORTEST_WALL) {
      return 'A wall that is joined there would have no length left. Move the other end, or correct that wall first.';
    }
  }
  return '';
}

/**
 * The number of rooms must not change: one fewer means that one opened or vanished, one more that a crossing wall
 * divided one.
 */
function roomCountProblem(model: LevelModel, after: Level): string {
  const [had, has] = [model.rooms.length, buildLevel(after).rooms.length];
  if (has < had)
    return 'A room would no longer close there. Move the other end, or split the wall where the room ends.';
  if (has > had) return 'Walls would cross there. Move the other end, or correct the wall that is in the way first.';
  return '';
}
