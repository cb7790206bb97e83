import type { SetReport } from './types.ts';

/** Whether nothing about the location is open: it holds, and its results can be used. */
export function isSettled({ agreement, state, mean }: SetReport): boolean {
  return state.test === 'holds' && mean !== null && agreement !== 'straddles-by-two' && agreement !== 'out-of-control';
}
