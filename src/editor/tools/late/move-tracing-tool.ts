import { withTracing } from '../../../../geometry/edit/index.ts';
import type { Mm, Plan, Tracing, XY } from '../../../../geometry/plan/model.ts';
import { roundPoint } from '../../../../geometry/plane/point.ts';
import { selectLevel, selectLevelAtRest } from '../../../state/selectors.ts';
import { ARROWS, stepFor } from '../../input/sheet-keys.ts';
import { store } from '../tool-context.ts';
import type { ToolController, ToolPoint } from '../tool-controller.ts';

/** Moves the picture under the level: by a drag that may start anywhere, or by arrow keys. The tool stays. */
export function createMoveTracingTool(): ToolController {
  let start: { readonly plan: XY; readonly at: XY } | null = null;

  const follow = ({ plan }: ToolPoint) => {
    if (start)
      store().setPreviewPlan(movedTo([start.at[0] + plan[0] - start.plan[0], start.at[1] + plan[1] - start.plan[1]]));
  };
  const settle = () => {
    start = null;
    const { previewPlan, run } = store();
    if (previewPlan) run(() => previewPlan);
  };
  const byArrow = ([dx, dy]: XY, by: Mm): boolean => {
    const at = tracingInView()?.at;
    if (!at) return false;
    store().setPreviewPlan(movedTo([at[0] + dx * by, at[1] + dy * by]));
    return true;
  };
  return {
    hover: () => undefined,
    down: ({ plan }) => {
      settle();
      const at = tracingInView()?.at;
      start = at ? { plan, at } : null;
    },
    drag: follow,
    up: (point) => {
      follow(point);
      settle();
    },
    cancel: () => {
      const busy = store().previewPlan !== null;
      start = null;
      store().setPreviewPlan(null);
      return busy;
    },
    key: (event) => {
      const arrow = ARROWS[event.key];
      // An element with the focus, such as a button, keeps its arrow keys.
      const onSheet =
        event.target instanceof Element && event.target.closest('button, a, summary, [role="menu"]') === null;
      return arrow && onSheet ? byArrow(arrow, stepFor(event)) : false;
    },
    // A held arrow key is one step of history.
    keyUp: settle,
    leave: settle,
  };
}

/** The tracing image as it is shown, with the move under way. */
function tracingInView(): Tracing | undefined {
  return selectLevel(store()).tracing;
}

/** The plan with the middle of the picture at a point; null if it is there already, or if the edit is refused. */
function movedTo(at: XY): Plan | null {
  const { plan } = store();
  const { id, tracing } = selectLevelAtRest(store());
  const place = roundPoint(at);
  if (!tracing || (place[0] === tracing.at[0] && place[1] === tracing.at[1])) return null;
  const edited = withTracing(plan, id, { ...tracing, at: place });
  return edited.ok ? edited.plan : null;
}
