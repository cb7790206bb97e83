import type { Side } from '../../geometry/dimension/wall-gaps.ts';
import { SQUARES } from './answers.ts';
import { sideOfSquare, squareAt } from './room-plan.ts';

/** The names of walls and squares, as seen from an entrance in the lower wall of the picture. */

export const WALL_WORDS: Readonly<Record<Side, string>> = {
  up: 'far wall',
  down: 'wall that you come in through',
  left: 'left wall',
  right: 'right wall',
};

/** Returns the name of a square: "far wall, 2 of 5 from the left", "floor, 1 of 5 from the far wall, 3 of 5 from the left". */
export function squareWords(square: string): string {
  const [x, y] = squareAt(square);
  const fromLeft = `${x + 1} of ${SQUARES} from the left`;
  const fromFar = `${y + 1} of ${SQUARES} from the far wall`;
  const side = sideOfSquare(square);
  if (!side) return `floor, ${fromFar}, ${fromLeft}`;
  return `${WALL_WORDS[side]}, ${side === 'up' || side === 'down' ? fromLeft : fromFar}`;
}
