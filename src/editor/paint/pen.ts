import type { Mm, Plan, XY } from '../../../geometry/plan/model.ts';
import type { Extent } from '../../../geometry/plane/extent.ts';
import type { MeasureText } from '../../drawing/text.ts';
import { toScreen, type Viewport } from '../../state/viewport.ts';
import type { Theme } from '../../theme/tokens.ts';
import type { RectPx } from '../stage/rect.ts';

/** What every painter draws with. Painters work in screen pixels; only `view` turns mm into them. */
export interface Pen {
  readonly ctx: CanvasRenderingContext2D;
  readonly view: Viewport;
  readonly measure: MeasureText;
  readonly theme: Theme;
  readonly unit: Plan['display']['length'];
  /** Canvas pixels for a screen pixel: patterns are drawn at this fineness. */
  readonly ratio: number;
  /** What is painted now, screen px: what lies outside may be left out. */
  readonly area: RectPx;
  /** The same in plan mm, with room for lines and halos. */
  readonly seen: Extent;
}

/** Whether anything drawn within the extent, mm, is to be seen. */
export function isSeen({ seen }: Pen, { minX, minY, maxX, maxY }: Extent): boolean {
  return minX < seen.maxX && maxX > seen.minX && minY < seen.maxY && maxY > seen.minY;
}

export function px(pen: Pen, point: XY): XY {
  return toScreen(pen.view, point);
}

export function lengthPx(pen: Pen, mm: Mm): number {
  return mm * pen.view.scale;
}
