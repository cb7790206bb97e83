import type { XY } from '../../geometry/plan/model.ts';
import { distance } from '../../geometry/plane/point.ts';

/** A detector's symbol as drawn, px of a screen or mm of paper. */
export interface Disc {
  readonly at: XY;
  readonly radius: number;
}

/** How symbols are drawn, in the unit of the discs. */
export interface DiscSizes {
  /** Least radius of a symbol with no other one close by, so that it is seen. */
  readonly single: number;
  /** Least radius of a symbol close to another one. */
  readonly pair: number;
  /** Least gap between the rims of two symbols. */
  readonly gap: number;
}

/** Each round moves every overlapping pair apart once; for two symbols one round is enough. */
const ROUNDS = 30;

/**
 * Returns the symbols of detectors, in their order: each at its place in its own size, but large enough to be seen. Enlarged symbols that
 * would overlap are made smaller, then moved apart along the line between them. Two symbols that are both drawn in their own size keep
 * their places, since what they show is true.
 */
export function discsApart(places: readonly Disc[], { single, pair, gap }: DiscSizes): readonly Disc[] {
  const discs = places.map((own, index): Disc => {
    const near = places.map(({ at }, other) => (other === index ? Number.POSITIVE_INFINITY : distance(own.at, at)));
    const room = (Math.min(...near) - gap) / 2;
    const least = Math.min(single, Math.max(pair, room));
    return { at: own.at, radius: Math.max(own.radius, least) };
  });
  const isTrue = discs.map(({ radius }, index) => radius === places[index]?.radius);
  for (let round = 0; round < ROUNDS; round++) {
    let moved = false;
    for (let i = 0; i < discs.length; i++) {
      for (let j = i + 1; j < discs.length; j++) {
        const [a, b] = [discs[i] as Disc, discs[j] as Disc];
        const short = a.radius + b.radius + gap - distance(a.at, b.at);
        if (short < 0.01 || (isTrue[i] && isTrue[j])) continue;
        moved = true;
        const [ux, uy] = directionFrom(a.at, b.at);
        discs[i] = { ...a, at: [a.at[0] - (ux * short) / 2, a.at[1] - (uy * short) / 2] };
        discs[j] = { ...b, at: [b.at[0] + (ux * short) / 2, b.at[1] + (uy * short) / 2] };
      }
    }
    if (!moved) break;
  }
  return discs;
}

/** Unit vector from `a` to `b`; to the right if both are at one place. */
function directionFrom(a: XY, b: XY): XY {
  const length = distance(a, b);
  return length < 1e-6 ? [1, 0] : [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
}
