import type { AppState } from './app-state.ts';
import { selectRegion } from './selectors.ts';

/** Whether no detector may be placed anywhere on the level in view, at the shaded height. */
export const isNothingAllowed = (state: AppState): boolean => selectRegion(state).rooms.every(({ area }) => area === 0);
