import type { Mm } from '../../geometry/plan/model.ts';
import { type FaceEnd, type RunningDimension, withDimension } from '../../geometry/running-dimensions.ts';
import { settledWalls } from '../../geometry/wall-edit.ts';
import { openingsRefusal } from '../../geometry/words/refusal.ts';
import { editLevel } from './wall-acts.ts';

/**
 * One length on the drawing made what the tape says, as one step of history; answers why not, in words, or empty.
 * @param end of a room's face: the wall that moves
 */
export function correctDimension(dimension: RunningDimension, length: Mm, end: FaceEnd): string {
  if (length <= 0) return 'A length of nothing cannot be drawn. Type what the tape reads.';
  return editLevel((model, unit) => {
    const moved = withDimension(model, dimension, length, end);
    if (dimension.of === 'face') return settledWalls(model, moved, unit);
    const reason = openingsRefusal(model.level, moved, unit);
    return reason ? { ok: false, reason } : { ok: true, level: moved };
  });
}
