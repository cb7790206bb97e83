import type { Extent } from '../../../geometry/plane/body.ts';
import { type SizePx, toPlan, toScreen, type Viewport } from '../../state/viewport.ts';

/** An upright rectangle of the screen, px. */
export interface AreaPx {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** Lines, halos and ticks reach this far beyond what they are drawn about, px. */
const REACH_PX = 12;

/** The rectangle of the screen that the extent is drawn in, lines and letters' halos included. */
export function areaOf(view: Viewport, { minX, minY, maxX, maxY }: Extent): AreaPx {
  const [left, top] = toScreen(view, [minX, minY]);
  const [right, bottom] = toScreen(view, [maxX, maxY]);
  return { left: left - REACH_PX, top: top - REACH_PX, right: right + REACH_PX, bottom: bottom + REACH_PX };
}

/** The rectangle of the plan, mm, of which anything may reach into the area. */
export function extentOf(view: Viewport, { left, top, right, bottom }: AreaPx): Extent {
  const [minX, minY] = toPlan(view, [left - REACH_PX, top - REACH_PX]);
  const [maxX, maxY] = toPlan(view, [right + REACH_PX, bottom + REACH_PX]);
  return { minX, minY, maxX, maxY };
}

/** What comes in at the edges of `whole` when its picture moves by (dx, dy). They do not overlap. */
export function strips(whole: AreaPx, dx: number, dy: number): readonly AreaPx[] {
  const { left, top, right, bottom } = whole;
  const upright = dx > 0 ? { ...whole, right: left + dx } : { ...whole, left: right + dx };
  const beside = dx > 0 ? { left: left + dx, right } : { left, right: right + dx };
  const level = dy > 0 ? { ...beside, top, bottom: top + dy } : { ...beside, top: bottom + dy, bottom };
  return [upright, level].filter((strip) => strip.right > strip.left && strip.bottom > strip.top);
}

/** The stage and so many px about it. */
export function stageArea({ width, height }: SizePx, aboutPx: number): AreaPx {
  return { left: -aboutPx, top: -aboutPx, right: width + aboutPx, bottom: height + aboutPx };
}

export function areasMeet(a: AreaPx, b: AreaPx): boolean {
  return a.left < b.right && a.right > b.left && a.top < b.bottom && a.bottom > b.top;
}

/** What both hold; null where they do not meet. */
export function common(a: AreaPx, b: AreaPx): AreaPx | null {
  if (!areasMeet(a, b)) return null;
  return {
    left: Math.max(a.left, b.left),
    top: Math.max(a.top, b.top),
    right: Math.min(a.right, b.right),
    bottom: Math.min(a.bottom, b.bottom),
  };
}

/** The least rectangle that holds both. */
export function about(a: AreaPx, b: AreaPx): AreaPx {
  return {
    left: Math.min(a.left, b.left),
    top: Math.min(a.top, b.top),
    right: Math.max(a.right, b.right),
    bottom: Math.max(a.bottom, b.bottom),
  };
}

/** Grown to whole pixels of a canvas with `ratio` of them to a px, so that no edge pixel is painted twice by halves. */
export function wholePixels({ left, top, right, bottom }: AreaPx, ratio: number): AreaPx {
  const down = (value: number) => Math.floor(value * ratio) / ratio;
  const up = (value: number) => Math.ceil(value * ratio) / ratio;
  return { left: down(left), top: down(top), right: up(right), bottom: up(bottom) };
}

export function sizeOfArea({ left, top, right, bottom }: AreaPx): number {
  return (right - left) * (bottom - top);
}
