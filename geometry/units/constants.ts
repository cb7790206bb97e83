import type { Mm } from '../plane/types.ts';

/** How lengths are displayed; stored lengths are always mm. */
export type LengthUnit = 'feet-inches' | 'metric';

/**
 * The international inch, exactly 25.4 mm, and the foot of 12 inches: yard and pound agreement of 1959 (24 FR 5348;
 * from memory).
 */
export const INCH: Mm = 25.4;
export const FOOT: Mm = 304.8;
/** In square mm, exact. */
export const SQUARE_FOOT = 92903.04;
