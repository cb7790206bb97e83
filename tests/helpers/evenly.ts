import fc from 'fast-check';

/** So many steps from the least to the most: more than any of the tests tells apart. */
const STEPS = 2 ** 30;

/**
 * Numbers from `min` to `max`, both included, each stretch as likely as any other of its length. `fc.double` takes each exponent as often as
 * any other: from 0 to 360 half of its numbers are below 1e-150, and an angle or a place is hardly ever but at zero.
 */
export const evenly = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: STEPS }).map((step) => min + (max - min) * (step / STEPS));
