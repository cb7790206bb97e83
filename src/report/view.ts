/** The only place where mm of the house become mm of paper. */
import type { XY } from '../../geometry/plan/model.ts';
import type { DrawingScale } from './scale.ts';

export interface View {
  readonly scale: DrawingScale;
  /** Paper point of the house's origin. */
  readonly originX: number;
  readonly originY: number;
}

export function toPaper({ scale: { ratio }, originX, originY }: View, [x, y]: XY): XY {
  return [originX + x / ratio, originY + y / ratio];
}

/** A length in the house, mm, as mm of paper. */
export function onPaper({ scale: { ratio } }: View, length: number): number {
  return length / ratio;
}
