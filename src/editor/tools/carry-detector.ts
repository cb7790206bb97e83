import { USUAL_DETECTOR } from '../../../geometry/plan/items.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { movedSeatHeight } from '../../../geometry/snap/sit-on.ts';
import { onGrid } from '../../../geometry/snap/snap.ts';
import { useSketch } from '../sketch.ts';
import type { Drag } from './drag.ts';
import { currentLevel, gridFor, type Point, store } from './hand.ts';

/** A finger hides a spot of about this size: the detector is carried this far above it, px. */
const ABOVE_FINGER_PX = 76;

/**
 * Carries a detector: judged at every move, set down at the end as one step. It keeps its place under the mouse; under a finger
 * it stands above it.
 */
export function carryDetector(id: string, start: Point): Drag {
  const detector = currentLevel().detectors.find((each) => each.id === id);
  const from: XY = detector?.at ?? start.plan;
  const base = detector?.base ?? USUAL_DETECTOR.base;
  const place = (point: Point) => {
    const lift = point.touch ? ABOVE_FINGER_PX / store().viewport.scale : 0;
    const offset: XY = point.touch ? [0, -lift] : [from[0] - start.plan[0], from[1] - start.plan[1]];
    const at = onGrid([point.plan[0] + offset[0], point.plan[1] + offset[1]], gridFor(point));
    return { at, base: movedSeatHeight(currentLevel(), from, at, base, USUAL_DETECTOR.base) };
  };
  return {
    move: (point) => {
      useSketch.setState({ cursor: 'grabbing' });
      store().setLive({ id, ...place(point), byTouch: point.touch });
    },
    end: (point) => {
      // In this order, so that it is never seen back where it came from.
      store().updateItem(id, place(point));
      store().setLive(null);
    },
    cancel: () => store().setLive(null),
  };
}
