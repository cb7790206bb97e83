import type { Plan } from '../../../geometry/plan/model.ts';
import type { SizePx, Viewport } from '../../state/viewport.ts';
import type { ThemeName } from '../../theme/tokens.ts';
import type { Inputs } from './picture.ts';

/** The viewport, size and look with which the sheet is to be shown. */
export interface SheetView {
  readonly viewport: Viewport;
  readonly size: SizePx;
  readonly theme: ThemeName;
  readonly unit: Plan['display']['length'];
  /** Canvas pixels per px. */
  readonly ratio: number;
  /** Whether the viewport has not changed for a while. */
  readonly atRest: boolean;
  /** Whether a whole repaint of all canvases fits into a frame. */
  readonly isCheap: boolean;
}

/** Returns what every picture depends on in addition to its inputs. */
export function lookOf({ theme, unit, ratio, size }: SheetView): Inputs {
  return [theme, unit, ratio, size.width, size.height];
}
