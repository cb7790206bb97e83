import { pannedBy } from '../../state/viewport.ts';
import type { Drag } from './drag.ts';
import { type Point, store } from './hand.ts';

/** The sheet follows the pointer. */
export function panSheet(start: Point): Drag {
  const { viewport } = store();
  return {
    move: ({ screen }) =>
      store().setViewport(pannedBy(viewport, screen[0] - start.screen[0], screen[1] - start.screen[1])),
    end: () => undefined,
    cancel: () => undefined,
  };
}
