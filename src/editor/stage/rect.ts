import type { Extent } from '../../../geometry/plane/extent.ts';
import { type SizePx, toPlan, toScreen, type Viewport } from '../../state/viewport.ts';

/** An upright rectangle of the screen, px. */
export interface RectPx {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Lines, halos and ticks reach this far beyond what they are drawn around, px. */
const OVERHANG_PX = 12;

/** Returns the screen rectangle that the extent, mm, is drawn in, with lines and the halos of letters. */
export function rectOf(view: Viewport, { minX, minY, maxX, maxY }: Extent): RectPx {
  const [left, top] = toScreen(view, [minX, minY]);
  const [right, bottom] = toScreen(view, [maxX, maxY]);
  return { left: left - OVERHANG_PX, top: top - OVERHANG_PX, right: right + OVERHANG_PX, bottom: bottom + OVERHANG_PX };
}

/** Returns the rectangle of the plan, mm, whose drawing may reach into the screen rectangle. */
export function extentOf(view: Viewport, { left, top, right, bottom }: RectPx): Extent {
  const [minX, minY] = toPlan(view, [left - OVERHANG_PX, top - OVERHANG_PX]);
  const [maxX, maxY] = toPlan(view, [right + OVERHANG_PX, bottom + OVERHANG_PX]);
  return { minX, minY, maxX, maxY };
}

/** Returns the strips of `whole` that are uncovered when its picture moves by (dx, dy). They do not overlap. */
export function exposedStrips(whole: RectPx, dx: number, dy: number): readonly RectPx[] {
  const { left, top, right, bottom } = whole;
  const upright = dx > 0 ? { ...whole, right: left + dx } : { ...whole, left: right + dx };
  const beside = dx > 0 ? { left: left + dx, right } : { left, right: right + dx };
  const level = dy > 0 ? { ...beside, top, bottom: top + dy } : { ...beside, top: bottom + dy, bottom };
  return [upright, level].filter((strip) => strip.right > strip.left && strip.bottom > strip.top);
}

/** Returns the stage with a margin around it. */
export function stageRect({ width, height }: SizePx, marginPx: number): RectPx {
  return { left: -marginPx, top: -marginPx, right: width + marginPx, bottom: height + marginPx };
}

function intersects(a: RectPx, b: RectPx): boolean {
  return a.left < b.right && a.right > b.left && a.top < b.bottom && a.bottom > b.top;
}

/** Returns the area that both cover; null if they do not overlap. */
export function intersection(a: RectPx, b: RectPx): RectPx | null {
  if (!intersects(a, b)) return null;
  return {
    left: Math.max(a.left, b.left),
    top: Math.max(a.top, b.top),
    right: Math.min(a.right, b.right),
    bottom: Math.min(a.bottom, b.bottom),
  };
}

/** Returns the smallest rectangle that covers both. */
export function union(a: RectPx, b: RectPx): RectPx {
  return {
    left: Math.min(a.left, b.left),
    top: Math.min(a.top, b.top),
    right: Math.max(a.right, b.right),
    bottom: Math.max(a.bottom, b.bottom),
  };
}

/** Returns the rectangle grown to whole canvas pixels, `ratio` per px, so that a clip along it blends no edge pixel. */
export function snappedOut({ left, top, right, bottom }: RectPx, ratio: number): RectPx {
  const down = (value: number) => Math.floor(value * ratio) / ratio;
  const up = (value: number) => Math.ceil(value * ratio) / ratio;
  return { left: down(left), top: down(top), right: up(right), bottom: up(bottom) };
}

/** Returns the area, px². */
export function areaOf({ left, top, right, bottom }: RectPx): number {
  return (right - left) * (bottom - top);
}
