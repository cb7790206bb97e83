import type { XY } from '../../../../geometry/plan/model.ts';
import type { SizePx } from '../../../state/viewport.ts';

/** Where a box stands on the sheet, px. */
export interface BoxPlace {
  readonly left: number;
  readonly top: number;
}

/** As large as the box of a wall's length gets, px. */
const WALL_BOX_PX = { width: 280, height: 330, off: 14 } as const;

/** To the right of a corner, on the left where it would leave the sheet, and below it as far as it fits: the sheet must not scroll. */
export function placeBesideCorner([x, y]: XY, stage: SizePx): BoxPlace {
  const { width, height, off } = WALL_BOX_PX;
  const left = x + off + width <= stage.width ? x + off : x - off - width;
  const top = Math.min(y + off, stage.height - height);
  return { left: Math.max(0, left), top: Math.max(0, top) };
}

/** Size of the box of a length of the plan, px: while it waits, with its field, and for each choice more; distance to its figure. */
const LENGTH_BOX_PX = { width: 280, waiting: 40, height: 150, choice: 80, off: 20 } as const;

/**
 * Below a figure, above it or beside it: on the stage, and never over the figure itself.
 * @param parts its field and the choices below it; 0 while the box only waits
 */
export function placeAtFigure([x, y]: XY, stage: SizePx, parts: number): BoxPlace {
  const { width, waiting, choice, off } = LENGTH_BOX_PX;
  const height = parts === 0 ? waiting : LENGTH_BOX_PX.height + (parts - 1) * choice;
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
