import type { Handle } from '../../../geometry/edit/reshape.ts';
import type { Level, Mm, XY } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/plane/point.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { jambCorners } from '../../../geometry/snap/opening-symbol.ts';
import { formatMeasured } from '../../../geometry/units/index.ts';
import { outlinePart } from '../../drawing/things.ts';
import { LINE_PX } from '../../theme/tokens.ts';
import type { Sketch } from '../overlay/sketch.ts';
import { paintDimensionLine, paintShapes } from './canvas.ts';
import { lengthPx, type Pen, px, stroke, traceLine, traceRing } from './pen.ts';
import { drawText, FINE, READ, SMALL, uprightAngle } from './text.ts';

const GRIP_PX = 5;
const OFF_WALL_PX = 12;

/** Squares at corners and ends, discs for turns and rims, on a line from the box where the grip stands off. */
export function paintHandles(pen: Pen, handles: readonly Handle[]): void {
  const { ctx, theme } = pen;
  for (const { kind, at } of handles) {
    const [x, y] = px(pen, at);
    ctx.beginPath();
    if (kind === 'turn' || kind === 'radius' || kind === 'stream') ctx.arc(x, y, GRIP_PX + 1, 0, 2 * Math.PI);
    else ctx.rect(x - GRIP_PX, y - GRIP_PX, 2 * GRIP_PX, 2 * GRIP_PX);
    ctx.fillStyle = theme.paper;
    ctx.fill();
    stroke(pen, theme.accent, LINE_PX.detector);
  }
}

/** The walls that are being drawn one after another: their corners, and where the next one would go. */
export interface DrawnChain {
  readonly points: readonly XY[];
  readonly next: XY | null;
  readonly thickness: Mm;
}

/** Everything that is being drawn and is not in the plan yet. */
export function paintSketch(pen: Pen, sketch: Sketch, chain: DrawnChain | null, level: Level, asks: boolean): void {
  paintGuides(pen, sketch);
  if (chain) paintChain(pen, chain);
  if (sketch.box) paintBox(pen, sketch.box);
  if (sketch.opening) paintOpeningPreview(pen, sketch.opening, level);
  if (sketch.previewShape) {
    const parts = [outlinePart(sketch.previewShape)];
    paintShapes(pen, [
      { ink: { fill: 'fixtureFill', opacity: 0.7 }, parts },
      { ink: { line: 'fixture', color: 'accent', dash: 'overhead' }, parts },
    ]);
  }
  if (sketch.previewName) {
    const style = { ...READ, color: pen.theme.accent, halo: pen.theme.paper };
    drawText(pen, sketch.previewName.name, px(pen, sketch.previewName.at), style);
  }
  for (const gap of sketch.gaps) paintGap(pen, gap);
  if (sketch.marquee) paintMarquee(pen, sketch.marquee);
  const says = asks ? 'Arrows move, Enter lists acts' : 'Arrows move, Enter sets';
  if (sketch.cross) paintCross(pen, sketch.cross, sketch.typed === null ? says : '');
}

function paintGuides(pen: Pen, { guides }: Sketch): void {
  pen.ctx.beginPath();
  for (const guide of guides) traceLine(pen, guide);
  stroke(pen, pen.theme.accent, 1, [2, 4]);
}

/** The walls so far in their thickness, the one that would be added lighter, the corners marked. */
function paintChain(pen: Pen, { points, next, thickness }: DrawnChain): void {
  const { ctx, theme } = pen;
  const line = next ? [...points, next] : points;
  ctx.lineJoin = 'miter';
  ctx.beginPath();
  traceLine(pen, line);
  ctx.globalAlpha = 0.25;
  ctx.strokeStyle = theme.poche;
  ctx.lineWidth = Math.max(3, lengthPx(pen, thickness));
  ctx.stroke();
  ctx.globalAlpha = 1;
  ctx.beginPath();
  traceLine(pen, line);
  stroke(pen, theme.accent, LINE_PX.detector);
  points.forEach((point, index) => {
    mark(pen, point, index === 0 && points.length > 2 ? 8 : 4);
  });
  if (next) mark(pen, next, 4);
}

