import type { Viewport } from '../../state/viewport.ts';

/** The canvas is moved as it is until the viewport is this far off, px; then the picture is shifted on it and strips are painted. */
const SHIFT_PX = 56;
/** A jump by more, px, leaves too little of the picture. */
const MAX_SHIFT_PX = 400;

/** What becomes of a painted canvas under another viewport: its element moved by CSS, its pixels shifted, or all of it repainted. */
export type ViewportMove = 'place' | 'shift' | 'repaint';

export interface MoveConditions {
  /** Canvas pixels to a px. */
  readonly ratio: number;
  /** The viewport has not changed for a while. */
  readonly atRest: boolean;
  /** A whole repaint fits into a frame. */
  readonly isCheap: boolean;
  /** Something on the canvas is placed by the edges of the stage. */
  readonly isAnchored: boolean;
}

export function viewportMove(painted: Viewport, now: Viewport, conditions: MoveConditions): ViewportMove {
  const { ratio, atRest, isCheap, isAnchored } = conditions;
  if (painted.scale !== now.scale) return atRest || isCheap ? 'repaint' : 'place';
  const [dx, dy] = [now.x - painted.x, now.y - painted.y];
  const far = Math.max(Math.abs(dx), Math.abs(dy));
  if (far === 0) return 'place';
  if (far > MAX_SHIFT_PX) return 'repaint';
  if (!atRest) return far > SHIFT_PX ? 'shift' : 'place';
  const isBlurred = !Number.isInteger(dx * ratio) || !Number.isInteger(dy * ratio);
  return isBlurred || isAnchored ? 'repaint' : 'place';
}

/** Returns the CSS transform that lays a canvas painted for one viewport where another one wants it; '' where it lies right. */
export function cssPlacement(painted: Viewport, now: Viewport): string {
  const scale = now.scale / painted.scale;
  const [x, y] = [now.x - painted.x * scale, now.y - painted.y * scale];
  return x === 0 && y === 0 && scale === 1 ? '' : `translate(${x}px, ${y}px) scale(${scale})`;
}
