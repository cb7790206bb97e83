import { pannedBy } from '../../../state/viewport.ts';
import { returnToSelect, store } from '../tool-context.ts';
import type { ToolController } from '../tool-controller.ts';

/** Pans without a drag: brings the pressed point to the middle of the stage. */
export function createCenterTool(): ToolController {
  return {
    hover: () => undefined,
    down: () => undefined,
    drag: () => undefined,
    up: ({ screen: [x, y] }) => {
      const { viewport, stageSize, setViewport } = store();
      setViewport(pannedBy(viewport, stageSize.width / 2 - x, stageSize.height / 2 - y));
      if (!store().keepTool) returnToSelect();
    },
    cancel: () => false,
  };
}
