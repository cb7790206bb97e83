import { distance } from '../../../geometry/plane/point.ts';
import { openMenuFor } from '../open-menu.ts';
import { store } from './tool-context.ts';
import type { ToolController, ToolPoint } from './tool-controller.ts';

/** A finger that slides farther than this after a long press opens no menu, px. */
const SLID_PX = 9;

/**
 * Shows why no detector may be placed at the pointer. A press opens the menu of that spot; by finger only a long press does, and the answer
 * to a tap stays.
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
