import { withTracing } from '../../../../geometry/edit/index.ts';
import { tracingScaled, tracingStraightened } from '../../../../geometry/edit/tracing.ts';
import type { Mm, Tracing, XY } from '../../../../geometry/plan/model.ts';
import { distance } from '../../../../geometry/plane/point.ts';
import { parseLength } from '../../../../geometry/units/index.ts';
import type { HintAction } from '../../../advice/guidance/hint.ts';
import { SELECT_TOOL } from '../../../state/tool.ts';
import { clearSketch, useSketch } from '../../overlay/sketch.ts';
import { currentLevel, store } from '../tool-context.ts';
import type { ToolController, ToolPoint } from '../tool-controller.ts';

type TracingTask = 'scale' | 'straighten' | 'shift';

/** Two points closer than this are one press, px. */
const ONE_PRESS_PX = 8;

/** The two points that were pressed on the picture so far. */
interface Points {
  readonly first: XY | null;
  readonly second: XY | null;
}
const NO_POINTS: Points = { first: null, second: null };

/**
 * Scales, straightens or shifts the picture under the level by two points: two presses, or one drag from the first to the second. Pan
 * and zoom are free between them.
 */
export function createTracingPointsTool(task: TracingTask): ToolController {
  let points = NO_POINTS;
  /** Whether the press under way has set the first point. */
  let begun = false;

  const show = (point: ToolPoint) => showLine(points, point);
  const clear = () => {
    points = NO_POINTS;
    clearSketch();
  };
  const finish = (trouble: string) => {
    clear();
    store().setTool(SELECT_TOOL);
    // A level without walls has the extent of its picture, which has changed.
    if (task === 'scale' && store().wholeInView) store().fit();
    if (trouble) store().say(trouble);
    else store().say(DONE[task], nextStep(task));
  };
  return {
    hover: show,
    down: (point) => {
      if (points.second) return;
      begun = points.first === null;
      points = { first: points.first ?? point.plan, second: null };
      show(point);
    },
    drag: show,
    up: (point) => {
      const { first, second } = points;
      if (!first || second) return;
      if (isOnePress(first, point)) {
        store().say(begun ? SECOND[task] : 'The two points are the same. Press the second one somewhere else.');
      } else if (task === 'scale') {
        points = { first, second: point.plan };
        askLength(first, point.plan);
      } else {
        finish(change(task, first, point.plan, 0));
      }
    },
    // Escape removes the points first; a second Escape ends the tool.
    cancel: () => {
      const busy = points.first !== null;
      clear();
      if (busy) store().say('');
      return busy;
    },
    interrupt: () => {
      if (begun && !points.second) clear();
    },
    leave: clearSketch,
    typedLength: (text) => {
      const { first, second } = points;
      const read = parseLength(text, store().plan.display.length);
      if (!read.ok) return read.message;
      if (read.mm <= 0) return 'A length of 0 gives no scale. Type what the tape read.';
      const trouble = first && second ? change(task, first, second, read.mm) : '';
      if (first && second && !trouble) finish('');
      return trouble;
    },
  };
}

/** Shows the line from the first point to the pointer. */
function showLine({ first, second }: Points, { plan }: ToolPoint): void {
  if (first && !second) useSketch.setState({ gaps: [[first, plan]] });
}

function isOnePress(first: XY, { plan }: ToolPoint): boolean {
  return distance(first, plan) * store().viewport.scale < ONE_PRESS_PX;
}

function askLength(first: XY, second: XY): void {
  useSketch.setState({ gaps: [[first, second]], pointer: second, typed: '' });
  store().say('Type how long that is, and press Enter.');
}

/** Changes the picture as one step of history. Returns the reason of a refusal, in words; empty on success. */
function change(task: TracingTask, a: XY, b: XY, length: Mm): string {
  const { tracing, id } = currentLevel();
  if (!tracing) return 'The picture is gone.';
  return store().run((plan) => withTracing(plan, id, changed(task, tracing, a, b, length)));
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
    'The picture is to scale. Compare it with another length that you know. Then straighten it, lock it, and draw.',
  straighten: 'The picture is straight. Lock it before you draw on it.',
  shift: 'The picture is shifted.',
};

/** The next step as a button beside the message, because the panel with its own button may be folded. */
function nextStep(task: TracingTask): HintAction | undefined {
  const levelId = currentLevel().id;
  if (task === 'scale') return { kind: 'tracing', label: 'Straighten it', levelId, next: 'straighten' };
  return task === 'straighten' ? { kind: 'tracing', label: 'Lock it', levelId, next: 'lock' } : undefined;
}
