import { nextId } from '../../geometry/edit/index.ts';
import { uncheckedItemAdded } from '../../geometry/edit/listed-items.ts';
import { wallAtPoint, wallWithOpenEnd } from '../../geometry/edit/wall-run.ts';
import type { LevelModel } from '../../geometry/level/types.ts';
import type { Mm, Plan, Wall, XY } from '../../geometry/plan/model.ts';
import { ringsContain } from '../../geometry/plane/ring.ts';
import type { Line } from '../../geometry/plane/types.ts';
import type { WallSettings } from './wall-settings.ts';

/** Corners of walls that are being drawn one after another: no walls yet, but drawn work, so it is saved with the plan. */
export interface WallChain {
  readonly corners: readonly XY[];
  /** Corners that were undone; the last one is redone first. */
  readonly takenBack: readonly XY[];
}

export const NO_CHAIN: WallChain = { corners: [], takenBack: [] };

export function withCorner({ corners }: WallChain, at: XY): WallChain {
  return { corners: [...corners, at], takenBack: [] };
}

/** Takes the last corner back. Returns null where there is none: then undo is a step of the history of the plan. */
export function cornerTakenBack({ corners, takenBack }: WallChain): WallChain | null {
  const last = corners.at(-1);
  return last ? { corners: corners.slice(0, -1), takenBack: [...takenBack, last] } : null;
}

/** Restores the corner that was taken back last. Returns null where there is none. */
export function cornerSetAgain({ corners, takenBack }: WallChain): WallChain | null {
  const next = takenBack.at(-1);
  return next ? { corners: [...corners, next], takenBack: takenBack.slice(0, -1) } : null;
}

/**
 * Returns the kind of a new wall: a partition if it starts within a room or on a wall; from the open end of a wall, such as that of an
 * outline that was ended early, the kind that is nearest to that wall in thickness; else an exterior wall.
 */
export function wallKindFrom(
  { level, rooms }: LevelModel,
  start: XY,
  { outer, partition }: WallSettings,
): 'outer' | 'partition' {
  if (rooms.some(({ floorRings }) => ringsContain(floorRings, start))) return 'partition';
  const open = wallWithOpenEnd(level, start);
  if (open) return Math.abs(open.thickness - outer) < Math.abs(open.thickness - partition) ? 'outer' : 'partition';
  return wallAtPoint(level, start) ? 'partition' : 'outer';
}

/** Returns the thickness of a new wall, mm. */
export function thicknessFrom(model: LevelModel, start: XY, settings: WallSettings): Mm {
  return settings[wallKindFrom(model, start, settings)];
}

export function withWallsOnLines(
  plan: Plan,
  levelId: string,
  lines: readonly Line[],
  thickness: Mm,
  settings: WallSettings,
): Plan {
  const isAssumed = (['outer', 'partition'] as const).some(
    (kind) => settings[kind] === thickness && !settings.said.includes(kind),
  );
  const mark = isAssumed ? { thicknessAnswered: false } : {};
  return lines.reduce((next, [from, to]) => {
    const wall: Wall = { id: nextId(next, 'w'), from, to, thickness, ...mark, side: 'auto' };
    return uncheckedItemAdded(next, levelId, 'walls', wall);
  }, plan);
}
