import { clearSketch } from '../../overlay/sketch.ts';
import { type Drag, NO_DRAG } from '../drag.ts';
import { dragHandle } from '../drag-handle.ts';
import { handleAt } from '../pick-at.ts';
import { returnToSelect, store } from '../tool-context.ts';
import type { ToolController, ToolPoint } from '../tool-controller.ts';

/** Reshapes without a drag: the first press takes the nearest handle within reach, the second one places it. */
export function createGripTool(id: string): ToolController {
  let pull: Drag | null = null;
  store().select([id]);
  const set = (point: ToolPoint) => {
    pull?.move(point);
    pull?.end(point);
    pull = null;
    clearSketch();
    returnToSelect();
  };
  return {
    hover: (point) => pull?.move(point),
    down: () => undefined,
    drag: (point) => pull?.move(point),
    up: (point) => {
      if (pull) {
        set(point);
        return;
      }
      const handle = handleAt(point, 2);
      const drag = handle && dragHandle(handle);
      if (drag === NO_DRAG) return;
      pull = drag;
      store().say(handle ? 'Press where it goes.' : 'Press one of the grips first: the small squares and circles.');
    },
    cancel: () => {
      const busy = pull !== null;
      pull?.cancel();
      pull = null;
      clearSketch();
      return busy;
    },
    leave: () => pull?.cancel(),
  };
}
