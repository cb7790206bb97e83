import { SUPPORT_TOLERANCE } from '../check/subjects.ts';
import type { Level, Mm, PlanObject, XY } from '../plan/model.ts';
import { bodyDistance, shapeBody } from '../plane/body.ts';

/** What is higher than this is stood beside, not set upon, mm: 72 in, the top of the height band. */
const HIGHEST_SEAT: Mm = 1828.8;

/** The highest object under the point that a detector could be set upon; null for the open floor. */
function seatAt(level: Level, at: XY): PlanObject | null {
  let best: PlanObject | null = null;
  for (const object of level.objects) {
    const under = bodyDistance(shapeBody(object.shape), at[0], at[1]) === 0;
    if (under && object.top > 0 && object.top <= HIGHEST_SEAT && (!best || object.top > best.top)) best = object;
  }
  return best;
}

/** The underside of a detector set down at the point: on the object that stands there, else at `otherwise`. Mm above the floor. */
export function seatHeight(level: Level, at: XY, otherwise: Mm): Mm {
  return seatAt(level, at)?.top ?? otherwise;
}

/**
 * The underside of a detector moved from one spot to another: a new seat lifts or lowers it; on the same seat, or with both
 * spots open floor, a height that was set by hand stays.
 */
export function movedSeatHeight(level: Level, from: XY, to: XY, base: Mm, usual: Mm): Mm {
  const [before, after] = [seatAt(level, from), seatAt(level, to)];
  if (before?.id === after?.id) return base;
  if (after) return after.top;
  // Lifted off an object: only a height that came from it goes back to the usual one.
  return before && Math.abs(before.top - base) <= SUPPORT_TOLERANCE ? usual : base;
}
