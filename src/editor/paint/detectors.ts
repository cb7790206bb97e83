import type { Check, DetectorReport } from '../../../geometry/check/types.ts';
import { toneOf } from '../../../geometry/messages/index.ts';
import type { Detector } from '../../../geometry/plan/model.ts';
import { discsPart, type Shape } from '../../drawing/display-list.ts';
import { plateLabel } from '../../drawing/labels/block.ts';
import { figureSlots, tape } from '../../drawing/labels/measured.ts';
import type { Drawn } from '../../drawing/text.ts';
import { verdictSign } from '../../drawing/verdict-sign.ts';
import { LINE_PX } from '../../theme/tokens.ts';
import type { OverlayPlacer } from './names/overlay-placer.ts';
import { lengthPx, type Pen, px } from './pen.ts';
import { FINE } from './text.ts';

/** A detector is never drawn smaller than this, px: it must be found at arm's length. */
export const LEAST_RADIUS_PX = 11;

export interface DrawnDetector {
  readonly detector: Detector;
  readonly report: DetectorReport | null;
  readonly chosen: boolean;
}

function discRadius(pen: Pen, detector: Detector): number {
  return Math.max(LEAST_RADIUS_PX, lengthPx(pen, detector.radius));
}

/** A disc with the sign of its verdict. */
export function detectorShapes(pen: Pen, { detector, report, chosen }: DrawnDetector): readonly Shape[] {
  const at = px(pen, detector.at);
  const radius = discRadius(pen, detector);
  return [
    { ink: { fill: 'paper' }, parts: [discsPart([at], radius + 2.5)] },
    ...verdictSign(report ? toneOf(report) : 'unknown', at, radius + 1.3),
    ...(chosen
      ? [{ ink: { line: LINE_PX.detector, color: 'accent' }, parts: [discsPart([at], radius + 6)] } as const]
      : []),
  ];
}

/** The lines that a tester would tape: from the rim to each subject near its limit, with the length on it. */
export function drawnMeasures(
  pen: Pen,
  checks: readonly Check[],
  words: (check: Check) => string,
  placer: OverlayPlacer,
): readonly Drawn[] {
  return checks.flatMap((check) => {
    if (!check.witness) return [];
    const { verdict: color, witness } = check;
    const [a, b] = [px(pen, witness.rim), px(pen, witness.subject)];
    const line = tape(a, b, FINE.size, color);
    const text = words(check);
    const style = { ...FINE, bold: true, color };
    const slot = placer.claim(figureSlots([a, b], pen.measure(text, style) + 10, style.size + 7));
    const casing: Shape = { ...line, ink: { line: LINE_PX.dimension * 4, color: 'paper' } };
    const figure = slot ? [plateLabel(text, style, slot, { fill: 'paper', line: 0.75, color })] : [];
    return [{ shapes: [casing, line], texts: [] }, ...figure];
  });
}
