import type { Edge } from '../../../geometry/arrangement/types.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { memoize } from '../../../geometry/plane/memoize.ts';
import { roleColor } from '../../drawing/colors.ts';
import type { Ink, Part, Shape } from '../../drawing/display-list.ts';
import { DASHES, LINE_WIDTHS } from '../../drawing/line-widths.ts';
import type { Drawn } from '../../drawing/text.ts';
import { HATCHES } from '../../theme/hatches.ts';
import { hatchFill } from './hatch-pattern.ts';
import { isSeen, type Pen, px } from './pen.ts';
import { paintTexts } from './text.ts';

/** Draws shapes of the plan, mm, where they lie on the screen. Line widths and hatches stay screen px. */
export function paintShapes(pen: Pen, shapes: readonly Shape[]): void {
  const { scale, x, y } = pen.view;
  const place = new DOMMatrix([scale, 0, 0, scale, x, y]);
  for (const shape of shapes) {
    const parts = shape.parts.filter(({ extent }) => isSeen(pen, extent));
    if (parts.length > 0) paintShape(pen, shape, laid(parts, place), place);
  }
}

function paintLaidShapes(pen: Pen, shapes: readonly Shape[]): void {
  const place = new DOMMatrix();
  for (const shape of shapes) paintShape(pen, shape, laid(shape.parts, place), place);
}

/** Draws what is in screen px already, each with its words before the next. */
export function paintDrawn(pen: Pen, ...all: readonly Drawn[]): void {
  for (const { shapes, texts } of all) {
    paintLaidShapes(pen, shapes);
    paintTexts(pen, texts);
  }
}

/** Draws shapes that are in mm, with texts at places in mm; sizes of type stay px. */
export function paintOnPlan(pen: Pen, { shapes, texts }: Drawn): void {
  paintShapes(pen, shapes);
  paintTexts(
    pen,
    texts.map((text) => ({ ...text, at: px(pen, text.at) })),
  );
}

function paintShape(pen: Pen, { ink, within }: Shape, path: Path2D, place: DOMMatrix): void {
  const { ctx, theme } = pen;
  ctx.save();
  if (within) ctx.clip(laid(within, place), 'nonzero');
  ctx.globalAlpha = ink.opacity ?? 1;
  const rule = ink.rule ?? 'nonzero';
  const fills = [ink.fill && roleColor(theme, ink.fill), ink.hatch && hatchFill(pen, HATCHES[ink.hatch], theme.hatch)];
  for (const fill of fills) {
    if (!fill) continue;
    ctx.fillStyle = fill;
    ctx.fill(path, rule);
  }
  if (ink.line !== undefined && ink.color) {
    ctx.strokeStyle = roleColor(theme, ink.color);
    ctx.lineWidth = widthOf(ink.line) * theme.weight;
    ctx.setLineDash(dashOf(ink));
    ctx.stroke(path);
  }
  ctx.restore();
}

const widthOf = (line: NonNullable<Ink['line']>) => (typeof line === 'number' ? line : LINE_WIDTHS[line].px);

function dashOf({ dash = [] }: Ink): number[] {
  return [...(typeof dash === 'string' ? DASHES[dash].px : dash)];
}

/** Parts as one path. */
function laid(parts: readonly Part[], place: DOMMatrix): Path2D {
  const path = new Path2D();
  for (const part of parts) {
    const [only] = part.outlines;
    // A wall or a line is traced sooner than a path of its own is added.
    if (only && 'points' in only && part.outlines.length === 1 && only.points.length <= FEW_POINTS) {
      tracePoints(path, only.points, place);
      if (only.closed) path.closePath();
    } else path.addPath(pathOf(part), place);
  }
  return path;
}

const FEW_POINTS = 12;

/** Made once for each part: a pan or a zoom only lays it on the screen anew. */
const pathOf = memoize(({ outlines }: Part): Path2D => {
  const path = new Path2D();
  for (const outline of outlines) {
    if ('points' in outline) tracePoints(path, outline.points);
    else traceEdges(path, outline.edges);
    if (outline.closed) path.closePath();
  }
  return path;
});

const PLAIN = { a: 1, e: 0, f: 0 };

/** @param place scale and offset */
function tracePoints(path: Path2D, points: readonly XY[], { a, e, f }: typeof PLAIN = PLAIN): void {
  points.forEach(([x, y], index) => {
    if (index === 0) path.moveTo(x * a + e, y * a + f);
    else path.lineTo(x * a + e, y * a + f);
  });
}

/** Lines and true arcs, each starting where the one before ends. */
function traceEdges(path: Path2D, edges: readonly Edge[]): void {
  edges.forEach((edge, index) => {
    // A first edge must not be joined to what was drawn before.
    if (index === 0) path.moveTo(...startOf(edge));
    if (edge.kind === 'line') path.lineTo(...edge.to);
    else path.arc(...edge.center, edge.radius, edge.start, edge.start + edge.sweep, edge.sweep < 0);
  });
}

function startOf(edge: Edge): XY {
  if (edge.kind === 'line') return edge.from;
  const { center, radius, start } = edge;
  return [center[0] + radius * Math.cos(start), center[1] + radius * Math.sin(start)];
}
