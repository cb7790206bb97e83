import type { XY } from '../../geometry/plan/model.ts';
import type { Extent } from '../../geometry/plane/extent.ts';

/** Where the sheet lies on the screen: pixel = mm * scale + offset. The only place where px and mm meet. */
export interface Viewport {
  /** Pixels per millimeter. */
  readonly scale: number;
  /** The pixel under the point (0, 0) of the plan. */
  readonly x: number;
  readonly y: number;
}
export interface SizePx {
  readonly width: number;
  readonly height: number;
}

/** 1:2000 at 96 dpi shows a street; 4:1 shows an eighth of an inch as a finger's breadth. */
const SCALE_LIMITS = { least: 0.002, most: 15 } as const;

export function toScreen(viewport: Viewport, [x, y]: XY): XY {
  return [x * viewport.scale + viewport.x, y * viewport.scale + viewport.y];
}

export function toPlan(viewport: Viewport, [px, py]: XY): XY {
  return [(px - viewport.x) / viewport.scale, (py - viewport.y) / viewport.scale];
}

/** Returns the viewport zoomed by `factor`, within `SCALE_LIMITS`, with the plan point under `pivot` (pixels) staying there. */
export function zoomedAt(viewport: Viewport, pivot: XY, factor: number): Viewport {
  const scale = Math.min(SCALE_LIMITS.most, Math.max(SCALE_LIMITS.least, viewport.scale * factor));
  const [x, y] = toPlan(viewport, pivot);
  return { scale, x: pivot[0] - x * scale, y: pivot[1] - y * scale };
}

export function pannedBy(viewport: Viewport, dx: number, dy: number): Viewport {
  return { ...viewport, x: viewport.x + dx, y: viewport.y + dy };
}

/** Width of the strip of the plan that stays on the stage however the sheet is moved, px. */
const STAYS_PX = 64;

/**
 * Returns the viewport, moved if necessary so that at least a strip of `extent` is on the stage: a plan off the stage could not be found.
 */
export function keptOnStage(viewport: Viewport, extent: Extent, { width, height }: SizePx): Viewport {
  const [left, top] = toScreen(viewport, [extent.minX, extent.minY]);
  const [right, bottom] = toScreen(viewport, [extent.maxX, extent.maxY]);
  const [dx, dy] = [wayBack(left, right, width), wayBack(top, bottom, height)];
  return dx === 0 && dy === 0 ? viewport : pannedBy(viewport, dx, dy);
}

/** How far a range of pixels must move for a strip of it to lie from 0 to `size`. */
function wayBack(from: number, to: number, size: number): number {
  const strip = Math.min(STAYS_PX, size / 2);
  if (to < strip) return strip - to;
  return from > size - strip ? size - strip - from : 0;
}

/** Margins of the stage, px. */
export type Margins = Readonly<Record<'left' | 'top' | 'right' | 'bottom', number>>;

/**
 * Returns the viewport with the whole of `extent` in view and a margin on each side. At least 50 px are left for it, also on a stage that
 * has no size yet.
 */
export function fitted(extent: Extent, stage: SizePx, { left, top, right, bottom }: Margins): Viewport {
  const width = Math.max(extent.maxX - extent.minX, 1);
  const height = Math.max(extent.maxY - extent.minY, 1);
  const free: SizePx = {
    width: Math.max(stage.width - left - right, 50),
    height: Math.max(stage.height - top - bottom, 50),
  };
  const scale = Math.min(
    SCALE_LIMITS.most,
    Math.max(SCALE_LIMITS.least, Math.min(free.width / width, free.height / height)),
  );
  return {
    scale,
    x: (stage.width + left - right) / 2 - ((extent.minX + extent.maxX) / 2) * scale,
    y: (stage.height + top - bottom) / 2 - ((extent.minY + extent.maxY) / 2) * scale,
  };
}

/** Surroundings of a thing that are shown with it, mm: enough to see where in the house it is. */
const ABOUT_MM = 1500;
const SHOW_MARGIN_PX = 40;
const SHOW_MARGINS: Margins = {
  left: SHOW_MARGIN_PX,
  top: SHOW_MARGIN_PX,
  right: SHOW_MARGIN_PX,
  bottom: SHOW_MARGIN_PX,
};
/** Least share of the stage that a thing with its surroundings must take up. */
const LEAST_SHARE = 0.25;

/** Returns a viewport with `extent` in view and large enough; the same object if that is so already. */
export function showing(viewport: Viewport, extent: Extent, stage: SizePx): Viewport {
  const [left, top] = toScreen(viewport, [extent.minX, extent.minY]);
  const [right, bottom] = toScreen(viewport, [extent.maxX, extent.maxY]);
  const inside =
    Math.min(left, top) >= SHOW_MARGIN_PX &&
    right <= stage.width - SHOW_MARGIN_PX &&
    bottom <= stage.height - SHOW_MARGIN_PX;
  const across = Math.max(extent.maxX - extent.minX, extent.maxY - extent.minY) + 2 * ABOUT_MM;
  const large = across * viewport.scale >= LEAST_SHARE * Math.min(stage.width, stage.height);
  if (inside && large) return viewport;
  const around: Extent = {
    minX: extent.minX - ABOUT_MM,
    minY: extent.minY - ABOUT_MM,
    maxX: extent.maxX + ABOUT_MM,
    maxY: extent.maxY + ABOUT_MM,
  };
  return fitted(around, stage, SHOW_MARGINS);
}
