import { ACTION_LEVELS, type ActionLevel, reaches } from './action-levels.ts';
import { compare, type Exact } from './exact.ts';
import type { NextStepId } from './next-steps.ts';
import { inPicocuries } from './radon.ts';

/** Above it, Bq/m3, Health Canada asks for less within a year (from memory). */
const SOON = inPicocuries({ value: 600, unit: 'Bq/m3' });

/** The level of a long-term profile: the guideline of Canada, 200 Bq/m3. */
const LONG_TERM_LEVEL = ACTION_LEVELS.find(({ id }) => id === 'canada') as ActionLevel;

/** The text says that a result exceeds the level: at the level it does not. Held against the exact mean, which is no kinder than a rounded one. */
export const exceedsLongTerm = (mean: Exact): boolean => reaches(mean, LONG_TERM_LEVEL);

/** What comes after a long-term mean, pCi/L. */
export function longTermStep(mean: Exact): NextStepId {
  if (compare(mean, SOON) > 0) return 'reduce-soon-long';
  return exceedsLongTerm(mean) ? 'reduce-long' : 'below-long';
}
