import { withTracing } from '../../../geometry/plan/edit.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/point.ts';
import { scaledTo, straightened } from '../../../geometry/tracing.ts';
import { parseLength } from '../../../geometry/units.ts';
import { SELECT_TOOL } from '../../state/tool.ts';
import { clearSketch, useSketch } from '../sketch.ts';
import { currentLevel, type Hand, type Point, store } from './hand.ts';

type TracingTask = 'scale' | 'straighten' | 'shift';

/** Two presses that bring the picture under the level to scale, straight, or to its place. */
export function createTracingHand(task: TracingTask): Hand {
  let first: XY | null = null;
  let second: XY | null = null;

  const show = ({ plan }: Point) => {
    if (first && !second) useSketch.setState({ guides: [[first, plan]] });
  };
  const done = () => {
    clearSketch();
    store().setTool(SELECT_TOOL);
  };
  const change = (a: XY, b: XY, length = 0): string => {
    const { tracing } = currentLevel();
    if (!tracing) return 'The picture is gone.';
    const next = {
      scale: () => scaledTo(tracing, a, b, length),
      straighten: () => straightened(tracing, a, b),
      shift: () => ({ ...tracing, at: [tracing.at[0] + b[0] - a[0], tracing.at[1] + b[1] - a[1]] as const }),
    }[task]();
    return store().run((plan) => withTracing(plan, currentLevel().id, next));
  };
  return {
    hover: show,
    down: show,
    drag: show,
    up: ({ plan }) => {
      if (!first) {
        first = plan;
        useSketch.setState({ guides: [[plan, plan]] });
        store().say(SECOND[task]);
        return;
      }
      if (distance(first, plan) === 0) {
        store().say('The two points are one. Press the second one somewhere else.');
        return;
      }
      second = plan;
      if (task === 'scale') {
        useSketch.setState({ guides: [[first, plan]], pointer: plan, typed: '' });
        store().say('Type how long that is, and press Enter.');
        return;
      }
      const trouble = change(first, plan);
      done();
      if (trouble) store().say(trouble);
    },
    cancel: () => {
      done();
      return true;
    },
    leave: clearSketch,
    typedLength: (text) => {
      const read = parseLength(text, store().plan.display.length);
      if (!read.ok) return read.message;
      if (read.mm <= 0) return 'A length of nothing gives no scale. Type what the tape read.';
      if (!first || !second) return '';
      const trouble = change(first, second, read.mm);
      if (trouble) return trouble;
      done();
      // A bare sheet is as large as its picture.
      if (store().wholeInView) store().fit();
      store().say(`${SCALED} Straighten it next, or lock it and draw.`);
      return '';
    },
  };
}

const SCALED = 'The picture is to scale now. Check it with another length that you know.';
const SECOND: Readonly<Record<TracingTask, string>> = {
  scale: 'Now press the other end of the length that you know.',
  straighten: 'Now press another point of the same wall.',
  shift: 'Now press where that point belongs.',
};
