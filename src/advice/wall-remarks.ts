import { MENDABLE } from '../../geometry/edit/mendable.ts';
import type { LevelModel, Notice } from '../../geometry/level/types.ts';
import { describeInWall } from '../../geometry/messages/index.ts';
import type { Level, Plan } from '../../geometry/plan/model.ts';
import { memoize } from '../../geometry/plane/memoize.ts';
import { type InWall, itemsInWalls } from '../../geometry/snap/in-wall.ts';
import type { HintAction } from './guidance/hint.ts';

/** What an edit has brought about beside what was asked for: the words, and the action that sets it right; null where none does. */
export interface Remark {
  readonly words: string;
  readonly action: HintAction | null;
}

type Unit = Plan['display']['length'];

/** Things that reach into a wall; the same model gives the same list. */
export const inWalls: (model: LevelModel) => readonly InWall[] = memoize(itemsInWalls);

/** Says that a thing reaches into a wall, with the action that sets it at the face. */
export function inWallRemark(level: Level, found: InWall, unit: Unit): Remark {
  const words = describeInWall(level, found, unit);
  const { id, out } = found;
  return { words, action: out && { kind: 'out-of-wall', label: 'Move it to the wall', levelId: level.id, id } };
}

/** Returns the action that joins two walls that miss one another, or cuts back the one that runs past the other. */
export function mendAction(notice: Notice, levelId: string): HintAction | null {
  if (!MENDABLE.includes(notice.kind)) return null;
  const label = notice.kind === 'overshoot' ? 'Cut it back' : 'Join them';
  return { kind: 'mend-gap', label, levelId, notice };
}

/** Returns the action that merges two walls that lie on one another; null for more than two. */
export function oneWallAction({ ids }: Notice, levelId: string): HintAction | null {
  const [a, b] = ids;
  if (a === undefined || b === undefined || ids.length > 2) return null;
  return { kind: 'one-wall', label: 'Make one wall of them', levelId, ids: [a, b] };
}
