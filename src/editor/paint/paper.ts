import { unionExtent } from '../../../geometry/level/level-extent.ts';
import type { Tracing } from '../../../geometry/plan/model.ts';
import type { Extent } from '../../../geometry/plane/extent.ts';
import { SHADE } from '../../theme/tokens.ts';
import type { RectPx } from '../stage/rect.ts';
import { negativeOf } from '../stage/tracing-images.ts';
import { lengthPx, type Pen, px } from './pen.ts';

/** Margin of the paper around the drawing: at least room for the dimensions, mm; for a large house a share of its longer side. */
const PAPER_MARGIN = { least: 1500, share: 0.07 } as const;
/** Longest side of the paper as a multiple of the other: a long house has extra room above and below. */
const LONGEST = 1.4;
/** What the sheet holds before a room is closed, 40 by 30 ft, so that it does not jump while the first walls are drawn. */
export const LEAST_SHEET: Extent = { minX: 0, minY: 0, maxX: 12192, maxY: 9144 };
/** Grid lines closer than this on the screen would merge into gray, px. */
const LEAST_GRID_PX = 9;

/**
 * Paints the desk, the sheet on it, and the grid: a line every foot or quarter meter, every fifth or fourth line stronger.
 * @param begun whether a room is closed: the sheet is then only as large as the house needs
 */
export function paintSheet(pen: Pen, extent: Extent | null, begun: boolean): void {
  const { ctx, theme, area } = pen;
  ctx.fillStyle = theme.desk;
  ctx.fillRect(area.left, area.top, area.right - area.left, area.bottom - area.top);
  const paper = paperAbout(extent && !begun ? unionExtent(extent, LEAST_SHEET) : (extent ?? LEAST_SHEET));
  const [left, top] = px(pen, [paper.minX, paper.minY]);
  const [right, bottom] = px(pen, [paper.maxX, paper.maxY]);
  ctx.save();
  // A shadow is slow to paint, and within the paper it is not seen.
  if (!holds({ left, top, right, bottom }, area)) {
    ctx.shadowColor = SHADE.paper;
    ctx.shadowBlur = 14;
    ctx.shadowOffsetY = 3;
  }
  ctx.fillStyle = theme.card;
  ctx.fillRect(left, top, right - left, bottom - top);
  ctx.restore();
  ctx.save();
  ctx.beginPath();
  ctx.rect(left, top, right - left, bottom - top);
  ctx.clip();
  paintGrid(pen);
  ctx.restore();
}

function holds(outer: RectPx, inner: RectPx): boolean {
  return (
    outer.left <= inner.left && outer.top <= inner.top && outer.right >= inner.right && outer.bottom >= inner.bottom
  );
}

/** Returns the extent of the paper for a drawing of this extent, mm. */
export function paperAbout({ minX, minY, maxX, maxY }: Extent): Extent {
  const margin = Math.max(PAPER_MARGIN.least, PAPER_MARGIN.share * Math.max(maxX - minX, maxY - minY));
  const [width, height] = [maxX - minX + 2 * margin, maxY - minY + 2 * margin];
  const [aside, above] = [Math.max(0, height / LONGEST - width) / 2, Math.max(0, width / LONGEST - height) / 2];
  return {
    minX: minX - margin - aside,
    maxX: maxX + margin + aside,
    minY: minY - margin - above,
    maxY: maxY + margin + above,
  };
}

function paintGrid(pen: Pen): void {
  const base = pen.unit === 'metric' ? 250 : 304.8;
  const perStrong = pen.unit === 'metric' ? 4 : 5;
  const fine = lengthPx(pen, base) >= LEAST_GRID_PX;
  const step = fine ? base : base * perStrong;
  if (lengthPx(pen, step) < LEAST_GRID_PX) return;
  gridLines(pen, step, 0.5);
  if (fine) gridLines(pen, base * perStrong, 1.25);
}

function gridLines({ ctx, view, area, theme }: Pen, step: number, width: number): void {
  const { left, top, right, bottom } = area;
  const gap = step * view.scale;
  ctx.beginPath();
  for (let x = view.x - Math.ceil((view.x - left) / gap) * gap; x <= right; x += gap) {
    ctx.moveTo(Math.round(x) + 0.5, top);
    ctx.lineTo(Math.round(x) + 0.5, bottom);
  }
  for (let y = view.y - Math.ceil((view.y - top) / gap) * gap; y <= bottom; y += gap) {
    ctx.moveTo(left, Math.round(y) + 0.5);
    ctx.lineTo(right, Math.round(y) + 0.5);
  }
  ctx.strokeStyle = theme.grid;
  ctx.lineWidth = width * theme.weight;
  ctx.setLineDash([]);
  ctx.stroke();
}

/**
 * Paints the photo or scan under the level with its opacity. It is blended so that blank parts leave the sheet unchanged: white still means
 * that a detector may be placed there.
 */
export function paintTracing(
  pen: Pen,
  { at, width, height, scale, turn, opacity }: Tracing,
  bitmap: ImageBitmap,
): void {
  const { ctx, view, theme } = pen;
  ctx.save();
  const [x, y] = px(pen, at);
  ctx.translate(x, y);
  ctx.rotate((turn * Math.PI) / 180);
  ctx.scale(scale * view.scale, scale * view.scale);
  ctx.globalAlpha = opacity;
  const dark = theme.photo === 'negative';
  ctx.globalCompositeOperation = dark ? 'screen' : 'multiply';
  ctx.drawImage(dark ? negativeOf(bitmap) : bitmap, -width / 2, -height / 2, width, height);
  ctx.restore();
}
