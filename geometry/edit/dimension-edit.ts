import { endPiece } from '../dimension/end-piece.ts';
import type { RunningDimension } from '../dimension/running-dimensions.ts';
import type { LevelModel } from '../level/types.ts';
import { openingRefusal } from '../messages/refusal.ts';
import type { Level, Mm, Opening, Plan, Wall, XY } from '../plan/model.ts';
import { roundCoordinate, scaled } from '../plane/point.ts';
import { formatRequired } from '../units/index.ts';
import { withWallShifted } from './stretch.ts';
import { checkedWalls, type LevelEdit } from './wall-edit.ts';

type Unit = Plan['display']['length'];
export type DimensionMoves = 'from' | 'to';

/** Least distance between two faces of a room, mm: an inch. Less means a mistyped unit. */
const LEAST_WHOLE: Mm = 25.4;

/**
 * Returns the ends of a dimension that can move when its length is corrected. The first is the default: the end at an
 * inside wall before one at an outside wall; else the right or lower end, because rooms are measured from the left and
 * from above.
 */
export function movableEnds(model: LevelModel, dimension: RunningDimension): readonly DimensionMoves[] {
  const { row, ends } = dimension;
  if (row === 'whole') {
    const ends = (['to', 'from'] as const).filter((end) => endWall(model, dimension, end) !== null);
    return ends.sort((a, b) => Number(isOutsideAt(model, dimension, a)) - Number(isOutsideAt(model, dimension, b)));
  }
  return (['to', 'from'] as const).filter((end) => ends[end === 'from' ? 0 : 1].kind === 'jamb');
}

/**
 * Returns the level with a dimension made `wanted` mm long by moving the given end: the wall that ends the face, with
 * everything that follows it; or the opening with that jamb. For an opening's width the other jamb stays. Refused in
 * words if the result is not possible or nothing can be moved.
 */
export function withDimension(
  model: LevelModel,
  dimension: RunningDimension,
  wanted: Mm,
  moves: DimensionMoves,
  unit: Unit,
): LevelEdit {
  return dimension.row === 'whole'
    ? withWhole(model, dimension, wanted, moves, unit)
    : withJamb(model.level, dimension, wanted, moves, unit);
}

function withWhole(
  model: LevelModel,
  dimension: RunningDimension,
  wanted: Mm,
  moves: DimensionMoves,
  unit: Unit,
): LevelEdit {
  if (wanted < LEAST_WHOLE) {
    return { ok: false, reason: `A room is at least ${formatRequired(LEAST_WHOLE, unit)} across. Check the unit.` };
  }
  const wall = endWall(model, dimension, moves);
  if (!wall)
    return { ok: false, reason: 'No one wall ends this length. Select the wall that is wrong and correct it.' };
  const more = moves === 'to' ? wanted - dimension.length : dimension.length - wanted;
  return checkedWalls(model, withWallShifted(model.level, wall.id, scaled(direction(dimension), more)), unit);
}

/** Returns whether the wall at one end of a dimension is an outside wall. */
export function isOutsideAt(model: LevelModel, dimension: RunningDimension, end: DimensionMoves): boolean {
  return endPiece(model, [dimension.from, dimension.to], dimension[end])?.outside ?? false;
}

/** Returns the wall at the end of a face: the one whose own face turns off at that corner; null for none. */
export function endWall(model: LevelModel, dimension: RunningDimension, end: DimensionMoves): Wall | null {
  return endPiece(model, [dimension.from, dimension.to], dimension[end])?.wall ?? null;
}

function withJamb(level: Level, dimension: RunningDimension, wanted: Mm, moves: DimensionMoves, unit: Unit): LevelEdit {
  const end = dimension.ends[moves === 'from' ? 0 : 1];
  const opening = end.kind === 'jamb' ? level.openings.find(({ id }) => id === end.opening) : undefined;
  const wall = level.walls.find(({ id }) => id === opening?.wall);
  if (!opening || !wall) return { ok: false, reason: 'A corner does not move with an opening. Move the other end.' };
  const more = wanted - dimension.length;
  const next = isWidth(dimension)
    ? widened(opening, wanted, (moves === 'to') === wayOf(wall, dimension) > 0)
    : {
        ...opening,
        offset: roundCoordinate(opening.offset + wayOf(wall, dimension) * (moves === 'to' ? more : -more)),
      };
  const reason = openingRefusal(level, next, unit);
  if (reason) return { ok: false, reason };
  return { ok: true, level: { ...level, openings: level.openings.map((each) => (each === opening ? next : each)) } };
}

/** Returns whether it measures an opening from jamb to jamb. */
export function isWidth({ row, ends: [a, b] }: RunningDimension): boolean {
  return row === 'string' && a.kind === 'jamb' && b.kind === 'jamb' && a.opening === b.opening;
}

/** @param farJamb whether the jamb farther along the wall moves */
function widened(opening: Opening, width: Mm, farJamb: boolean): Opening {
  return {
    ...opening,
    width,
    offset: farJamb ? opening.offset : roundCoordinate(opening.offset + opening.width - width),
  };
}

/** Returns 1 if the wall runs in the reading direction of the dimension, else −1. */
function wayOf(wall: Wall, dimension: RunningDimension): 1 | -1 {
  const [ux, uy] = direction(dimension);
  return ux * (wall.to[0] - wall.from[0]) + uy * (wall.to[1] - wall.from[1]) >= 0 ? 1 : -1;
}

function direction({ from, to, length }: RunningDimension): XY {
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
}
