import type { XY } from '../../../geometry/plan/model.ts';
import { LINE_PX } from '../../theme/tokens.ts';
import { type Pen, px, stroke, traceLine } from './pen.ts';
import { drawText, READ } from './text.ts';

/** Letters stand so far inside their corner, px, along its diagonal. */
const INSIDE_PX = 26;
const DISC_PX = 12;
const DASH = [9, 5] as const;

/** The four corners of a room with their letters, and the two diagonals that are to be taped between them. */
export function paintCorners(pen: Pen, corners: readonly XY[]): void {
  const { ctx, theme } = pen;
  const [a, b, c, d] = corners;
  if (!a || !b || !c || !d) return;
  for (const diagonal of [[a, c] as const, [b, d] as const]) {
    ctx.beginPath();
    traceLine(pen, diagonal);
    stroke(pen, theme.paper, LINE_PX.dimension * 3.5);
    stroke(pen, theme.accent, LINE_PX.dimension, DASH);
  }
  corners.forEach((corner, i) => {
    const [x, y] = px(pen, corner);
    const [ox, oy] = px(pen, corners[(i + 2) % 4] as XY);
    const length = Math.hypot(ox - x, oy - y) || 1;
    const off = Math.min(INSIDE_PX, length / 3);
    const at: XY = [x + ((ox - x) / length) * off, y + ((oy - y) / length) * off];
    ctx.beginPath();
    ctx.arc(at[0], at[1], DISC_PX, 0, 2 * Math.PI);
    ctx.fillStyle = theme.accent;
    ctx.fill();
    drawText(pen, 'ABCD'[i] ?? '', at, { ...READ, bold: true, color: theme.onAccent });
  });
}
