import { nearMiss } from '../../../geometry/snap/closing.ts';
import { closeChainAsItIs, closeChainStraight, spreadChain } from '../../state/close-wall-chain.ts';
import { clearSketch, useSketch } from '../overlay/sketch.ts';
import { CURSOR_REACH_PX, keepsTool, store } from './tool-context.ts';
import type { ToolController, ToolPoint } from './tool-controller.ts';
import { cornerAt, corners } from './wall-corner.ts';
import { createWallDirection, type WallDirection } from './wall-direction.ts';
import { addCorner, endWalls, setTypedLength, showNextWall, type WallGesture } from './wall-gesture.ts';

/**
 * Wall after wall. While the outline is open it is drawn as a line; closed onto its start, the line becomes the inside face,
 * since that is what a tape reads, and the walls stand outside it. Walls that end open stand on the line.
 */
export function createWallTool(): ToolController {
  const gesture: WallGesture = { direction: createWallDirection(), pointer: null };
  const follow = (point: ToolPoint) => {
    gesture.pointer = point;
    showNextWall(gesture, cornerAt(point));
  };
  return {
    hover: (point) => {
      if (!useSketch.getState().cross) gesture.direction.reset();
      follow(point);
    },
    down: (point) => {
      gesture.pointer = point;
    },
    drag: follow,
    up: (point) => addCorner(gesture, cornerAt(point).at, keepsTool(point)),
    cancel,
    // A second finger zooms: what is drawn so far waits.
    interrupt: () => showNextWall(gesture, null),
    leave: () => {
      // The page may only be drawing itself anew.
      if (store().tool.kind !== 'wall') endWalls();
    },
    key: (event) => takeKey(event, gesture.direction),
    typing: () => showNextWall(gesture, gesture.pointer && cornerAt(gesture.pointer)),
    typedLength: (text) => setTypedLength(gesture, text),
  };
}

/** Closes the length box, else ends the chain. */
function cancel(): boolean {
  const isDrawing = corners().length > 0;
  if (useSketch.getState().typed !== null) useSketch.setState({ typed: null, turn: null });
  else if (isDrawing) endWalls();
  else clearSketch();
  return isDrawing;
}

/** Opens the turn of the next wall. */
export const TURN_KEY = '<';

function takeKey(event: KeyboardEvent, direction: WallDirection): boolean {
  const corner = corners().at(-1);
  if (event.altKey || !corner) return false;
  // The arrow also moves the cross, which it leads from here; with Ctrl it goes farther.
  if (direction.arrow(event, corner, CURSOR_REACH_PX / store().viewport.scale)) return false;
  if (event.ctrlKey || event.metaKey) return false;
  if (event.key === 'Backspace') {
    store().undo();
    return true;
  }
  if (/^[0-9.]$/.test(event.key)) {
    // More digits may come before the box is there.
    useSketch.setState(({ typed }) => ({ typed: `${typed ?? ''}${event.key}`, turn: null }));
    return true;
  }
  if (event.key === TURN_KEY) {
    useSketch.setState({ typed: '', turn: '' });
    return true;
  }
  if (closingKey(event.key)) {
    clearSketch();
    return true;
  }
  if (event.key === 'Enter' && useSketch.getState().cross === null) {
    endWalls();
    return true;
  }
  return false;
}

/** C closes the run: as it is where it just misses its start, else straight from where it stands. S spreads what it misses by. */
function closingKey(key: string): boolean {
  const missed = nearMiss(corners()) !== null;
  if (key.toLowerCase() === 's' && missed) spreadChain();
  else if (key.toLowerCase() === 'c' && missed) closeChainAsItIs();
  else if (key.toLowerCase() === 'c') closeChainStraight();
  else return false;
  return true;
}
