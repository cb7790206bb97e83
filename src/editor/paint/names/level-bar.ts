import type { XY } from '../../../../geometry/plan/model.ts';
import type { Extent } from '../../../../geometry/plane/body.ts';
import type { Slot } from '../../../drawing/labels/placer.ts';
import type { SizePx } from '../../../state/viewport.ts';
import { type Pen, px } from '../pen.ts';
import { drawText, READ, type TextStyle, textWidth } from '../text.ts';

/** Below the drawing, past its dimensions, px. */
const UNDER_PX = 66;
const LINE_PX = 21;

interface Row {
  readonly text: string;
  readonly style: TextStyle;
}

function rowsOf({ theme }: Pen, bar: string): readonly Row[] {
  return [
    { text: 'Not the level to test', style: { ...READ, color: theme.verdict.blocked.line, halo: theme.card } },
    { text: bar, style: { sizePx: READ.sizePx, color: theme.ink, halo: theme.card } },
  ];
}

/** The ground of what is said under the drawing, px. */
export function levelBarSlot(pen: Pen, bar: string, extent: Extent): Slot {
  const rows = rowsOf(pen, bar);
  const [x, y] = middleUnder(pen, extent);
  const width = Math.max(...rows.map(({ text, style }) => textWidth(pen, text, style)));
  return { x, y, width, height: rows.length * LINE_PX, turn: 0 };
}

/** Says under the drawing that this is not the level to test, and why; in view, however large the drawing is. */
export function paintLevelBar(pen: Pen, bar: string, extent: Extent, stage: SizePx): void {
  const rows = rowsOf(pen, bar);
  const [x, y] = middleUnder(pen, extent);
  const height = rows.length * LINE_PX;
  const top = Math.min(y, stage.height - height / 2 - 6) - height / 2;
  rows.forEach(({ text, style }, row) => {
    drawText(pen, text, [x, top + (row + 0.5) * LINE_PX], style);
  });
}

function middleUnder(pen: Pen, { minX, maxX, maxY }: Extent): XY {
  const [x, bottom] = px(pen, [(minX + maxX) / 2, maxY]);
  return [x, bottom + UNDER_PX];
}
