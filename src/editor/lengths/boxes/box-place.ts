import type { XY } from '../../../../geometry/plan/model.ts';
import type { SizePx } from '../../../state/viewport.ts';

/** Where a box stands on the sheet, px. */
export interface BoxPlace {
  readonly left: number;
  readonly top: number;
}

/** Width of a box, px, and how far it stands off what it is about. */
const BOX_PX = { width: 280, offCorner: 14, offFigure: 20 } as const;

/**
 * To the right of a corner and below it, on the left or above it where it would leave the sheet: off the walls that run straight from there.
 * Where it fits neither below nor above it stands as low as it fits: the sheet must not scroll.
 */
export function placeBesideCorner([x, y]: XY, stage: SizePx, height: number): BoxPlace {
  const { width, offCorner: off } = BOX_PX;
  const left = x + off + width <= stage.width ? x + off : x - off - width;
  const [below, above] = [y + off, y - off - height];
  const top = below + height > stage.height && above >= 0 ? above : Math.min(below, stage.height - height);
  return { left: Math.max(0, left), top: Math.max(0, top) };
}

/** Below a figure, above it or beside it: on the stage, and, where there is room, never over the figure itself. */
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
