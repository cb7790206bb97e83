import type { XY } from '../../../geometry/plan/model.ts';
import type { SizePx } from '../../state/viewport.ts';

/** Position of the menu in the viewport, CSS px. */
export interface MenuPlace {
  readonly left: number;
  readonly top: number;
  /** A longer menu scrolls. */
  readonly maxHeight: number;
}

/** Distance from the edges of the page, px. */
const EDGE_PX = 8;

/**
 * Returns a position wholly in the viewport and at least `clear` px from the spot: beside it, on the right if there is room; on a narrow
 * page below it if there is room, else below or above it, where there is more room.
 */
export function placedMenu([x, y]: XY, size: SizePx, page: SizePx, clear: number): MenuPlace {
  const most = page.height - 2 * EDGE_PX;
  const height = Math.min(size.height, most);
  const beside = { top: within(y - EDGE_PX, height, page.height), maxHeight: most };
  if (x + clear + size.width + EDGE_PX <= page.width) return { left: x + clear, ...beside };
  if (x - clear - size.width >= EDGE_PX) return { left: x - clear - size.width, ...beside };
  const left = within(x - size.width / 2, size.width, page.width);
  const [below, above] = [page.height - y - clear - EDGE_PX, y - clear - EDGE_PX];
  if (below >= size.height || below >= above) return { left, top: y + clear, maxHeight: below };
  return { left, top: y - clear - Math.min(size.height, above), maxHeight: above };
}

function within(start: number, size: number, page: number): number {
  return Math.max(EDGE_PX, Math.min(start, page - size - EDGE_PX));
}
