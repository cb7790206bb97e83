import { clearSketch } from '../sketch.ts';
import type { Drag } from './drag.ts';
import { type Hand, type Point, putBack, store } from './hand.ts';
import { pullHandle } from './pull-handle.ts';
import { handleAt } from './select-hand.ts';

/** Reshapes without a drag: the first press takes the grip that is near, the second one sets it. */
export function createGripHand(id: string): Hand {
  let pull: Drag | null = null;
  store().select([id]);
  const set = (point: Point) => {
    pull?.move(point);
    pull?.end(point);
    pull = null;
    clearSketch();
    putBack();
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
      if (handle) pull = pullHandle(handle);
      store().say(handle ? 'Press where it goes.' : 'Press on one of the grips first: the small squares and discs.');
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
