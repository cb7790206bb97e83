import type { Detector, Mm, Opening } from '../plan/model.ts';

/** What somebody has answered or measured of one thing, and nobody of its copy. */

interface Upright {
  readonly bottom: Mm;
  readonly top: Mm;
}

/** The marks of heights that nobody has measured; what is on the floor is there for all to see. */
export interface UnmeasuredHeights {
  readonly bottomAnswered?: false;
  readonly topAnswered?: false;
}

/** Returns the marks of a thing whose heights are those of another one, or usual ones. */
export function unmeasuredHeights({ bottom, top }: Upright): UnmeasuredHeights {
  return { ...(bottom === 0 ? {} : { bottomAnswered: false }), ...(top === 0 ? {} : { topAnswered: false }) };
}

/** Returns a copy of a thing or an opening, the heights of which nobody has measured. */
export function withHeightsOpen<T extends Upright>(copy: T): T {
  return { ...copy, ...unmeasuredHeights(copy) };
}

/**
 * Returns a copy of an opening without what keeps the sun out of the original: its shade, and that it has no glass. Whether it has some
 * stays where that lets the sun in. Its heights are open too.
 */
export function copyOfOpening({ shade: _, ...opening }: Opening): Opening {
  const { glazed, ...rest } = opening;
  return withHeightsOpen(glazed === true ? { ...rest, glazed } : rest);
}

/** Returns a copy of a detector without what carries the original: the drawing shows it, or it is asked again. */
export function copyOfDetector({ support: _, ...detector }: Detector): Detector {
  return detector;
}
