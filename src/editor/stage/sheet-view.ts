import type { Plan } from '../../../geometry/plan/model.ts';
import type { SizePx, Viewport } from '../../state/viewport.ts';
import type { ThemeName } from '../../theme/tokens.ts';
import type { Inputs } from './picture.ts';

/** What the sheet is to be shown with. */
export interface SheetView {
  readonly viewport: Viewport;
  readonly size: SizePx;
  readonly theme: ThemeName;
  readonly unit: Plan['display']['length'];
  /** Canvas pixels to a px. */
  readonly ratio: number;
  /** The viewport has not changed for a while. */
  readonly atRest: boolean;
  /** A whole repaint of all canvases fits into a frame. */
  readonly isCheap: boolean;
}

/** Returns what every picture depends on beside its own inputs. */
export function lookOf({ theme, unit, ratio, size }: SheetView): Inputs {
  return [theme, unit, ratio, size.width, size.height];
}
