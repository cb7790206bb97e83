import { buildLevel } from '../level/build-level.ts';
import type { LevelModel } from '../level/types.ts';
import type { Level, Mm, Plan } from '../plan/model.ts';
import { OPENING_NOUN } from '../plan/nouns.ts';
import { distance } from '../plane/point.ts';
import { formatLength } from '../units/index.ts';
import { withHangingAlong } from './hang-along.ts';
import { withItemsMoved } from './move-items.ts';
import { type MovingEnd, withWallLength } from './stretch.ts';

/** What an edit of walls makes of a level, or why it cannot be done: a sentence or two, the thing first, the way out last. */
export type LevelEdit = { readonly ok: true; readonly level: Level } | { readonly ok: false; readonly reason: string };
type Unit = Plan['display']['length'];

/** Shorter than this is no wall, mm. */
export const SHORTEST_WALL: Mm = 6;

/**
 * One wall made `length` mm long from end to end of its centre-line, by moving the end that is named. What hangs on the walls that
 * move goes along. Refused where an opening would no longer lie in its wall, a wall would fold, or a room would open or be cut.
 */
export function correctedWall(model: LevelModel, id: string, length: Mm, moves: MovingEnd, unit: Unit): LevelEdit {
  if (length < SHORTEST_WALL) return { ok: false, reason: 'A wall has some length. To take it away, delete it.' };
  return settledWalls(model, withWallLength(model.level, id, length, moves), unit);
}

/**
 * One wall moved square to itself by so many mm, to the right or down the page (a minus: to the left or up), with the walls that
 * meet it and what hangs on them. Refused like a corrected length. A wall without length stays.
 */
export function shiftedWall(model: LevelModel, id: string, by: Mm, unit: Unit): LevelEdit {
  const wall = model.level.walls.find((each) => each.id === id);
  const length = wall ? distance(wall.from, wall.to) : 0;
  if (!wall || length === 0 || by === 0) return { ok: true, level: model.level };
  const [ux, uy] = [(wall.to[0] - wall.from[0]) / length, (wall.to[1] - wall.from[1]) / length];
  const level = Math.abs(ux) >= Math.abs(uy);
  const sign = Math.sign(level ? ux : -uy) || 1;
  return settledWalls(model, withItemsMoved(model.level, new Set([id]), [-uy * sign * by, ux * sign * by]), unit);
}

/** Walls moved by an edit, with what hangs on them; refused where what comes out cannot stand. The ids of walls are as before. */
export function settledWalls(model: LevelModel, moved: Level, unit: Unit): LevelEdit {
  if (moved === model.level) return { ok: true, level: moved };
  const reason = openingTrouble(moved, unit) || foldTrouble(model.level, moved) || roomTrouble(model, moved);
  return reason ? { ok: false, reason } : { ok: true, level: withHangingAlong(model, moved) };
}

function openingTrouble(level: Level, unit: Unit): string {
  for (const { wall: id, kind, offset, width } of level.openings) {
    const wall = level.walls.find((each) => each.id === id);
    if (!wall) continue;
    const past = Math.max(-offset, offset + width - distance(wall.from, wall.to));
    if (past > 0.1) {
      return `The ${OPENING_NOUN[kind]} would reach ${formatLength(past, unit, 'up')} past the end of its wall. Slide it back or make it narrower first, or move the other end.`;
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

/** Rooms are counted: one fewer has opened or is swallowed, one more has been cut off by a wall that now crosses. */
function roomTrouble(model: LevelModel, after: Level): string {
  const [had, has] = [model.rooms.length, buildLevel(after).rooms.length];
  if (has < had)
    return 'A room would no longer close there. Move the other end, or split the wall where the room ends.';
  if (has > had) return 'Walls would cross there. Move the other end, or correct the wall that is in the way first.';
  return '';
}
