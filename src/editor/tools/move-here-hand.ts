import { withItemsMoved } from '../../../geometry/edit/move-items.ts';
import { USUAL_DETECTOR } from '../../../geometry/plan/items.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { anchorOf } from '../../../geometry/snap/pick.ts';
import { movedSeatHeight } from '../../../geometry/snap/sit-on.ts';
import { onGrid } from '../../../geometry/snap/snap.ts';
import { withLevel } from '../../state/plan-edits.ts';
import { SELECT_TOOL } from '../../state/tool.ts';
import { clearSketch, useSketch } from '../sketch.ts';
import { commitDraft } from './drag.ts';
import { currentLevel, gridFor, type Hand, type Point, store } from './hand.ts';
import { heldMove } from './move-items.ts';
import { tapedThing } from './taped.ts';

const NO_WAY: XY = [0, 0];

/** Moves without a drag: the next press is where the first of the things goes, with the others. Until then they show, and a detector alone is judged, at the pointer. */
export function createMoveHereHand(ids: readonly string[]): Hand {
  const [id = ''] = ids;
  const { plan } = store();
  const start = currentLevel();
  const detector = ids.length === 1 ? start.detectors.find((each) => each.id === id) : undefined;
  const anchor = anchorOf(start, id);

  const show = (point: Point) => {
    const at = onGrid(point.plan, gridFor(point));
    if (detector) store().setLive({ id, ...seated(at), byTouch: false });
    else if (anchor) {
      store().setDraft(moved(point));
      useSketch.setState({ gaps: tapedThing(currentLevel(), ids) });
    }
  };
  const seated = (at: XY) => ({
    at,
    base: movedSeatHeight(start, detector?.at ?? at, at, detector?.base ?? USUAL_DETECTOR.base, USUAL_DETECTOR.base),
  });
  const settle = heldMove(start, ids, anchor);
  const moved = (point: Point) => {
    const by = anchor ? settle([point.plan[0] - anchor[0], point.plan[1] - anchor[1]], point) : NO_WAY;
    return withLevel(plan, start.id, (level) => withItemsMoved(level, new Set(ids), by));
  };
  const put = (point: Point) => {
    const at = onGrid(point.plan, gridFor(point));
    const refusal = detector ? store().updateItem(id, seated(at)) : commitDraft(start, moved(point));
    store().setTool(SELECT_TOOL);
    store().say(refusal);
    store().select(ids);
    clearSketch();
  };
  return {
    hover: show,
    down: show,
    drag: show,
    up: put,
    cancel: () => {
      store().setTool(SELECT_TOOL);
      clearSketch();
      return true;
    },
  };
}
