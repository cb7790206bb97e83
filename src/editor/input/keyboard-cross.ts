import { roomAt } from '../../../geometry/check/room.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import type { Line } from '../../../geometry/plane/types.ts';
import { nearestSpot } from '../../../geometry/region/nearest.ts';
import { anchorOf } from '../../../geometry/snap/pick.ts';
import { stepToLine } from '../../../geometry/snap/step-to-line.ts';
import { selectLevel, selectModel, selectRegion } from '../../state/selectors.ts';
import { toPlan } from '../../state/viewport.ts';
import { openMenuByKey } from '../open-menu.ts';
import { putCross, useSketch } from '../overlay/sketch.ts';
import { isInView, keepInView } from '../stage/keep-in-view.ts';
import { activeTool } from '../tools/active-tool.ts';
import { hitAt } from '../tools/pick-at.ts';
import { pressAt, steps, store, targets } from '../tools/tool-context.ts';
import { stepFor } from './sheet-keys.ts';

/** The cross that the arrow keys move over the sheet, in place of a pointer. It is shown while the sheet has the keyboard focus. */

/** Shows the cross when the sheet gets the focus: where it was, if that is in view. */
export function showCross(): void {
  const { cross, crossPlace } = useSketch.getState();
  if (cross) return;
  showAt(crossPlace && isInView(crossPlace) ? crossPlace : firstCross(), false);
}

/** Hides the cross when the sheet loses the focus. */
export const hideCross = (): void => useSketch.setState({ cross: null });

/** Moves the cross by a step, which stops on a wall in its way; the sheet pans when the cross comes to the edge. */
export function moveCross([dx, dy]: XY, event: KeyboardEvent): void {
  showCross();
  const from = useSketch.getState().cross ?? firstCross();
  const by = stepFor(event);
  const at = stepToLine(from, [dx * by, dy * by], linesInTheWay());
  keepInView(at);
  // At the end of the sheet the cross stays where it is.
  if (isInView(at)) showAt(at, event.shiftKey);
}

function showAt(at: XY, shift: boolean): void {
  putCross(at);
  if (store().tool.kind !== 'select') activeTool()?.hover(pressAt(at, shift));
}

/**
 * The lines on which a step of the cross stops: center-lines of walls for tools that put something into walls or start at them, faces for
 * tools that place something in front of walls.
 */
function linesInTheWay(): readonly Line[] {
  const { centerLines, faces } = targets();
  switch (store().tool.kind) {
    case 'detector':
    case 'fixture':
    case 'object':
    case 'move-here':
    case 'room-box':
      return faces;
    default:
      return centerLines;
  }
}

/**
 * Where the cross is shown first: at the item that the tool is for, at the nearest clear spot for a detector, else in the middle of the
 * stage.
 */
function firstCross(): XY {
  const { viewport, stageSize, tool } = store();
  if (tool.kind === 'split-wall' || tool.kind === 'grip') return anchorOf(selectLevel(store()), tool.id) ?? [0, 0];
  const middle = toPlan(viewport, [stageSize.width / 2, stageSize.height / 2]);
  const { grid } = steps();
  const spot = tool.kind === 'detector' ? (nearestSpot(selectRegion(store()), middle)?.at ?? middle) : middle;
  return [Math.round(spot[0] / grid) * grid, Math.round(spot[1] / grid) * grid];
}

/**
 * Enter at the cross: the tool presses there; with no tool it selects what is there, asks what a room without a use is used for, or lists
 * what can be done. Returns false if there is no cross. `enterWords` says it in advance.
 */
export function pressAtCross(shift: boolean): boolean {
  const { cross } = useSketch.getState();
  const tool = activeTool();
  if (!cross || !tool) return false;
  const point = pressAt(cross, shift);
  if (store().tool.kind !== 'select') {
    tool.down(point);
    tool.up(point);
    return true;
  }
  const hit = hitAt(point);
  const { selection, select, askRoom } = store();
  const room = selection.length === 0 ? roomAt(selectModel(store()), cross) : null;
  if (hit && selection.length === 0) select([hit.id]);
  else if (room?.label === null) askRoom(room.labelPoint);
  else openMenuByKey();
  return true;
}
