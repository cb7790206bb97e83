import type { Mm, XY } from '../../../geometry/plan/model.ts';
import { pannedBy } from '../../state/viewport.ts';
import { steps, store } from '../tools/tool-context.ts';

/** Direction of each arrow key, +y down the page. */
export const ARROWS: Readonly<Record<string, XY>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, -1],
  ArrowDown: [0, 1],
};

/** Returns how far an arrow key moves things, mm: farther with Ctrl, less far with Shift. */
export function stepFor(event: KeyboardEvent): Mm {
  const { key, fine, coarse } = steps();
  if (event.ctrlKey || event.metaKey) return coarse;
  return event.shiftKey ? fine : key;
}

/** An arrow key pans the sheet by this, px; by a fifth of it with Shift, by five times with Ctrl. */
const PAN_PX = 40;

/** With nothing selected and no tool chosen, arrows pan the sheet. */
export function panByArrow([dx, dy]: XY, event: KeyboardEvent): void {
  const coarse = event.ctrlKey || event.metaKey;
  const fine = event.shiftKey ? 0.2 : 1;
  const by = PAN_PX * (coarse ? 5 : fine);
  store().setViewport(pannedBy(store().viewport, -dx * by, -dy * by));
}

let isSpaceDown = false;

/** Whether Space is held: a drag then moves the sheet. */
export const spaceBar = {
  press: (): void => {
    isSpaceDown = true;
  },
  release: (): void => {
    isSpaceDown = false;
  },
  isDown: (): boolean => isSpaceDown,
};
