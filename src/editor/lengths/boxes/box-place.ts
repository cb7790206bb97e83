import type { XY } from '../../../../geometry/plan/model.ts';
import type { SizePx } from '../../../state/viewport.ts';

/** Where a box stands on the sheet, px. */
export interface BoxPlace {
  readonly left: number;
  readonly top: number;
}

/** As large as the box of a wall's length gets, px. */
const WALL_BOX_PX = { width: 280, height: 216, off: 14 } as const;

/** To the right of a corner and below it; on the other side where it would leave the sheet: the sheet must not scroll. */
export function placeBesideCorner([x, y]: XY, stage: SizePx): BoxPlace {
  const { width, height, off } = WALL_BOX_PX;
  const left = x + off + width <= stage.width ? x + off : x - off - width;
  const top = y + off + height <= stage.height ? y + off : y - off - height;
  return { left: Math.max(0, left), top: Math.max(0, top) };
}

/** Size of the box of a length of the plan, px: while it waits, with its field, and with the choice of the end that moves; distance to its figure. */
const LENGTH_BOX_PX = { width: 280, waiting: 40, height: 150, taller: 230, off: 20 } as const;

/**
 * Below a figure, above it or beside it: on the stage, and never over the figure itself.
 * @param ends of so many ends one can move: 0 while the box only waits
 */
export function placeAtFigure([x, y]: XY, stage: SizePx, ends: number): BoxPlace {
  const { width, off } = LENGTH_BOX_PX;
  const height = [LENGTH_BOX_PX.waiting, LENGTH_BOX_PX.height, LENGTH_BOX_PX.taller][Math.min(ends, 2)] as number;
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
