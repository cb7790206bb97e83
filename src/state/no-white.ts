import type { AppState } from './app-state.ts';
import { knownRegion } from './selectors.ts';

/** Whether no detector may be placed anywhere on the level in view, at the shaded height; false until it is worked out. */
export const hasNoWhite = (state: AppState): boolean =>
  knownRegion(state)?.rooms.every(({ area }) => area === 0) ?? false;
