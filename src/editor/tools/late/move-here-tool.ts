import { uncheckedLevelEdit } from '../../../../geometry/edit/level.ts';
import { withItemsMoved } from '../../../../geometry/edit/move-items.ts';
import { USUAL_DETECTOR } from '../../../../geometry/plan/items.ts';
import type { XY } from '../../../../geometry/plan/model.ts';
import { baseHeightAfterMove } from '../../../../geometry/snap/base-height.ts';
import { anchorOf } from '../../../../geometry/snap/pick.ts';
import { onGrid } from '../../../../geometry/snap/snap-point.ts';
import { SELECT_TOOL } from '../../../state/tool.ts';
import { clearSketch, useSketch } from '../../overlay/sketch.ts';
import { commitPreview } from '../drag.ts';
import { snappedMove } from '../drag-items.ts';
import { currentLevel, gridFor, store } from '../tool-context.ts';
import type { ToolController, ToolPoint } from '../tool-controller.ts';
import { gapsOfItem } from '../wall-gaps.ts';

const NO_WAY: XY = [0, 0];

/**
 * Moves without a drag: the next press moves the first item to that point, and the others by as much. Until then they are previewed at the
 * pointer, and a single detector is checked there.
 */
export function createMoveHereTool(ids: readonly string[]): ToolController {
  const [id = ''] = ids;
  const { plan } = store();
  const start = currentLevel();
  const detector = ids.length === 1 ? start.detectors.find((each) => each.id === id) : undefined;
  const anchor = anchorOf(start, id);

  const show = (point: ToolPoint) => {
    const at = onGrid(point.plan, gridFor(point));
    if (detector) store().setDraggedDetector({ id, ...seated(at), byTouch: false });
    else if (anchor) {
      store().setPreviewPlan(moved(point));
      useSketch.setState({ gaps: gapsOfItem(currentLevel(), ids) });
    }
  };
  const seated = (at: XY) => ({
    at,
    base: baseHeightAfterMove(
      start,
      detector?.at ?? at,
      at,
      detector?.base ?? USUAL_DETECTOR.base,
      USUAL_DETECTOR.base,
    ),
  });
  const settle = snappedMove(start, ids, anchor);
  const moved = (point: ToolPoint) => {
    const by = anchor ? settle([point.plan[0] - anchor[0], point.plan[1] - anchor[1]], point) : NO_WAY;
    return uncheckedLevelEdit(plan, start.id, (level) => withItemsMoved(level, new Set(ids), by));
  };
  const put = (point: ToolPoint) => {
    const at = onGrid(point.plan, gridFor(point));
    const refusal = detector ? store().updateItem(id, seated(at)) : commitPreview(start, moved(point));
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
