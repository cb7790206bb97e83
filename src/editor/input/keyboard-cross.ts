import type { XY } from '../../../geometry/plan/model.ts';
import { nearestSpot } from '../../../geometry/region/nearest.ts';
import { anchorOf } from '../../../geometry/snap/pick.ts';
import { selectLevel, selectRegion } from '../../state/selectors.ts';
import { toPlan } from '../../state/viewport.ts';
import { useSketch } from '../overlay/sketch.ts';
import { keepInView } from '../stage/keep-in-view.ts';
import { activeTool } from '../tools/active-tool.ts';
import { pressAt, steps, store } from '../tools/tool-context.ts';
import { stepFor } from './sheet-keys.ts';

/** The cross that the arrow keys move over the sheet, in place of a pointer. */

/** The first arrow brings the cross up; the next ones move it, and the sheet when it comes to the edge. */
export function moveCross([dx, dy]: XY, event: KeyboardEvent): void {
  const { cross } = useSketch.getState();
  const by = stepFor(event);
  const at: XY = cross ? [cross[0] + dx * by, cross[1] + dy * by] : firstCross();
  useSketch.setState({ cross: at });
  keepInView(at);
  activeTool()?.hover(pressAt(at, event.shiftKey));
}

/** Where the keyboard begins: on the nearest white for a detector, else in the middle of the stage. */
function firstCross(): XY {
  const { viewport, stageSize, tool } = store();
  if (tool.kind === 'split-wall' || tool.kind === 'grip') return anchorOf(selectLevel(store()), tool.id) ?? [0, 0];
  const middle = toPlan(viewport, [stageSize.width / 2, stageSize.height / 2]);
  const { grid } = steps();
  const spot = tool.kind === 'detector' ? (nearestSpot(selectRegion(store()), middle)?.at ?? middle) : middle;
  return [Math.round(spot[0] / grid) * grid, Math.round(spot[1] / grid) * grid];
}

/** The tool presses where the cross is. Returns false where there is none. */
export function pressAtCross(shift: boolean): boolean {
  const { cross } = useSketch.getState();
  const tool = activeTool();
  if (!cross || !tool || store().tool.kind === 'select') return false;
  const point = pressAt(cross, shift);
  tool.down(point);
  tool.up(point);
  if (store().tool.kind === 'select') useSketch.setState({ cross: null });
  return true;
}
