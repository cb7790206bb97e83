import { roomAt } from '../../../geometry/check/room.ts';
import type { AppState, Hover } from '../../state/app-state.ts';
import { selectLevel, selectModel } from '../../state/selectors.ts';

/** Returns whether a spot is over floor, or over a thing on it: not over a wall, an opening or a detector. */
export function isOverFloor(state: AppState, hover: Hover | null): boolean {
  const { tool } = state;
  if (!hover || !(tool.kind === 'select' || tool.kind === 'ask') || !roomAt(selectModel(state), hover.at)) return false;
  return !selectLevel(state).detectors.some(({ id }) => id === hover.id);
}
