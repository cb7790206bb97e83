import { wallsAroundOutline } from '../../geometry/edit/wall-run.ts';
import type { XY } from '../../geometry/plan/model.ts';
import { distance } from '../../geometry/plane/point.ts';
import {
  closedByLastWall,
  isRectangular,
  nearMiss,
  spreadByLength,
  spreadSquare,
} from '../../geometry/snap/closing.ts';
import { formatLength, formatMeasured } from '../../geometry/units/index.ts';
import { selectModel } from './selectors.ts';
import { useAppStore } from './store.ts';
import { SELECT_TOOL } from './tool.ts';
import { NO_CHAIN, thicknessFrom } from './wall-chain.ts';

/**
 * Adds the walls around an outline, which is the line that was taped, as one step of history, and ends the chain. If the walls would leave
 * no room between them, the chain stays and a message says so. Returns whether it is closed.
 */
export function closeOutline(outline: readonly XY[]): boolean {
  const [start] = outline;
  const state = useAppStore.getState();
  if (!start) return false;
  const thickness = thicknessFrom(selectModel(state), start, state.wallSettings);
  const walls = wallsAroundOutline(outline, thickness, state.wallSettings.by);
  if (walls.length === 0) {
    state.say('These walls leave no room between them. Undo the last corner, or make the walls thinner.');
    return false;
  }
  state.setChain(NO_CHAIN);
  state.addWalls(walls, thickness);
  return true;
}

/** Closes a run that misses its start and spreads the error over its walls; if all angles are right, they stay right. */
export function spreadChain(): void {
  const { corners } = useAppStore.getState().chain;
  if (!nearMiss(corners)) return;
  const square = isRectangular(corners);
  const outline = (square && spreadSquare(corners)) || spreadByLength(corners);
  const changes = [...outline.keys()].map((i) => Math.abs(legOf(outline, i) - legOf(corners, i)));
  done(outline, `Spread over the walls: ${inWords(Math.max(...changes))} at most on one of them.`);
}

/** Closes a run that misses its start by ending its last wall at the start, whatever length was taped. */
export function closeChainAsItIs(): void {
  const { corners } = useAppStore.getState().chain;
  if (!nearMiss(corners)) return;
  const outline = closedByLastWall(corners);
  const last = outline.length - 1;
  const by = Math.abs(legOf(outline, last) - legOf(corners, last));
  done(outline, `The last wall takes all of it: it is ${inWords(by)} off the tape.`);
}

/** Closes a run with a straight wall from its last corner to its start; shows a message if it has too few walls for a room. */
export function closeChainStraight(): void {
  const { corners } = useAppStore.getState().chain;
  if (corners.length < 3) {
    useAppStore.getState().say('A room has three walls at least. Draw one more, then close it.');
    return;
  }
  const last = formatMeasured(legOf(corners, corners.length - 1), useAppStore.getState().plan.display.length);
  done(corners, `The last wall is ${last} long.`);
}

function done(outline: readonly XY[], remark: string): void {
  if (!closeOutline(outline)) return;
  const { message, setTool } = useAppStore.getState();
  setTool(SELECT_TOOL);
  useAppStore.getState().say([message, remark].filter(Boolean).join(' '));
}

/** Length of the wall from one corner to the next, round to the first. */
function legOf(corners: readonly XY[], i: number): number {
  return distance(corners[i] as XY, corners[(i + 1) % corners.length] as XY);
}

const inWords = (mm: number): string => formatLength(mm, useAppStore.getState().plan.display.length, 'up');
