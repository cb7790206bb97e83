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
 * The walls round an outline, whose line is the one that the tape took, as one step of history; the chain is done with them. Where they
 * leave no room between them it stays, and the message says so. Returns whether it is closed.
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

/** Closes the run that misses its start, with what it misses by spread over its walls: right angles stay where all are right. */
export function spreadChain(): void {
  const { corners } = useAppStore.getState().chain;
  if (!nearMiss(corners)) return;
  const square = isRectangular(corners);
  const outline = (square && spreadSquare(corners)) || spreadByLength(corners);
  const changes = [...outline.keys()].map((i) => Math.abs(legOf(outline, i) - legOf(corners, i)));
  done(outline, `Spread over the walls: ${inWords(Math.max(...changes))} at most on one of them.`);
}

/** Closes the run that misses its start as it is: its last wall goes to the start, whatever was taped. */
export function closeChainAsItIs(): void {
  const { corners } = useAppStore.getState().chain;
  if (!nearMiss(corners)) return;
  const outline = closedByLastWall(corners);
  const last = outline.length - 1;
  const by = Math.abs(legOf(outline, last) - legOf(corners, last));
  done(outline, `The last wall takes all of it: it is ${inWords(by)} off the tape.`);
}

/** Closes a run from wherever it stands straight to its start; says why not where it cannot be a room. */
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
