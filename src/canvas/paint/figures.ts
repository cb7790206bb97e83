import type { RunningDimension } from '../../../geometry/running-dimensions.ts';
import { formatLength } from '../../../geometry/units.ts';
import { figurePlace } from '../figures.ts';
import { paintDimensionLine } from './names/dimensions.ts';
import type { Pen } from './pen.ts';
import { drawText, FINE, textWidth, uprightAngle } from './text.ts';

/** Lengths about what is selected, each with its figure on the line: what is pressed to correct them. */
export function paintFigures(pen: Pen, figures: readonly RunningDimension[]): void {
  const style = { ...FINE, bold: true, colour: pen.theme.accent, halo: pen.theme.paper };
  for (const figure of figures) {
    const { a, b, middle } = figurePlace(pen.view, figure);
    const text = formatLength(figure.length, pen.unit);
    const width = textWidth(pen, text, style);
    const far = Math.hypot(b[0] - a[0], b[1] - a[1]);
    paintDimensionLine(pen, a, b, far > width + 16 ? width + 10 : 0);
    drawText(pen, text, middle, style, uprightAngle(Math.atan2(b[1] - a[1], b[0] - a[0])));
  }
}
