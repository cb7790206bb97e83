import type { XY } from '../../../geometry/plan/model.ts';
import type { SizePx } from '../../state/viewport.ts';

/** Where the menu is on the page, CSS px. */
export interface MenuPlace {
  readonly left: number;
  readonly top: number;
  /** It scrolls where it is longer. */
  readonly maxHeight: number;
}

/** Distance from the edges of the page, px. */
const EDGE_PX = 8;

/**
 * On the page as a whole, and never nearer to the spot than `clear`: beside it, on the right where there is room; on a narrow page
 * below or above it, whichever is higher, as high as there is room.
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
