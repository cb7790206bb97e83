import type { Mm, Plan, XY } from '../../../geometry/plan/model.ts';
import type { Extent } from '../../../geometry/plane/extent.ts';
import type { MeasureText } from '../../drawing/text.ts';
import { toScreen, type Viewport } from '../../state/viewport.ts';
import type { Theme } from '../../theme/tokens.ts';
import type { RectPx } from '../stage/rect.ts';

/** What every painter draws with. Painters work in screen px; `view` converts plan mm to them. */
export interface Pen {
  readonly ctx: CanvasRenderingContext2D;
  readonly view: Viewport;
  readonly measure: MeasureText;
  readonly theme: Theme;
  readonly unit: Plan['display']['length'];
  /** Canvas pixels per screen px, the resolution of patterns. */
  readonly ratio: number;
  /** The area that is painted now, screen px: anything outside may be left out. */
  readonly area: RectPx;
  /** The same area in plan mm, with a margin for lines and halos. */
  readonly seen: Extent;
}

/** Returns whether any part of the extent, mm, is in the area that is painted. */
export function isSeen({ seen }: Pen, { minX, minY, maxX, maxY }: Extent): boolean {
  return minX < seen.maxX && maxX > seen.minX && minY < seen.maxY && maxY > seen.minY;
}

export function px(pen: Pen, point: XY): XY {
  return toScreen(pen.view, point);
}

export function lengthPx(pen: Pen, mm: Mm): number {
  return mm * pen.view.scale;
}
