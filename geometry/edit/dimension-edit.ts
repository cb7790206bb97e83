import { endPiece } from '../dimension/end-piece.ts';
import type { RunningDimension } from '../dimension/running-dimensions.ts';
import { buildLevel } from '../level/build-level.ts';
import type { LevelModel } from '../level/types.ts';
import { openingRefusal } from '../messages/refusal.ts';
import type { Level, Mm, Opening, Plan, Wall, XY } from '../plan/model.ts';
import { distance, plus, roundCoordinate, scaled } from '../plane/point.ts';
import { ringEdges, withoutStraightCorners } from '../plane/ring.ts';
import type { Line } from '../plane/types.ts';
import { formatRequired } from '../units/index.ts';
import { turnsAny, withWallSlid } from './slide-walls.ts';
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
  if (more === 0) return { ok: true, level: model.level };
  const by = scaled(direction(dimension), more);
  const face: Line =
    moves === 'to' ? [dimension.from, plus(dimension.to, by)] : [plus(dimension.from, by), dimension.to];
  return wallMovedTo(model, face, wall.id, by, unit);
}

/**
 * Moves the wall that ends a face, so that the face goes from point to point as given: first with the walls that are joined to it. In a
 * room with slanted corners that could take all of its walls along, or turn one; then it slides along the walls that it meets.
 */
function wallMovedTo(model: LevelModel, face: Line, wallId: string, by: XY, unit: Unit): LevelEdit {
  const shifted = withWallShifted(model.level, wallId, by);
  if (!turnsAny(model.level.walls, shifted.walls)) {
    const edit = checkedWalls(model, shifted, unit);
    if (!edit.ok || hasFace(edit.level, face)) return edit;
  }
  const slid = withWallSlid(model.level, wallId, by);
  const edit = slid && checkedWalls(model, slid, unit);
  if (edit && (!edit.ok || hasFace(edit.level, face))) return edit;
  return {
    ok: false,
    reason: 'The walls that are joined there cannot follow. Select the wall that is wrong and correct it.',
  };
}

/** A typed length is the length of the face within this, mm. */
const AS_TYPED: Mm = 0.05;

function hasFace(level: Level, [a, b]: Line): boolean {
  const meets = (p: XY, q: XY) => distance(p, q) <= AS_TYPED;
  return buildLevel(level).rooms.some(({ floorRings }) =>
    floorRings.some((ring) =>
      ringEdges(withoutStraightCorners(ring)).some(
        ([from, to]) => (meets(from, a) && meets(to, b)) || (meets(from, b) && meets(to, a)),
      ),
    ),
  );
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
