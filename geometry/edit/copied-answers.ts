import type { Detector, Opening, Wall } from '../plan/model.ts';
import { type Upright, unmeasuredHeights } from './unmeasured.ts';

/** A copy does not take over what somebody answered or measured for the original. */

/** Returns a copy of an item with its heights marked as not measured. */
export function withHeightsOpen<T extends Upright>(copy: T): T {
  return { ...copy, ...unmeasuredHeights(copy) };
}

/**
 * Returns a copy of a wall without the answer that it is interior, because the neighbor's house may be lower or end before the copy. The
 * answer that it is exterior is kept, because it allows less. Its thickness is marked as not measured.
 */
export function copyOfWall(wall: Wall): Wall {
  return { ...wall, thicknessAnswered: false, side: wall.side === 'inside' ? 'auto' : wall.side };
}

/**
 * Returns a copy of an opening without what keeps the sun out of the original: its shade, and the answer that it has no glass. The answer
 * that it has glass is kept, because it lets the sun in. Its heights are marked as not measured.
 */
export function copyOfOpening({ shade: _, ...opening }: Opening): Opening {
  const { glazed, ...rest } = opening;
  return withHeightsOpen(glazed === true ? { ...rest, glazed } : rest);
}

/** Returns a copy of a detector without its support: the drawing shows what supports the copy, or the question is asked again. */
export function copyOfDetector({ support: _, ...detector }: Detector): Detector {
  return detector;
}
