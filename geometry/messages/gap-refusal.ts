import type { Side } from '../dimension/wall-gaps.ts';
import type { Mm, Plan } from '../plan/model.ts';
import { TOUCHING } from '../snap/room-faces.ts';
import { formatLength } from '../units/index.ts';

/** The wall on each side of the page, as sentences call it. */
export const WALL_ON: Readonly<Record<Side, string>> = { left: 'left', right: 'right', up: 'upper', down: 'lower' };

const ACROSS: Readonly<Record<Side, Side>> = { left: 'right', right: 'left', up: 'down', down: 'up' };

/**
 * Returns why a thing cannot be set so far from the wall on one side; "" if it can, also where no wall is opposite. A
 * thing is not typed through a wall, or into it: into another room, or out of the house, it is dragged.
 *
 * @param gaps how far it is from the walls now, mm: see `wallGaps`
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
