import type { XY } from '../../../../geometry/plan/model.ts';
import { extentBetween, itemsWithin } from '../../../../geometry/snap/pick.ts';
import { clearSketch, useSketch } from '../../overlay/sketch.ts';
import { currentLevel, returnToSelect, store } from '../tool-context.ts';
import type { ToolController, ToolPoint } from '../tool-controller.ts';

/** Two corners closer than this are one press, px. */
const ONE_PRESS_PX = 8;

/** A marquee by two presses, one at each corner, or by one drag; selects the items that are entirely in it. */
export function createFrameTool(): ToolController {
  let from: ToolPoint | null = null;
  const show = (to: XY) => {
    if (from) useSketch.setState({ marquee: [from.plan, to] });
  };
  return {
    hover: ({ plan }) => show(plan),
    down: (point) => {
      from ??= point;
      show(point.plan);
    },
    drag: ({ plan }) => show(plan),
    up: (point) => {
      const start = from;
      if (!start || Math.hypot(point.screen[0] - start.screen[0], point.screen[1] - start.screen[1]) < ONE_PRESS_PX)
        return;
      from = null;
      clearSketch();
      const found = itemsWithin(currentLevel(), extentBetween(start.plan, point.plan));
      const { selection, select } = store();
      select(point.shift ? [...new Set([...selection, ...found])] : found);
      returnToSelect();
      if (found.length === 0) store().say('Nothing lies entirely in that frame. Make it larger.');
    },
    cancel: () => {
      const busy = from !== null;
      from = null;
      clearSketch();
      return busy;
    },
  };
}
