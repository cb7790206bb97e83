import type { XY } from '../../geometry/plan/model.ts';
import { distance } from '../../geometry/plane/point.ts';

/** The symbol of a detector as it is drawn, px of a screen or mm of paper. */
export interface Disc {
  readonly at: XY;
  readonly radius: number;
}

/** How symbols are drawn, in the unit of the discs. */
export interface DiscSizes {
  /** No symbol is smaller than this, so that it is found. */
  readonly single: number;
  /** Nor than this beside another one. */
  readonly pair: number;
  /** Between the radii of two symbols. */
  readonly gap: number;
}

/** Each round sets every two symbols apart once; with two of them one round does. */
const ROUNDS = 30;

/**
 * Returns where detectors are drawn and how large: each at its place in its own size, but no smaller than can be seen; where two such
 * symbols would lie on one another they are smaller, then set apart along the line between them. Symbols that are drawn in their
 * own size stay: what they show is true.
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

/** A unit vector; to the right for two at one place. */
function directionFrom(a: XY, b: XY): XY {
  const length = distance(a, b);
  return length < 1e-6 ? [1, 0] : [(b[0] - a[0]) / length, (b[1] - a[1]) / length];
}
