import { HOUR, type Ms } from './clock.ts';

/** Half-life of radon-222: 3.8235 days, 91.764 h (nuclear data tables; the figure from memory). */
const HALF_LIFE: Ms = 3.8235 * 24 * HOUR;

/** How much of the radon in a sealed detector is left after so long, 0 to 1. */
export function fractionLeft(since: Ms): number {
  return 2 ** (-Math.max(0, since) / HALF_LIFE);
}

/** How much larger the counting error has grown since: one over the root of what is left. */
export function errorGrowth(since: Ms): number {
  return 1 / Math.sqrt(fractionLeft(since));
}
