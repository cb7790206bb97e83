import type { Ring } from '../../../geometry/level/types.ts';
import type { Mm, Plan, XY } from '../../../geometry/plan/model.ts';
import type { ArcRing } from '../../../geometry/region/types.ts';
import type { Theme } from '../../design/tokens.ts';
import { toScreen, type Viewport } from '../../state/viewport.ts';

/** What every painter draws with. Painters work in screen pixels; only `view` turns mm into them. */
export interface Pen {
  readonly ctx: CanvasRenderingContext2D;
  readonly view: Viewport;
  readonly theme: Theme;
  readonly unit: Plan['display']['length'];
  /** Canvas pixels for a screen pixel: patterns are drawn at this fineness. */
  readonly ratio: number;
}

export function px(pen: Pen, point: XY): XY {
  return toScreen(pen.view, point);
}

export function lengthPx(pen: Pen, mm: Mm): number {
  return mm * pen.view.scale;
}

/** Adds a closed ring to the path. */
export function traceRing(pen: Pen, ring: Ring): void {
  ring.forEach((point, index) => {
    const [x, y] = px(pen, point);
    if (index === 0) pen.ctx.moveTo(x, y);
    else pen.ctx.lineTo(x, y);
  });
  pen.ctx.closePath();
}

/** Adds an open line to the path. */
export function traceLine(pen: Pen, points: readonly XY[]): void {
  points.forEach((point, index) => {
    const [x, y] = px(pen, point);
    if (index === 0) pen.ctx.moveTo(x, y);
    else pen.ctx.lineTo(x, y);
  });
}

/** Adds a closed boundary of lines and true arcs to the path. */
export function traceArcRing(pen: Pen, ring: ArcRing): void {
  const { ctx } = pen;
  ring.forEach((edge, index) => {
    if (edge.kind === 'line') {
      const [x, y] = px(pen, edge.from);
      if (index === 0) ctx.moveTo(x, y);
      const [tx, ty] = px(pen, edge.to);
      ctx.lineTo(tx, ty);
      return;
    }
    const [cx, cy] = px(pen, edge.center);
    const radius = lengthPx(pen, edge.radius);
    // A first arc must not be joined to the ring before it.
    if (index === 0) ctx.moveTo(cx + radius * Math.cos(edge.start), cy + radius * Math.sin(edge.start));
    ctx.arc(cx, cy, radius, edge.start, edge.start + edge.sweep, edge.sweep < 0);
  });
  ctx.closePath();
}

/** A line of its own colour and width, screen px; the theme's weight makes it stronger in the sun. */
export function stroke(pen: Pen, colour: string, widthPx: number, dash: readonly number[] = []): void {
  const { ctx } = pen;
  ctx.strokeStyle = colour;
  ctx.lineWidth = widthPx * pen.theme.weight;
  ctx.setLineDash([...dash]);
  ctx.stroke();
  ctx.setLineDash([]);
}

/** Runs a painter with the context's state kept. */
export function within(pen: Pen, paint: () => void): void {
  pen.ctx.save();
  paint();
  pen.ctx.restore();
}
