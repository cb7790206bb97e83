/** The only place where mm in the house are converted to mm of paper. */
import type { XY } from '../../geometry/plan/model.ts';
import type { Extent } from '../../geometry/plane/extent.ts';
import type { Area } from './paper.ts';
import type { DrawingScale } from './scale.ts';

export interface View {
  readonly scale: DrawingScale;
  /** Point of the house's origin on the paper, mm. */
  readonly originX: number;
  readonly originY: number;
}

export function toPaper({ scale: { ratio }, originX, originY }: View, [x, y]: XY): XY {
  return [originX + x / ratio, originY + y / ratio];
}

/** Returns a length in the house, mm, as mm of paper. */
export function onPaper({ scale: { ratio } }: View, length: number): number {
  return length / ratio;
}

/** Returns the view with an extent of the house in the middle of an area of the paper. */
export function centeredView(
  { minX, minY, maxX, maxY }: Extent,
  { x, y, width, height }: Area,
  scale: DrawingScale,
): View {
  const { ratio } = scale;
  const [midX, midY] = [(minX + maxX) / 2 / ratio, (minY + maxY) / 2 / ratio];
  return { scale, originX: x + width / 2 - midX, originY: y + height / 2 - midY };
}
