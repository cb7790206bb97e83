import type { Tracing } from '../../../geometry/plan/model.ts';
import { type Pen, px, within } from './pen.ts';

/** The photo or scan under the level, faded as asked. */
export function paintTracing(
  pen: Pen,
  { at, width, height, scale, turn, opacity }: Tracing,
  bitmap: ImageBitmap,
): void {
  const { ctx, view } = pen;
  within(pen, () => {
    const [x, y] = px(pen, at);
    ctx.translate(x, y);
    ctx.rotate((turn * Math.PI) / 180);
    ctx.scale(scale * view.scale, scale * view.scale);
    ctx.globalAlpha = opacity;
    ctx.drawImage(bitmap, -width / 2, -height / 2, width, height);
  });
}
