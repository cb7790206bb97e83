import type { Check, DetectorReport } from '../../../geometry/check/types.ts';
import { toneOf } from '../../../geometry/messages/index.ts';
import type { Detector, XY } from '../../../geometry/plan/model.ts';
import { discsPart } from '../../drawing/display-list.ts';
import { tape } from '../../drawing/labels/measured.ts';
import { verdictSign } from '../../drawing/verdict-sign.ts';
import { LINE_PX } from '../../theme/tokens.ts';
import { paintLaidShapes } from './canvas.ts';
import type { Places } from './names/places.ts';
import { lengthPx, type Pen, px, stroke } from './pen.ts';
import { drawText, FINE, type TextStyle, textWidth } from './text.ts';

/** A detector is never drawn smaller than this, px: it must be found at arm's length. */
export const LEAST_RADIUS_PX = 11;

export interface DrawnDetector {
  readonly detector: Detector;
  readonly report: DetectorReport | null;
  readonly chosen: boolean;
}

export function discRadius(pen: Pen, detector: Detector): number {
  return Math.max(LEAST_RADIUS_PX, lengthPx(pen, detector.radius));
}

/** A disc with the sign of its verdict. */
export function paintDetector(pen: Pen, { detector, report, chosen }: DrawnDetector): void {
  const verdict = report ? toneOf(report) : 'unknown';
  const at = px(pen, detector.at);
  const radius = discRadius(pen, detector);
  paintLaidShapes(pen, [
    { ink: { fill: 'paper' }, parts: [discsPart([at], radius + 2.5)] },
    ...verdictSign(verdict, at, radius + 1.3),
    ...(chosen
      ? [{ ink: { line: LINE_PX.detector, color: 'accent' }, parts: [discsPart([at], radius + 6)] } as const]
      : []),
  ]);
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
    const color = pen.theme.verdict[check.verdict].line;
    const [a, b] = [px(pen, check.witness.rim), px(pen, check.witness.subject)];
    const line = tape(a, b, FINE.sizePx, check.verdict);
    paintLaidShapes(pen, [{ ...line, ink: { line: LINE_PX.dimension * 4, color: 'paper' } }, line]);
    writeMeasure(pen, words(check), a, b, color, places);
  }
}

/** Level text at the middle of the line, or nearer to the subject where another figure stands; at worst over a name of the sheet. */
function writeMeasure(pen: Pen, text: string, a: XY, b: XY, color: string, places: Places): void {
  const style: TextStyle = { ...FINE, bold: true, color };
  const width = textWidth(pen, text, style) + 10;
  const height = style.sizePx + 7;
  const spots = [0.5, 0.68, 0.32, 0.85].map((t): XY => [a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t]);
  // A short line has its figure beyond the subject.
  const far = Math.hypot(b[0] - a[0], b[1] - a[1]) || 1;
  const [ux, uy] = [(b[0] - a[0]) / far, (b[1] - a[1]) / far];
  const beyond: XY = [b[0] + ux * (8 + (Math.abs(ux) * width) / 2), b[1] + uy * (8 + height / 2)];
  // Beside it, at right angles, where along the line all is taken.
  const aside = [1, -1].map((side): XY => {
    const off = 6 + (Math.abs(uy) * width + Math.abs(ux) * height) / 2;
    return [(a[0] + b[0]) / 2 - uy * off * side, (a[1] + b[1]) / 2 + ux * off * side];
  });
  const middles = far > width * 0.9 ? [...spots, beyond, ...aside] : [beyond, ...aside, ...spots];
  const at =
    middles.find((middle) => places.claim(middle, width, height)) ??
    middles.find((middle) => places.claim(middle, width, height, true));
  if (!at) return;
  pen.ctx.fillStyle = pen.theme.paper;
  pen.ctx.fillRect(at[0] - width / 2, at[1] - height / 2, width, height);
  pen.ctx.beginPath();
  pen.ctx.rect(at[0] - width / 2, at[1] - height / 2, width, height);
  stroke(pen, color, 0.75);
  drawText(pen, text, at, style);
}
