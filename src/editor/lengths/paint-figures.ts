import type { XY } from '../../../geometry/plan/model.ts';
import type { AppState } from '../../state/app-state.ts';
import { LINE_PX, RADIUS_PX } from '../../theme/tokens.ts';
import { paintDimensionLine } from '../paint/canvas.ts';
import { type Pen, px, stroke, within } from '../paint/pen.ts';
import { drawText, FINE } from '../paint/text.ts';
import { type Figure, figuresOn } from './figures.ts';
import { useLengths } from './store.ts';
import { sameSubject } from './subject.ts';

/** What the selected thing is taped by, and the figure that the pointer or the keyboard is at. */
export function paintFigures(pen: Pen, state: AppState): void {
  const { open, highlighted } = useLengths.getState();
  const { own, all } = figuresOn(pen, state);
  for (const { line } of own) paintDimensionLine(pen, px(pen, line[0]), px(pen, line[1]));
  for (const figure of own) paintTag(pen, figure, false);
  if (state.previewPlan || state.draggedDetector) return;
  for (const subject of [highlighted, open?.subject ?? null]) {
    const figure = all.find((each) => sameSubject(each.subject, subject));
    if (figure) paintTag(pen, figure, true);
  }
}

/** The figure on a small tag with an edge: it is there to be pressed. */
function paintTag(pen: Pen, { middle, angle, text, width }: Figure, highlighted: boolean): void {
  const { ctx, theme, view } = pen;
  const at: XY = [middle[0] + view.x, middle[1] + view.y];
  within(pen, () => {
    ctx.translate(...at);
    ctx.rotate(angle);
    ctx.beginPath();
    ctx.roundRect(-width / 2 - 5, -10, width + 10, 20, RADIUS_PX.card);
    ctx.fillStyle = highlighted ? theme.accent : theme.card;
    ctx.fill();
    stroke(pen, theme.accent, LINE_PX.dimension);
  });
  drawText(pen, text, at, { ...FINE, bold: true, color: highlighted ? theme.onAccent : theme.dimension }, angle);
}
