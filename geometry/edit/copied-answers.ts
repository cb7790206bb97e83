import type { Detector, Opening } from '../plan/model.ts';
import { type Upright, unmeasuredHeights } from './unmeasured.ts';

/** What somebody has answered or measured of one thing, and nobody of its copy. */

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
