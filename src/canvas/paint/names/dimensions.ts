import type { XY } from '../../../../geometry/plan/model.ts';
import { remembered } from '../../../../geometry/remembered.ts';
import type { Dimension } from '../../../../geometry/room-dimensions.ts';
import { faceDimension } from '../../../../geometry/running-dimensions.ts';
import { LINE_PX } from '../../../design/tokens.ts';
import { drawnDimensions } from '../../drawing.ts';
import { about } from '../../surface/area.ts';
import { lengthPx, type Pen, px, stroke } from '../pen.ts';
import { drawText, FINE, type TextStyle, textWidth, uprightAngle } from '../text.ts';
import { boxAbout, type Mark } from './mark.ts';
import type { Places } from './places.ts';

/** How far a dimension line stands off the wall's outer face, and inside a room off the face, px. */
const OFF_OUTSIDE_PX = 22;
const OFF_INSIDE_PX = 13;
const TICK_PX = 5;

/** Fine lines with slanting ticks and the length over them. What is too short on screen for its figure is left out. */
export function dimensionMarks(
  pen: Pen,
  dimensions: readonly Dimension[],
  words: (dimension: Dimension) => string,
  places: Places,
): readonly Mark[] {
  const style: TextStyle = { ...FINE, colour: pen.theme.dimension, halo: pen.theme.card };
  return dimensions.flatMap((dimension) => {
    const text = words(dimension);
    const width = textWidth(pen, text, style);
    if (lengthPx(pen, dimension.length) < width + 16) return [];
    const off = dimension.wallBehind === null ? -OFF_INSIDE_PX : lengthPx(pen, dimension.wallBehind) + OFF_OUTSIDE_PX;
    const [a, b] = [dimension.from, dimension.to].map((point): XY => {
      const [x, y] = px(pen, point);
      return [x + dimension.outward[0] * off, y + dimension.outward[1] * off];
    }) as [XY, XY];
    const middle: XY = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
    const angle = uprightAngle(Math.atan2(b[1] - a[1], b[0] - a[0]));
    const [w, h] = [Math.abs(Math.cos(angle)) * width + 14, Math.abs(Math.sin(angle)) * width + 14];
    if (!places.claim(middle, w, h)) return [];
    return [dimensionMark(pen, dimension, { a, b, middle, angle, off, text, width, style })];
  });
}

/** A dimension as it is drawn, screen px. */
interface Drawn {
  readonly a: XY;
  readonly b: XY;
  readonly middle: XY;
  readonly angle: number;
  readonly off: number;
  readonly text: string;
  readonly width: number;
  readonly style: TextStyle;
}

/** A figure that is left out as soon as it is no longer true: `sheet-names.ts` writes the new one. */
function dimensionMark(pen: Pen, dimension: Dimension, drawn: Drawn): Mark {
  const { a, b, middle, angle, off, text, width, style } = drawn;
  const points = [px(pen, dimension.from), px(pen, dimension.to), a, b].map((at) =>
    boxAbout(at, 2 * TICK_PX, 2 * TICK_PX),
  );
  const key = dimensionKey(dimension);
  return {
    draw: (on) => {
      if (dimension.wallBehind !== null) paintExtensions(on, dimension, off);
      paintDimensionLine(on, a, b, width + 10);
      drawText(on, text, middle, style, angle);
    },
    figure: { dimension: faceDimension(dimension), middle },
    box: [...points, boxAbout(middle, width + style.sizePx, width + style.sizePx)].reduce(about),
    followed: function (this: Mark, _, { model }) {
      return dimensionKeys(drawnDimensions(model)).has(key) ? this : null;
    },
  };
}

/** The same key is the same figure at the same place. */
export function dimensionKey({ from, to, outward, wallBehind }: Dimension): string {
  return [...from, ...to, ...outward, wallBehind].join(' ');
}

export const dimensionKeys = remembered(
  (dimensions: readonly Dimension[]): ReadonlySet<string> => new Set(dimensions.map(dimensionKey)),
);

/** A line with a slanting tick at each end and a gap in its middle for the figure, screen px. */
export function paintDimensionLine(pen: Pen, a: XY, b: XY, gap = 0): void {
  const { ctx, theme } = pen;
  const angle = Math.atan2(b[1] - a[1], b[0] - a[0]) + Math.PI / 4;
  const half = gap / 2 / (Math.hypot(b[0] - a[0], b[1] - a[1]) || 1);
  const at = (share: number): XY => [a[0] + (b[0] - a[0]) * share, a[1] + (b[1] - a[1]) * share];
  ctx.beginPath();
  ctx.moveTo(...a);
  ctx.lineTo(...at(Math.max(0, 0.5 - half)));
  ctx.moveTo(...at(Math.min(1, 0.5 + half)));
  ctx.lineTo(...b);
  for (const [x, y] of [a, b]) {
    ctx.moveTo(x - Math.cos(angle) * TICK_PX, y - Math.sin(angle) * TICK_PX);
    ctx.lineTo(x + Math.cos(angle) * TICK_PX, y + Math.sin(angle) * TICK_PX);
  }
  stroke(pen, theme.dimension, LINE_PX.dimension * 0.8);
}

/** Thin lines from the wall's outer face to a dimension that stands outside. */
function paintExtensions(pen: Pen, { from, to, outward, wallBehind }: Dimension, off: number): void {
  const start = lengthPx(pen, wallBehind ?? 0) + 5;
  pen.ctx.beginPath();
  for (const point of [from, to]) {
    const [x, y] = px(pen, point);
    pen.ctx.moveTo(x + outward[0] * start, y + outward[1] * start);
    pen.ctx.lineTo(x + outward[0] * (off + TICK_PX), y + outward[1] * (off + TICK_PX));
  }
  stroke(pen, pen.theme.dimension, LINE_PX.dimension * 0.4);
}
