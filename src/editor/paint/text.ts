import { roleColor } from '../../drawing/inks.ts';
import type { MeasureText, Text, TextStyle } from '../../drawing/text.ts';
import { TEXT_FONT } from '../../theme/font-names.ts';
import { TYPE_PX } from '../../theme/tokens.ts';
import type { Pen } from './pen.ts';

export const FINE = { size: TYPE_PX.fine } as const;
export const READ = { size: TYPE_PX.read, bold: true } as const;

/** Width of the halo on each side, px. */
const HALO_PX = 3;

function fontOf({ bold = false, size }: Pick<TextStyle, 'bold' | 'size'>): string {
  return `${bold ? 700 : 400} ${size}px "${TEXT_FONT}", sans-serif`;
}

/** Cached widths: the same words are laid out again at every step of a drag. */
const widths = new Map<string, number>();
const MOST_WIDTHS = 4000;

/** Clears the cached widths, after a font has loaded. */
export function forgetWidths(): void {
  widths.clear();
}

/**
 * Returns a function that measures the width of texts.
 * @param ctx context of a canvas in the page, whose style sheet affects the width of figures
 */
export function measuredBy(ctx: CanvasRenderingContext2D): MeasureText {
  return (text, style) => {
    const font = fontOf(style);
    const key = `${font}|${text}`;
    let width = widths.get(key);
    if (width === undefined) {
      ctx.font = font;
      width = ctx.measureText(text).width;
      if (widths.size > MOST_WIDTHS) widths.clear();
      widths.set(key, width);
    }
    return width;
  };
}

/** Paints texts in screen px: all halos first, because a halo would cover the letters of an earlier text. */
export function paintTexts(pen: Pen, texts: readonly Text[]): void {
  if (texts.length === 0) return;
  const { ctx } = pen;
  ctx.globalAlpha = 1;
  ctx.textAlign = 'center';
  ctx.textBaseline = 'middle';
  ctx.lineJoin = 'round';
  ctx.lineWidth = 2 * HALO_PX;
  let font = '';
  for (const isHalo of [true, false]) {
    for (const text of texts) {
      if (isHalo && !text.style.halo) continue;
      const own = fontOf(text.style);
      // Setting a font makes the browser compute the styles of the page, even if it is the same one.
      if (own !== font) ctx.font = own;
      font = own;
      paintText(pen, text, isHalo);
    }
  }
}

/** Paints a text in the font that is set. */
function paintText({ ctx, theme }: Pen, { text, at: [x, y], turn, style }: Text, isHalo: boolean): void {
  if (turn !== 0) {
    ctx.save();
    ctx.translate(x, y);
    ctx.rotate((turn * Math.PI) / 180);
  }
  const [left, top] = turn === 0 ? [x, y] : [0, 0];
  if (isHalo) {
    ctx.strokeStyle = roleColor(theme, style.halo ?? style.color);
    ctx.strokeText(text, left, top);
  } else {
    ctx.fillStyle = roleColor(theme, style.color);
    ctx.fillText(text, left, top);
  }
  if (turn !== 0) ctx.restore();
}
