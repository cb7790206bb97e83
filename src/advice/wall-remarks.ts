import { MENDABLE } from '../../geometry/edit/mendable.ts';
import type { LevelModel, Notice } from '../../geometry/level/types.ts';
import { describeInWall } from '../../geometry/messages/index.ts';
import type { Level, Plan } from '../../geometry/plan/model.ts';
import { memoize } from '../../geometry/plane/memoize.ts';
import { type InWall, itemsInWalls } from '../../geometry/snap/in-wall.ts';
import type { HintAction } from './guidance/hint.ts';

/** A remark on a side effect of an edit, with the action that corrects it; null if there is none. */
export interface Remark {
  readonly words: string;
  readonly action: HintAction | null;
}

type Unit = Plan['display']['length'];

/** Returns the things that reach into a wall; memoized by model. */
export const inWalls: (model: LevelModel) => readonly InWall[] = memoize(itemsInWalls);

/** Returns the remark that a thing reaches into a wall, with the action that moves it to the face. */
export function inWallRemark(level: Level, found: InWall, unit: Unit): Remark {
  const words = describeInWall(level, found, unit);
  const { id, out } = found;
  return { words, action: out && { kind: 'out-of-wall', label: 'Move it to the wall', levelId: level.id, id } };
}

/** Returns the action that joins two walls with a gap, or cuts back the wall that overshoots the other; null for other notices. */
export function mendAction(notice: Notice, levelId: string): HintAction | null {
  if (!MENDABLE.includes(notice.kind)) return null;
  const label = notice.kind === 'overshoot' ? 'Cut it back' : 'Join them';
  return { kind: 'mend-gap', label, levelId, notice };
}

/** Returns the action that merges two overlapping walls; null for more than two. */
export function oneWallAction({ ids }: Notice, levelId: string): HintAction | null {
  const [a, b] = ids;
  if (a === undefined || b === undefined || ids.length > 2) return null;
  return { kind: 'one-wall', label: 'Make one wall of them', levelId, ids: [a, b] };
}
