import { dimensionLine } from '../../drawing/labels/dimensions.ts';
import { plateLabel } from '../../drawing/labels/label.ts';
import { figureLeader } from '../../drawing/labels/measured.ts';
import { roundedPart, type Slot, slotAt } from '../../drawing/labels/slot.ts';
import type { Drawn } from '../../drawing/text.ts';
import type { AppState } from '../../state/app-state.ts';
import { LINE_PX, RADIUS_PX } from '../../theme/tokens.ts';
import { type Pen, px } from '../paint/pen.ts';
import { FINE } from '../paint/text.ts';
import { type Figure, figuresOn } from './figures.ts';
import { useLengths } from './store.ts';
import { sameSubject } from './subject.ts';

/** Returns the lengths that position the selected thing, and the figure that is highlighted or open. Screen px. */
export function drawnFigures(pen: Pen, state: AppState): readonly Drawn[] {
  const { open, highlighted } = useLengths.getState();
  const { own, all } = figuresOn(pen, state);
  const pointed = state.previewPlan || state.draggedDetector ? [] : [highlighted, open?.subject ?? null];
  return [
    {
      shapes: own.flatMap((figure) => {
        const [a, b] = [px(pen, figure.line[0]), px(pen, figure.line[1])];
        return [dimensionLine(a, b, FINE.size), ...figureLeader([a, b], tagSlot(pen, figure), 'dimension')];
      }),
      texts: [],
    },
    ...own.map((figure) => drawnTag(pen, figure, false)),
    ...pointed.flatMap((subject) => {
      const figure = all.find((each) => sameSubject(each.subject, subject));
      return figure ? [drawnTag(pen, figure, true)] : [];
    }),
  ];
}

/** A figure on a small tag with an edge, which shows that it can be pressed. */
function drawnTag(pen: Pen, figure: Figure, highlighted: boolean): Drawn {
  const { text } = figure;
  const slot = tagSlot(pen, figure);
  const style = { ...FINE, bold: true, color: highlighted ? 'onAccent' : 'dimension' } as const;
  const ink = { fill: highlighted ? 'accent' : 'card', line: LINE_PX.dimension, color: 'accent' } as const;
  return plateLabel(text, style, slot, ink, roundedPart(slot, RADIUS_PX.card));
}

function tagSlot({ view }: Pen, { middle: [x, y], angle, width }: Figure): Slot {
  return slotAt({ width: width + 10, height: 20 }, [x + view.x, y + view.y], (angle * 180) / Math.PI);
}
