import { openMenuFor } from '../open-menu.ts';
import { useSketch } from '../sketch.ts';
import { type Hand, type Point, store } from './hand.ts';

/** Points at the floor and is told why no detector may sit there; a press opens what can be done at that spot. */
export function createAskHand(): Hand {
  const point = (at: Point) => store().setHover({ at: at.plan, id: null });
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
    leave: () => {
      store().setHover(null);
      useSketch.setState({ cross: null });
    },
  };
}
