import type { RunningDimension } from '../dimension/running-dimensions.ts';
import type { LevelModel } from '../level/types.ts';
import { openingRefusal } from '../messages/refusal.ts';
import type { Level, Mm, Opening, Plan, Wall, XY } from '../plan/model.ts';
import { distance, roundCoordinate } from '../plane/point.ts';
import { formatRequired } from '../units/index.ts';
import { withWallShifted } from './stretch.ts';
import { type LevelEdit, settledWalls } from './wall-edit.ts';

type Unit = Plan['display']['length'];
export type DimensionMoves = 'from' | 'to';

/** A room is at least so long between two faces, mm: an inch. Less is a slip of the unit. */
const LEAST_WHOLE: Mm = 25.4;
/** A wall's face is looked for this near to a corner, mm. */
const AT_CORNER: Mm = 1;

/** The ends of a dimension that can give way when its length is corrected; the first is what moves if nobody says otherwise. */
export function movableEnds(model: LevelModel, dimension: RunningDimension): readonly DimensionMoves[] {
  const { row, ends } = dimension;
  if (row === 'whole') {
    // The left or upper wall stays: a room is paced off from there.
    return (['to', 'from'] as const).filter((end) => endWall(model, dimension, end) !== null);
  }
  return (['to', 'from'] as const).filter((end) => ends[end === 'from' ? 0 : 1].kind === 'jamb');
}

/**
 * The level with a dimension made `wanted` mm long by moving the end that is named: the wall that ends the face, with all that
 * hangs on it; or the opening whose jamb it is. Of an opening's width the other jamb stays. Refused in words where what comes out
 * cannot stand, and where nothing can be moved.
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
    return { ok: false, reason: `A room is at least ${formatRequired(LEAST_WHOLE, unit)} across. Look at the unit.` };
  }
  const wall = endWall(model, dimension, moves);
  if (!wall)
    return { ok: false, reason: 'No one wall ends this length. Select the wall that is wrong and correct it.' };
  const more = moves === 'to' ? wanted - dimension.length : dimension.length - wanted;
  return settledWalls(model, withWallShifted(model.level, wall.id, scaled(direction(dimension), more)), unit);
}

/** The wall that a face ends at: the one whose own face turns off at that corner. Null at the blunt end of a wall that stands free. */
export function endWall(model: LevelModel, dimension: RunningDimension, end: DimensionMoves): Wall | null {
  const corner = dimension[end];
  const u = direction(dimension);
  let best: Wall | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const { wall, from, to, thickness } of model.pieces) {
    const length = distance(from, to);
    if (length === 0) continue;
    const [wx, wy] = [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
    const slant = Math.abs(u[0] * wy - u[1] * wx);
    // A wall that runs on as the face does ends nothing.
    if (slant < 0.1) continue;
    const [px, py] = [corner[0] - from[0], corner[1] - from[1]];
    const off = Math.abs(Math.abs(px * wy - py * wx) - thickness / 2);
    const far = px * wx + py * wy;
    const past = Math.max(0, -far, far - length);
    if (off > AT_CORNER || past > thickness) continue;
    if (past < least) {
      least = past;
      best = wall;
    }
  }
  return best;
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

/** Whether it measures an opening from jamb to jamb. */
export function isWidth({ row, ends: [a, b] }: RunningDimension): boolean {
  return row === 'string' && a.kind === 'jamb' && b.kind === 'jamb' && a.opening === b.opening;
}

/** @param farJamb whether the jamb that is further along the wall gives way */
function widened(opening: Opening, width: Mm, farJamb: boolean): Opening {
  return {
    ...opening,
    width,
    offset: farJamb ? opening.offset : roundCoordinate(opening.offset + opening.width - width),
  };
}

/** 1 where the wall runs as the dimension is read, else −1. */
function wayOf(wall: Wall, dimension: RunningDimension): 1 | -1 {
  const [ux, uy] = direction(dimension);
  return ux * (wall.to[0] - wall.from[0]) + uy * (wall.to[1] - wall.from[1]) >= 0 ? 1 : -1;
}

function direction({ from, to, length }: RunningDimension): XY {
  return [(to[0] - from[0]) / length, (to[1] - from[1]) / length];
}

function scaled([x, y]: XY, by: Mm): XY {
  return [x * by, y * by];
}
