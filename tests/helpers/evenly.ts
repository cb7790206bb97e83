import fc from 'fast-check';

/** Number of steps from least to most: finer than any test distinguishes. */
const STEPS = 2 ** 30;

/**
 * Returns an arbitrary of numbers from `min` to `max`, both included, uniformly distributed. `fc.double` chooses exponents uniformly: from 0
 * to 360, half of its numbers are below 1e-150, so that an angle or a place would almost always be at zero.
 */
export const evenly = (min: number, max: number): fc.Arbitrary<number> =>
  fc.integer({ min: 0, max: STEPS }).map((step) => min + (max - min) * (step / STEPS));
