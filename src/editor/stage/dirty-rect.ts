import type { Pen } from '../paint/pen.ts';
import { type Inputs, type Picture, sameInputs } from './picture.ts';
import { intersection, type RectPx, rectOf, union } from './rect.ts';

/**
 * Returns the one dirty rectangle of a canvas, px: it covers everywhere that a picture looks different from what was painted. Null
 * where nothing does.
 * @param pen of what was painted; its area is the whole canvas
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
