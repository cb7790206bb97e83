import { pannedBy } from '../../state/viewport.ts';
import type { Drag } from './drag.ts';
import { store } from './tool-context.ts';
import type { ToolPoint } from './tool-controller.ts';

/** Pans with the pointer. */
export function dragViewport(start: ToolPoint): Drag {
  const { viewport } = store();
  return {
    move: ({ screen }) =>
      store().setViewport(pannedBy(viewport, screen[0] - start.screen[0], screen[1] - start.screen[1])),
    end: () => undefined,
    cancel: () => undefined,
  };
}
