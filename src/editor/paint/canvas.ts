import { memoize } from '../../../geometry/plane/memoize.ts';
import { type Part, type Shape, trace } from '../../drawing/display-list.ts';
import { type Ink, roleColor, strokeOf } from '../../drawing/inks.ts';
import type { Drawn, TextStyle } from '../../drawing/text.ts';
import type { Viewport } from '../../state/viewport.ts';
import { HATCHES } from '../../theme/hatches.ts';
import { hatchFill } from './hatch-pattern.ts';
import { isSeen, type Pen, px } from './pen.ts';
import { paintTexts } from './text.ts';

/** Draws shapes of the plan, mm, at their places on the screen. Line widths and hatches are in screen px. */
export function paintShapes(pen: Pen, shapes: readonly Shape[]): void {
  // Shapes in a row are mostly clipped to the same floors.
  const seenPath = memoize((parts: readonly Part[]): { path: Path2D | null } => {
    const seen = parts.filter(({ extent }) => isSeen(pen, extent));
    return { path: seen.length > 0 ? pathOf(seen, pen.view) : null };
  });
  for (const { ink, parts, within } of shapes) {
    const clip = within && seenPath(within).path;
    const path = clip === null ? null : seenPath(parts).path;
    if (path) paintPath(pen, ink, path, clip ?? undefined);
  }
}

/** Draws shapes and texts that are in screen px; the texts of each item before the next item. */
export function paintDrawn(pen: Pen, ...all: readonly Drawn[]): void {
  for (const { shapes, texts } of all) {
    for (const { ink, parts, within } of shapes) {
      const clip = within && joinedPath(within);
      // Most are new in every frame: the canvas traces one faster than it makes an object for its path.
      pen.ctx.beginPath();
      for (const part of parts) trace(pen.ctx, part);
      paintPath(pen, ink, undefined, clip);
    }
    paintTexts(pen, texts);
  }
}

/** Draws shapes and texts that are in mm, sizes of type too. */
export function paintOnPlan(pen: Pen, { shapes, texts }: Drawn): void {
  paintShapes(pen, shapes);
  const sized = (style: TextStyle) => ({ ...style, size: style.size * pen.view.scale });
  const placed = texts.map((text) => ({ ...text, at: px(pen, text.at), style: sized(text.style) }));
  paintTexts(pen, placed);
}

/**
 * Draws a path. The state of the canvas is left as it was used, because saving and restoring it takes longer than drawing a line: every
 * function here sets what it uses.
 * @param path undefined for the path that is traced on the canvas @param clip nothing is drawn outside it
 */
function paintPath(pen: Pen, ink: Ink, path: Path2D | undefined, clip: Path2D | undefined): void {
  const { ctx, theme } = pen;
  if (clip) {
    ctx.save();
    ctx.clip(clip, 'nonzero');
  }
  ctx.globalAlpha = ink.opacity ?? 1;
  const fills = [ink.fill && roleColor(theme, ink.fill), ink.hatch && hatchFill(pen, HATCHES[ink.hatch], theme.hatch)];
  for (const fill of fills) {
    if (!fill) continue;
    ctx.fillStyle = fill;
    if (path) ctx.fill(path, ink.rule ?? 'nonzero');
    else ctx.fill(ink.rule ?? 'nonzero');
  }
  if (ink.line !== undefined && ink.color) {
    ctx.strokeStyle = roleColor(theme, ink.color);
    const { width, dashes } = strokeOf(ink, 'px');
    ctx.lineWidth = width * theme.weight;
    ctx.lineJoin = 'miter';
    if (dashes.length > 0) ctx.setLineDash([...dashes]);
    if (path) ctx.stroke(path);
    else ctx.stroke();
    if (dashes.length > 0) ctx.setLineDash([]);
  }
  if (clip) ctx.restore();
}

/** A part with at most this many steps is traced faster than a cached path is added. */
const FEW_STEPS = 12;

/** Parts as one path, transformed to the screen as a whole, so that no single point is computed. */
function pathOf(parts: readonly Part[], { scale, x, y }: Viewport): Path2D {
  const path = new Path2D();
  path.addPath(joinedPath(parts), { a: scale, b: 0, c: 0, d: scale, e: x, f: y });
  return path;
}

/** Parts as one path, in the unit of the parts. */
function joinedPath(parts: readonly Part[]): Path2D {
  const path = new Path2D();
  for (const part of parts) {
    const [only] = part.outlines;
    if (only && part.outlines.length === 1 && only.run.length <= FEW_STEPS) trace(path, part);
    else path.addPath(wholePath(part));
  }
  return path;
}

/** Built once for each part: a pan or a zoom only transforms it. */
const wholePath = memoize((part: Part): Path2D => {
  const path = new Path2D();
  trace(path, part);
  return path;
});
