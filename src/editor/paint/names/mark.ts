import type { XY } from '../../../../geometry/plan/model.ts';
import { intersects, type RectPx } from '../../stage/rect.ts';
import type { Pen } from '../pen.ts';
import type { Named } from './sheet-names.ts';

/** Something written, with its place. All px are from the plan's origin, at the scale that it was laid out for. */
export interface Mark {
  /** Drawn by a pen whose view has that scale. */
  readonly draw: (pen: Pen) => void;
  /** What it takes up. */
  readonly box: RectPx;
  /**
   * The mark while a hand pulls at the plan: the same one where nothing that it says has changed, one that goes along, or null where
   * it no longer holds. Names are laid out anew when the hand lets go.
   */
  readonly followed: (pen: Pen, named: Named) => Mark | null;
}

/** Half an outline and a halo reach beyond the letters, px. */
const HALO_PX = 4;

export function boxAbout([x, y]: XY, width: number, height: number): RectPx {
  const [across, down] = [width / 2 + HALO_PX, height / 2 + HALO_PX];
  return { left: x - across, top: y - down, right: x + across, bottom: y + down };
}

/** Draws what is to be seen of them. The pen's origin is the plan's; its area is the screen's. */
export function drawMarks(pen: Pen, marks: readonly Mark[], origin: XY): void {
  const { left, top, right, bottom } = pen.area;
  const area = { left: left - origin[0], top: top - origin[1], right: right - origin[0], bottom: bottom - origin[1] };
  for (const { draw, box } of marks) if (intersects(box, area)) draw(pen);
}
