import { SUPPORT_TOLERANCE } from '../check/subjects.ts';
import type { Level, Mm, PlanObject, XY } from '../plan/model.ts';
import { bodyDistance, shapeBody } from '../plane/body.ts';

/** Detectors are not placed on higher objects, mm: 72 in, the top of the height band. */
const HIGHEST_TOP: Mm = 1828.8;

/** Returns the highest object under the point that a detector can be placed on; null for the open floor. */
function supportingObject(level: Level, at: XY): PlanObject | null {
  let best: PlanObject | null = null;
  for (const object of level.objects) {
    const under = bodyDistance(shapeBody(object.shape), at[0], at[1]) === 0;
    if (under && object.top > 0 && object.top <= HIGHEST_TOP && (!best || object.top > best.top)) best = object;
  }
  return best;
}

/**
 * Returns the base height of a detector placed at the point, mm above the floor: the top of the object there, else
 * `otherwise`.
 */
export function baseHeightAt(level: Level, at: XY, otherwise: Mm): Mm {
  return supportingObject(level, at)?.top ?? otherwise;
}

/**
 * Returns the base height of a detector moved from one point to another: it follows the tops of the objects it is
 * placed on. On the same object, or with both points on open floor, its height is unchanged.
 */
export function baseHeightAfterMove(level: Level, from: XY, to: XY, base: Mm, usual: Mm): Mm {
  const [before, after] = [supportingObject(level, from), supportingObject(level, to)];
  if (before?.id === after?.id) return base;
  if (after) return after.top;
  // Leaving an object restores the usual height only if the height came from that object.
  return before && Math.abs(before.top - base) <= SUPPORT_TOLERANCE ? usual : base;
}
