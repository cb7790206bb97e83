import type { Detector, Opening } from '../plan/model.ts';

/** What somebody has answered of one thing, and nobody of its copy. */

/**
 * Returns a copy of an opening without what keeps the sun out of the original: its shade, and that it has no glass. Whether it has some
 * stays where that lets the sun in.
 */
export function copyOfOpening<T extends Omit<Opening, 'id'>>({ shade: _, ...opening }: T): Omit<T, 'shade'> {
  if (opening.glazed !== false) return opening;
  const { glazed: _glazed, ...rest } = opening;
  return rest as Omit<T, 'shade'>;
}

/** Returns a copy of a detector without what carries the original: the drawing shows it, or it is asked again. */
export function copyOfDetector({ support: _, ...detector }: Detector): Detector {
  return detector;
}
