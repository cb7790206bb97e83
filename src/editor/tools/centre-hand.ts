import { pannedBy } from '../../state/viewport.ts';
import { type Hand, putBack, store } from './hand.ts';

/** Moves the sheet without a drag: the spot that is pressed comes to the middle. */
export function createCentreHand(): Hand {
  return {
    hover: () => undefined,
    down: () => undefined,
    drag: () => undefined,
    up: ({ screen: [x, y] }) => {
      const { viewport, stageSize, setViewport } = store();
      setViewport(pannedBy(viewport, stageSize.width / 2 - x, stageSize.height / 2 - y));
      if (!store().keepTool) putBack();
    },
    cancel: () => false,
  };
}
