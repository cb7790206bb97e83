import type { Side } from '../dimension/wall-gaps.ts';
import type { Mm, Plan } from '../plan/model.ts';
import { TOUCHING } from '../snap/room-faces.ts';
import { formatLength } from '../units/index.ts';

/** The wall on each side of the page, as named in sentences. */
export const WALL_ON: Readonly<Record<Side, string>> = { left: 'left', right: 'right', up: 'upper', down: 'lower' };

/** How a distance to a slanted wall is taped: along the page, not square to the wall. */
export const ALONG_PAGE: Readonly<Record<Side, string>> = {
  left: 'straight across the page',
  right: 'straight across the page',
  up: 'straight up the page',
  down: 'straight down the page',
};

const ACROSS: Readonly<Record<Side, Side>> = { left: 'right', right: 'left', up: 'down', down: 'up' };

/**
 * Returns why the distance `wanted`, mm, between a thing and the wall on one side is refused; "" if it is possible, or if there is no wall on
 * the opposite side. A typed distance cannot move a thing into or through the opposite wall; the thing is dragged there.
 *
 * @param gaps the distances of the thing from the walls now, mm: see `wallGaps`
 */
export function gapRefusal(
  gaps: Readonly<Record<Side, Mm | null>>,
  side: Side,
  wanted: Mm,
  unit: Plan['display']['length'],
): string {
  const [gap, other] = [gaps[side], gaps[ACROSS[side]]];
  if (gap === null || other === null || wanted <= gap + other + TOUCHING) return '';
  const most = formatLength(Math.max(0, gap + other), unit, 'down');
  return `There are only ${most} to the ${WALL_ON[ACROSS[side]]} wall. Write less, or drag it past that wall first.`;
}
