import type { Pen } from '../paint/pen.ts';
import { type Inputs, type Picture, sameInputs } from './picture.ts';
import { intersection, type RectPx, rectOf, union } from './rect.ts';

/**
 * Returns the dirty rectangle of a canvas, px: it covers every place where a picture differs from what was painted. Null if none does.
 * @param pen the pen that the canvas was painted with; its area is the whole canvas
 */
export function dirtyRect(
  pictures: readonly Picture[],
  before: readonly Inputs[],
  now: readonly Inputs[],
  pen: Pen,
): RectPx | null {
  let rect: RectPx | null = null;
  for (const [index, { dirty }] of pictures.entries()) {
    const [old, young] = [before[index] as Inputs, now[index] as Inputs];
    if (sameInputs(old, young)) continue;
    const extents = dirty ? dirty(old, young, pen) : 'everywhere';
    if (extents === 'everywhere') return pen.area;
    for (const extent of extents) {
      const seen = intersection(rectOf(pen.view, extent), pen.area);
      if (seen) rect = rect ? union(rect, seen) : seen;
    }
  }
  return rect;
}
