import type { Tracing } from '../../../geometry/plan/model.ts';
import { negativeOf } from '../stage/tracing-images.ts';
import { type Pen, px } from './pen.ts';

/**
 * The photo or scan under the level, faded as asked. Like ink on glass: where it is blank the sheet shows as it is, so that white is
 * still where a detector may sit.
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
