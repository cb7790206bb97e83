import { USUAL_DETECTOR } from '../../../geometry/plan/items.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { baseHeightAfterMove } from '../../../geometry/snap/base-height.ts';
import { onGrid } from '../../../geometry/snap/snap-point.ts';
import { useSketch } from '../overlay/sketch.ts';
import type { Drag } from './drag.ts';
import { currentLevel, gridFor, store } from './tool-context.ts';
import type { ToolPoint } from './tool-controller.ts';

/** A finger hides a spot of about this size: the detector is dragged this far above it, px. */
const ABOVE_FINGER_PX = 76;

/**
 * Drags a detector: checked at every move, one undo step at the end. It keeps its offset to the mouse; by touch it is shown above the
 * finger.
 */
export function dragDetector(id: string, start: ToolPoint): Drag {
  const detector = currentLevel().detectors.find((each) => each.id === id);
  const from: XY = detector?.at ?? start.plan;
  const base = detector?.base ?? USUAL_DETECTOR.base;
  const place = (point: ToolPoint) => {
    const lift = point.touch ? ABOVE_FINGER_PX / store().viewport.scale : 0;
    const offset: XY = point.touch ? [0, -lift] : [from[0] - start.plan[0], from[1] - start.plan[1]];
    const at = onGrid([point.plan[0] + offset[0], point.plan[1] + offset[1]], gridFor(point));
    return { at, base: baseHeightAfterMove(currentLevel(), from, at, base, USUAL_DETECTOR.base) };
  };
  return {
    move: (point) => {
      useSketch.setState({ cursor: 'grabbing' });
      store().setDraggedDetector({ id, ...place(point), byTouch: point.touch });
    },
    end: (point) => {
      // In this order, so that no frame shows it back where it came from.
      store().updateItem(id, place(point));
      store().setDraggedDetector(null);
    },
    cancel: () => store().setDraggedDetector(null),
  };
}
