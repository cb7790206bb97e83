import type { Mm } from './types.ts';

/** A distance that is short of its limit by no more than this meets it, mm. */
export const LIMIT_TOLERANCE: Mm = 0.1;

/** Ends of walls no farther apart than this are one corner, mm: slightly above the rounding to 1/64 in. */
export const JOINED: Mm = 0.5;
