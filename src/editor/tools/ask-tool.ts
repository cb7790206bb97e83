import { distance } from '../../../geometry/plane/point.ts';
import { openMenuFor } from '../open-menu.ts';
import { store } from './tool-context.ts';
import type { ToolController, ToolPoint } from './tool-controller.ts';

/** A finger that was held on a spot and has slid this far, px, only points. */
const SLID_PX = 9;

/**
 * Shows why no detector may be placed at the pointer. A press opens the menu of that spot; of a finger only a long press does, and what a tap
 * shows stays.
 */
export function createAskTool(): ToolController {
  let held: ToolPoint | null = null;
  const point = (at: ToolPoint) => store().setHover({ at: at.plan, id: null });
  return {
    hover: point,
    down: (at) => {
      held = null;
      point(at);
    },
    drag: point,
    hold: (at) => {
      held = at;
    },
    up: (at) => {
      if (at.touch && (!held || distance(held.screen, at.screen) > SLID_PX)) return;
      store().setHover(null);
      openMenuFor(undefined, at);
    },
    cancel: () => {
      store().setHover(null);
      return false;
    },
    leave: () => store().setHover(null),
  };
}
