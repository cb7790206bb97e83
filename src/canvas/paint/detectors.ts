import type { Check, DetectorReport, Verdict } from '../../../geometry/check/types.ts';
import type { Detector, XY } from '../../../geometry/plan/model.ts';
import { LINE_PX } from '../../design/tokens.ts';
import type { Places } from './names.ts';
import { lengthPx, type Pen, px, stroke, within } from './pen.ts';
import { drawText, FINE, type TextStyle, textWidth } from './text.ts';

/** A detector is never drawn smaller than this, px: it must be found at arm's length. */
const LEAST_RADIUS_PX = 11;

export interface DrawnDetector {
  readonly detector: Detector;
  readonly report: DetectorReport | null;
  /** The verdict in words: it stands beside the disc, so that no one has to know the colours. Empty where a note says it. */
  readonly word: string;
  readonly chosen: boolean;
  /** Whether its name belongs there, screen px: not over a wall. */
  readonly mayStand: (at: XY) => boolean;
}

function detectorRadiusPx(pen: Pen, detector: Detector): number {
  return Math.max(LEAST_RADIUS_PX, lengthPx(pen, detector.radius));
}

/** A disc with the sign of its verdict, and label and verdict word beside it. */
export function paintDetector(pen: Pen, drawn: DrawnDetector, places: Places): void {
  const { ctx, theme } = pen;
  const { detector, report, chosen } = drawn;
  const verdict = report?.verdict ?? 'unknown';
  const [x, y] = px(pen, detector.at);
  const radius = detectorRadiusPx(pen, detector);
  disc(ctx, x, y, radius + 2.5);
  ctx.fillStyle = theme.paper;
  ctx.fill();
  paintSign(pen, verdict, [x, y], radius);
  if (chosen) {
    disc(ctx, x, y, radius + 6);
    stroke(pen, theme.accent, LINE_PX.detector);
  }
  if (drawn.word) nameDetector(pen, drawn, radius, places);
}

/**
 * The verdict's sign, as in the panels: clear a white disc with its axis, tight a doubled rim, blocked hatched over,
 * unknown a broken rim. Told apart without colour.
 */
function paintSign(pen: Pen, verdict: Verdict, [x, y]: XY, radius: number): void {
  const { ctx, theme } = pen;
  const colour = theme.verdict[verdict].line;
  disc(ctx, x, y, radius);
  if (verdict === 'unknown') {
    stroke(pen, colour, LINE_PX.detector * 1.3, [radius * 0.38, radius * 0.405]);
    return;
  }
  if (verdict === 'blocked') within(pen, () => hatchOver(pen, [x, y], radius, colour));
  disc(ctx, x, y, radius);
  stroke(pen, colour, LINE_PX.detector * 1.3);
  if (verdict === 'tight') {
    disc(ctx, x, y, radius * 0.6);
    stroke(pen, colour, LINE_PX.detector);
  }
  if (verdict === 'clear') {
    disc(ctx, x, y, Math.max(2.5, radius * 0.22));
    ctx.fillStyle = colour;
    ctx.fill();
  }
}

/** Slanting bars over the disc. */
function hatchOver({ ctx }: Pen, [x, y]: XY, radius: number, colour: string): void {
  disc(ctx, x, y, radius);
  ctx.clip();
  ctx.beginPath();
  for (let off = -2 * radius; off <= 2 * radius; off += 5) {
    ctx.moveTo(x + off - radius, y + radius);
    ctx.lineTo(x + off + radius, y - radius);
  }
  ctx.strokeStyle = colour;
  ctx.lineWidth = 2.4;
  ctx.stroke();
}

function disc(ctx: CanvasRenderingContext2D, x: number, y: number, radius: number): void {
  ctx.beginPath();
  ctx.arc(x, y, radius, 0, 2 * Math.PI);
}

/** Label and verdict word beside the disc, in its room where it goes; the label alone where both find no room. */
function nameDetector(pen: Pen, { detector, word, mayStand }: DrawnDetector, radius: number, places: Places): void {
  const { theme } = pen;
  const [x, y] = px(pen, detector.at);
  const style: TextStyle = { sizePx: 15, bold: true, colour: theme.ink, halo: theme.paper };
  const full = detector.label ? `${detector.label} ${word}` : word;
  for (const text of [full, detector.label]) {
    const width = textWidth(pen, text, style) + 4;
    const middles: XY[] = [
      [x + radius + width / 2 + 8, y],
      [x - radius - width / 2 - 8, y],
      [x, y - radius - 16],
      [x, y + radius + 16],
    ];
    const good = middles.filter(([mx, my]) => mayStand([mx - width / 2, my]) && mayStand([mx + width / 2, my]));
    const free = [...good, ...middles].find((middle) => places.claim(middle, width, 18));
    if (!free) continue;
    drawText(pen, text, free, style);
    return;
  }
}

/** The lines that a tester would tape: from the rim to each subject near its limit, with the length on it. */
export function paintMeasures(
  pen: Pen,
  checks: readonly Check[],
  words: (check: Check) => string,
  places: Places,
): void {
  for (const check of checks) {
    if (!check.witness) continue;
    const colour = pen.theme.verdict[check.verdict].line;
    const [a, b] = [px(pen, check.witness.rim), px(pen, check.witness.subject)];
    paintTape(pen, a, b, colour);
    writeMeasure(pen, words(check), a, b, colour, places);
  }
}

/** A line with a bar across each end. */
function paintTape(pen: Pen, a: XY, b: XY, colour: string): void {
  const { ctx } = pen;
  const angle = Math.atan2(b[1] - a[1], b[0] - a[0]) + Math.PI / 2;
  ctx.beginPath();
  ctx.moveTo(...a);
  ctx.lineTo(...b);
  for (const [x, y] of [a, b]) {
    ctx.moveTo(x - Math.cos(angle) * 5, y - Math.sin(angle) * 5);
    ctx.lineTo(x + Math.cos(angle) * 5, y + Math.sin(angle) * 5);
  }
  stroke(pen, pen.theme.paper, LINE_PX.dimension * 4);
  stroke(pen, colour, LINE_PX.dimension * 1.6);
}

/** Level text at the middle of the line, or nearer to the subject where another figure stands. */
function writeMeasure(pen: Pen, text: string, a: XY, b: XY, colour: string, places: Places): void {
  const style: TextStyle = { ...FINE, bold: true, colour };
  const width = textWidth(pen, text, style) + 10;
  const height = style.sizePx + 7;
  const spots = [0.5, 0.68, 0.32, 0.85].map((t): XY => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]);
  // A short line has its figure beyond the subject.
  const far = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const [ux, uy] = [(b[0] - a[0]) / far, (b[1] - a[1]) / far];
  const beyond: XY = [b[0] + ux * (8 + (Math.abs(ux) * width) / 2), b[1] + uy * (8 + height / 2)];
  const middles = far > width * 0.9 ? [...spots, beyond] : [beyond, ...spots];
  const at = middles.find((middle) => places.claim(middle, width, height));
  if (!at) return;
  pen.ctx.fillStyle = pen.theme.paper;
  pen.ctx.fillRect(at[0] - width / 2, at[1] - height / 2, width, height);
  pen.ctx.beginPath();
  pen.ctx.rect(at[0] - width / 2, at[1] - height / 2, width, height);
  stroke(pen, colour, 0.75);
  drawText(pen, text, at, style);
}
