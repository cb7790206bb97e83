import type { XY } from '../../../geometry/plan/model.ts';
import { FIGURE_FONT, TEXT_FONT } from '../../theme/fonts.ts';
import { TYPE_PX } from '../../theme/tokens.ts';
import type { Pen } from './pen.ts';

export interface TextStyle {
  readonly sizePx: number;
  readonly bold?: boolean;
  /** Figures in a column: the mono face. */
  readonly figures?: boolean;
  readonly color: string;
  /** The ground that the letters are cut out of, so that they stay legible on a hatch; none when left out. */
  readonly halo?: string;
}

export const FINE = { sizePx: TYPE_PX.fine } as const;
export const SMALL = { sizePx: TYPE_PX.small } as const;
export const READ = { sizePx: TYPE_PX.read, bold: true } as const;

/** Breadth of the halo on either side, px. */
const HALO_PX = 3;

function fontOf({ figures, bold, sizePx }: TextStyle): string {
  return `${bold ? 700 : 400} ${sizePx}px "${figures ? FIGURE_FONT : TEXT_FONT}", sans-serif`;
}

/** Widths that were measured already: the same words are laid out again at every step of a drag. */
const widths = new Map<string, number>();
const MOST_WIDTHS = 4000;

export function textWidth({ ctx }: Pen, text: string, style: TextStyle): number {
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
}

/** One line of text about its middle, turned by `angle` radians. */
export function drawText(pen: Pen, text: string, [x, y]: XY, style: TextStyle, angle = 0): void {
  const { ctx } = pen;
  ctx.save();
  ctx.translate(x, y);
  ctx.rotate(angle);
  ctx.textAlign = 'center';
  ctx.textBaseline = 'middle';
  ctx.font = fontOf(style);
  if (style.halo) {
    ctx.strokeStyle = style.halo;
    ctx.lineWidth = 2 * HALO_PX;
    ctx.lineJoin = 'round';
    ctx.strokeText(text, 0, 0);
  }
  ctx.fillStyle = style.color;
  ctx.fillText(text, 0, 0);
  ctx.restore();
}

/** The angle nearest to it at which text is not upside down; upright text is read from the right, as on a drawing. */
export function uprightAngle(angle: number): number {
  const turn = Math.atan2(Math.sin(angle), Math.cos(angle));
  if (turn > Math.PI / 2 - 1e-6) return turn - Math.PI;
  return turn < -Math.PI / 2 - 1e-6 ? turn + Math.PI : turn;
}
