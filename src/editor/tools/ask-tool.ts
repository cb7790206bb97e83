import { openMenuFor } from '../open-menu.ts';
import { store } from './tool-context.ts';
import type { ToolController, ToolPoint } from './tool-controller.ts';

/** Shows why no detector may sit at the pointer; a press opens the menu of that spot. */
export function createAskTool(): ToolController {
  const point = (at: ToolPoint) => store().setHover({ at: at.plan, id: null });
  return {
    hover: point,
    down: point,
    drag: point,
    up: (at) => {
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
