import type { XY } from '../../../../geometry/plan/model.ts';
import type { Extent } from '../../../../geometry/plane/body.ts';
import { type Block, blockOf, blockSlot, blockTexts } from '../../../drawing/labels/block.ts';
import type { Slot } from '../../../drawing/labels/placer.ts';
import type { Drawn } from '../../../drawing/text.ts';
import type { SizePx } from '../../../state/viewport.ts';
import { type Pen, px } from '../pen.ts';
import { READ } from '../text.ts';

/** Below the drawing, past its dimensions, px. */
const UNDER_PX = 66;

function blockFor({ measure }: Pen, bar: string): Block {
  return blockOf(
    [
      { text: 'Not the level to test', style: { ...READ, color: 'blocked', halo: 'card' } },
      { text: bar, style: { size: READ.size, color: 'ink', halo: 'card' } },
    ],
    measure,
  );
}

/** The ground of what is said under the drawing, px. */
export function levelBarSlot(pen: Pen, bar: string, extent: Extent): Slot {
  return blockSlot(blockFor(pen, bar), middleUnder(pen, extent));
}

/** Says under the drawing that this is not the level to test, and why; in view, however large the drawing is. */
export function levelBar(pen: Pen, bar: string, extent: Extent, stage: SizePx): Drawn {
  const block = blockFor(pen, bar);
  const [x, y] = middleUnder(pen, extent);
  return { shapes: [], texts: blockTexts(block, [x, Math.min(y, stage.height - block.height / 2 - 6)]) };
}

function middleUnder(pen: Pen, { minX, maxX, maxY }: Extent): XY {
  const [x, bottom] = px(pen, [(minX + maxX) / 2, maxY]);
  return [x, bottom + UNDER_PX];
}
