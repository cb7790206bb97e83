import { USUAL_DETECTOR } from '../../../geometry/plan/items.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { baseHeightAfterMove } from '../../../geometry/snap/base-height.ts';
import { onGrid } from '../../../geometry/snap/snap-point.ts';
import { useSketch } from '../overlay/sketch.ts';
import type { Drag } from './drag.ts';
import { currentLevel, gridFor, store } from './tool-context.ts';
import type { ToolPoint } from './tool-controller.ts';

/** Greatest distance of a dragged detector above the finger, px: a finger hides a spot of about this size. */
const ABOVE_FINGER_PX = 76;
/** A finger may slip by this without moving a detector, px. */
const SLIP_PX = 9;
/** Lift of the detector as a share of the finger's way beyond the slip, up to `ABOVE_FINGER_PX`. */
const LIFT_SHARE = 0.6;

/**
 * Drags a detector: checked at every move, one undo step at the end. It keeps its offset to the pointer. By touch it rises above the
 * finger the farther it is dragged, and is back where it was when the finger is back.
 */
export function dragDetector(id: string, start: ToolPoint): Drag {
  const detector = currentLevel().detectors.find((each) => each.id === id);
  const from: XY = detector?.at ?? start.plan;
  const base = detector?.base ?? USUAL_DETECTOR.base;
  const place = (point: ToolPoint) => {
    const [dx, dy] = point.touch ? fingerMove(start, point) : moveOf(start, point);
    const at: XY = dx === 0 && dy === 0 ? from : onGrid([from[0] + dx, from[1] + dy], gridFor(point));
    return { at, base: baseHeightAfterMove(currentLevel(), from, at, base, USUAL_DETECTOR.base) };
  };
  return {
    move: (point) => {
      useSketch.setState({ cursor: 'grabbing' });
      store().setDraggedDetector({ id, ...place(point), byTouch: point.touch });
    },
    end: (point) => {
      const to = place(point);
      // In this order, so that no frame shows it at its old place.
      if (to.at !== from) store().updateItem(id, to);
      store().setDraggedDetector(null);
    },
    cancel: () => store().setDraggedDetector(null),
  };
}

/** Move of the pointer on the plan, mm. */
function moveOf(start: ToolPoint, { plan }: ToolPoint): XY {
  return [plan[0] - start.plan[0], plan[1] - start.plan[1]];
}

/** Move of a detector that a finger drags, mm: the finger's way beyond a slip, and a lift. */
function fingerMove(start: ToolPoint, point: ToolPoint): XY {
  const [dx, dy] = moveOf(start, point);
  const way = Math.hypot(point.screen[0] - start.screen[0], point.screen[1] - start.screen[1]);
  const beyond = Math.max(0, way - SLIP_PX);
  if (beyond === 0) return [0, 0];
  const lift = Math.min(ABOVE_FINGER_PX, beyond * LIFT_SHARE) / store().viewport.scale;
  return [(dx * beyond) / way, (dy * beyond) / way - lift];
}
