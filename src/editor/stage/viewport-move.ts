import type { Viewport } from '../../state/viewport.ts';

/** The canvas is moved by CSS until the viewport is farther off than this, px; then its pixels are shifted and strips are painted. */
const SHIFT_PX = 56;
/** Largest move after which pixels are shifted, px; after a larger one too little of the canvas could be kept. */
const MAX_SHIFT_PX = 400;

/** How a painted canvas is adapted to another viewport: its element moved by CSS, its pixels shifted, or all of it repainted. */
export type ViewportMove = 'place' | 'shift' | 'repaint';

export interface MoveConditions {
  /** Canvas pixels per px. */
  readonly ratio: number;
  /** Whether the viewport has not changed for a while. */
  readonly atRest: boolean;
  /** Whether a whole repaint fits into a frame. */
  readonly isCheap: boolean;
  /** Whether the place of something on the canvas depends on the edges of the stage. */
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

/** Returns the CSS transform that moves and scales a canvas painted for one viewport to another one; '' if they are the same. */
export function cssPlacement(painted: Viewport, now: Viewport): string {
  const scale = now.scale / painted.scale;
  const [x, y] = [now.x - painted.x * scale, now.y - painted.y * scale];
  return x === 0 && y === 0 && scale === 1 ? '' : `translate(${x}px, ${y}px) scale(${scale})`;
}
