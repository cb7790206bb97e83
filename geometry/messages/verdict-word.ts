import type { Verdict } from '../check/types.ts';

/** A verdict as it stands in the middle of a sentence. */
export const VERDICT_WORD: Readonly<Record<Verdict, string>> = {
  clear: 'clear',
  tight: 'tight',
  blocked: 'blocked',
  unknown: 'unknown',
};
