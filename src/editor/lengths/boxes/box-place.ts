import type { XY } from '../../../../geometry/plan/model.ts';
import type { SizePx } from '../../../state/viewport.ts';

/** Place of a box on the sheet, px. */
export interface BoxPlace {
  readonly left: number;
  readonly top: number;
}

/** Width of a box, and its distance from the corner or figure that it is for, px. */
const BOX_PX = { width: 280, offCorner: 14, offFigure: 20 } as const;

/**
 * Returns a place to the right of a corner and below it, or to the left or above if the box would leave the sheet: diagonally, because
 * walls run straight from the corner. If it fits neither below nor above, it is as low as possible, since the sheet must not scroll.
 */
export function placeBesideCorner([x, y]: XY, stage: SizePx, height: number): BoxPlace {
  const { width, offCorner: off } = BOX_PX;
  const left = x + off + width <= stage.width ? x + off : x - off - width;
  const [below, above] = [y + off, y - off - height];
  const top = below + height > stage.height && above >= 0 ? above : Math.min(below, stage.height - height);
  return { left: Math.max(0, left), top: Math.max(0, top) };
}

/** Returns a place below a figure, above it or beside it: on the stage, and not over the figure if there is room. */
export function placeAtFigure([x, y]: XY, stage: SizePx, height: number): BoxPlace {
  const { width, offFigure: off } = BOX_PX;
  const places: readonly XY[] = [
    [x - width / 2, y + off],
    [x - width / 2, y - off - height],
    [x + 2 * off, y - height / 2],
    [x - 2 * off - width, y - height / 2],
  ];
  const onStage = ([left, top]: XY): BoxPlace => ({
    left: Math.min(Math.max(8, left), Math.max(8, stage.width - width - 8)),
    top: Math.min(Math.max(8, top), Math.max(8, stage.height - height - 8)),
  });
  const covers = ({ left, top }: BoxPlace) => left < x && x < left + width && top < y + 12 && y - 12 < top + height;
  return places.map(onStage).find((place) => !covers(place)) ?? onStage(places[0] as XY);
}