function mark(pen: Pen, point: XY, radius: number): void {
  const [x, y] = px(pen, point);
  pen.ctx.beginPath();
  pen.ctx.arc(x, y, radius, 0, 2 * Math.PI);
  pen.ctx.fillStyle = pen.theme.paper;
  pen.ctx.fill();
  stroke(pen, pen.theme.accent, LINE_PX.detector);
}

/** The floor of the room that is being drawn, face to face. */
function paintBox(pen: Pen, [a, b]: NonNullable<Sketch['box']>): void {
  pen.ctx.beginPath();
  traceRing(pen, [a, [b[0], a[1]], b, [a[0], b[1]]]);
  pen.ctx.fillStyle = pen.theme.paper;
  pen.ctx.globalAlpha = 0.8;
  pen.ctx.fill();
  pen.ctx.globalAlpha = 1;
  stroke(pen, pen.theme.accent, LINE_PX.detector);
}

/** The opening in its wall, and the two lengths that set it out. */
function paintOpeningPreview(pen: Pen, preview: NonNullable<Sketch['opening']>, level: Level): void {
  const { ctx, theme } = pen;
  const corners = jambCorners(level, { id: '', ...preview.opening });
  if (!corners) return;
  const { near, far } = corners;
  const tone = preview.refusal ? theme.verdict.blocked.line : theme.accent;
  ctx.beginPath();
  traceRing(pen, [near[0], far[0], far[1], near[1]]);
  ctx.fillStyle = theme.paper;
  ctx.fill();
  stroke(pen, tone, LINE_PX.detector, preview.refusal ? [4, 3] : []);
  if (preview.refusal) return;
  // Off the wall, on the side that is measured from.
  const [left, right] = near.map((corner) => px(pen, corner)) as [XY, XY];
  const [fx, fy] = px(pen, preview.offsets[0][1]);
  const [mx, my] = [(left[0] + right[0]) / 2, (left[1] + right[1]) / 2];
  const reach = Math.hypot(fx - mx, fy - my) || 1;
  const off = ([x, y]: XY): XY => [x + ((fx - mx) / reach) * OFF_WALL_PX, y + ((fy - my) / reach) * OFF_WALL_PX];
  for (const [from, to] of preview.offsets) paintDimensionLine(pen, off(px(pen, from)), off(px(pen, to)));
}

/** A dimension line with its length, read from below. */
function paintGap(pen: Pen, [from, to]: Line): void {
  const [a, b] = [px(pen, from), px(pen, to)];
  const style = { ...FINE, bold: true, color: pen.theme.dimension, halo: pen.theme.paper };
  const text = formatMeasured(distance(from, to), pen.unit);
  const angle = uprightAngle(Math.atan2(b[1] - a[1], b[0] - a[0]));
  paintDimensionLine(pen, a, b);
  drawText(pen, text, [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], style, angle);
}

function paintMarquee(pen: Pen, [a, b]: NonNullable<Sketch['marquee']>): void {
  pen.ctx.beginPath();
  traceRing(pen, [a, [b[0], a[1]], b, [a[0], b[1]]]);
  pen.ctx.fillStyle = pen.theme.accent;
  pen.ctx.globalAlpha = 0.08;
  pen.ctx.fill();
  pen.ctx.globalAlpha = 1;
  stroke(pen, pen.theme.accent, 1, [6, 4]);
}

/** The keyboard's cross, with how it is moved unless a length is being typed beside it. */
function paintCross(pen: Pen, at: XY, says: string): void {
  const { ctx, theme } = pen;
  const [x, y] = px(pen, at);
  ctx.beginPath();
  for (const [dx, dy] of [
    [1, 0],
    [-1, 0],
    [0, 1],
    [0, -1],
  ] as const) {
    ctx.moveTo(x + dx * 6, y + dy * 6);
    ctx.lineTo(x + dx * 26, y + dy * 26);
  }
  stroke(pen, theme.paper, 5);
  stroke(pen, theme.accent, 2);
  if (says)
    drawText(pen, says, [x, y + 42], {
      ...SMALL,
      color: theme.accent,
      halo: theme.paper,
    });
}
