import { withTracing } from '../../../geometry/edit/index.ts';
import { tracingScaled, tracingStraightened } from '../../../geometry/edit/tracing.ts';
import type { Mm, Tracing, XY } from '../../../geometry/plan/model.ts';
import { parseLength } from '../../../geometry/units/index.ts';
import { SELECT_TOOL } from '../../state/tool.ts';
import { clearSketch, useSketch } from '../overlay/sketch.ts';
import { currentLevel, store } from './tool-context.ts';
import type { ToolController, ToolPoint } from './tool-controller.ts';

type TracingTask = 'scale' | 'straighten' | 'shift';

/** Two points closer than this are one press, px. */
const ONE_PRESS_PX = 8;

/**
 * Scales, straightens or shifts the picture under the level by two points: two presses, or one drag from the first to the second. Pan
 * and zoom are free between them.
 */
export function createTracingPointsTool(task: TracingTask): ToolController {
  let first: XY | null = null;
  let second: XY | null = null;
  /** Whether the press under way has set the first point. */
  let begun = false;

  const show = ({ plan }: ToolPoint) => {
    if (first && !second) useSketch.setState({ gaps: [[first, plan]] });
  };
  const isOnePress = ({ plan }: ToolPoint) =>
    first !== null && Math.hypot(plan[0] - first[0], plan[1] - first[1]) * store().viewport.scale < ONE_PRESS_PX;
  const forget = () => {
    first = null;
    second = null;
    clearSketch();
  };
  const putAway = () => {
    forget();
    store().setTool(SELECT_TOOL);
  };
  const change = (a: XY, b: XY, length: Mm): string => {
    const { tracing, id } = currentLevel();
    if (!tracing) return 'The picture is gone.';
    return store().run((plan) => withTracing(plan, id, changed(task, tracing, a, b, length)));
  };
  return {
    hover: show,
    down: (point) => {
      if (second) return;
      begun = first === null;
      first ??= point.plan;
      show(point);
    },
    drag: show,
    up: (point) => {
      if (!first || second) return;
      if (isOnePress(point)) {
        store().say(begun ? SECOND[task] : 'The two points are one. Press the second one somewhere else.');
        return;
      }
      if (task === 'scale') {
        second = point.plan;
        useSketch.setState({ gaps: [[first, second]], pointer: second, typed: '' });
        store().say('Type how long that is, and press Enter.');
        return;
      }
      const trouble = change(first, point.plan, 0);
      putAway();
      store().say(trouble || DONE[task]);
    },
    // Escape takes the points back first, then puts the tool away.
    cancel: () => {
      const busy = first !== null;
      forget();
      if (busy) store().say('');
      return busy;
    },
    interrupt: () => {
      if (begun && !second) forget();
    },
    leave: clearSketch,
    typedLength: (text) => {
      const read = parseLength(text, store().plan.display.length);
      if (!read.ok) return read.message;
      if (read.mm <= 0) return 'A length of nothing gives no scale. Type what the tape read.';
      if (!first || !second) return '';
      const trouble = change(first, second, read.mm);
      if (trouble) return trouble;
      putAway();
      // A bare sheet is as large as its picture.
      if (store().wholeInView) store().fit();
      store().say(DONE.scale);
      return '';
    },
  };
}

function changed(task: TracingTask, tracing: Tracing, a: XY, b: XY, length: Mm): Tracing {
  if (task === 'scale') return tracingScaled(tracing, a, b, length);
  if (task === 'straighten') return tracingStraightened(tracing, a, b);
  return { ...tracing, at: [tracing.at[0] + b[0] - a[0], tracing.at[1] + b[1] - a[1]] };
}

const SECOND: Readonly<Record<TracingTask, string>> = {
  scale: 'Now press the other end of the length that you know.',
  straighten: 'Now press another point of the same wall.',
  shift: 'Now press where that point belongs.',
};
const DONE: Readonly<Record<TracingTask, string>> = {
  scale:
    'The picture is to scale. Hold it against another length that you know. Then straighten it, lock it, and draw.',
  straighten: 'The picture is straight. Lock it before you draw on it.',
  shift: 'The picture is shifted.',
};
