import { nearMiss } from '../../../geometry/snap/closing.ts';
import { closeChainAsItIs, closeChainStraight, spreadChain } from '../../state/close-wall-chain.ts';
import { clearSketch, useSketch } from '../overlay/sketch.ts';
import { CURSOR_REACH_PX, keepsTool, store } from './tool-context.ts';
import type { ToolController, ToolPoint } from './tool-controller.ts';
import { cornerAt, corners } from './wall-corner.ts';
import { createWallDirection, type WallDirection } from './wall-direction.ts';
import {
  addCorner,
  cornerAtPointer,
  endWalls,
  setTypedLength,
  showNextWall,
  type WallGesture,
} from './wall-gesture.ts';

/**
 * Draws wall after wall. A chain of walls is shown as a line until it is closed or ended. The walls are then placed so that the line is
 * what was taped: their inside faces, their outside faces or their center-lines.
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
    // A second finger zooms: the chain stays as it is.
    interrupt: () => showNextWall(gesture, null),
    leave: () => {
      // The component may only be rendered again with the same tool.
      if (store().tool.kind !== 'wall') endWalls();
    },
    key: (event) => takeKey(event, gesture.direction),
    typing: () => showNextWall(gesture, cornerAtPointer(gesture)),
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
  // Not consumed: the arrow key also moves the cross, farther with Ctrl.
  if (direction.arrow(event, corner, CURSOR_REACH_PX / store().viewport.scale)) return false;
  if (event.ctrlKey || event.metaKey) return false;
  if (event.key === 'Backspace') {
    store().undo();
    return true;
  }
  if (/^[0-9.]$/.test(event.key)) {
    // More digits may be typed before the box is shown.
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

/**
 * C closes the run: by its last wall if it narrowly misses its start, else by a straight wall from its last corner. S closes it and spreads
 * the error.
 */
function closingKey(key: string): boolean {
  const missed = nearMiss(corners()) !== null;
  if (key.toLowerCase() === 's' && missed) spreadChain();
  else if (key.toLowerCase() === 'c' && missed) closeChainAsItIs();
  else if (key.toLowerCase() === 'c') closeChainStraight();
  else return false;
  return true;
}
