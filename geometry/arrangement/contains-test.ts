import { isLeftOf, ringsContain } from '../plane/ring.ts';
import type { Mm, Ring, XY } from '../plane/types.ts';

/** Rings with more corners are indexed by horizontal bands, which is faster than a linear scan per point. */
const MANY_CORNERS = 200;
const BANDS = 64;

/**
 * Returns `ringsContain` as a function for rings that are tested often: for very many corners only the edges in the
 * band of the point are examined.
 */
export function containsTest(rings: readonly Ring[]): (x: Mm, y: Mm) => boolean {
  const count = rings.reduce((sum, ring) => sum + ring.length, 0);
  if (count <= MANY_CORNERS) return (x, y) => ringsContain(rings, [x, y]);
  const ys = rings.flatMap((ring) => ring.map(([, y]) => y));
  const top = ys.reduce((least, y) => Math.min(least, y));
  const bottom = ys.reduce((most, y) => Math.max(most, y));
  const bandOf = (y: Mm) => Math.min(BANDS - 1, Math.max(0, Math.floor(((y - top) / (bottom - top)) * BANDS)));
  const bands: [XY, XY][][] = Array.from({ length: BANDS }, () => []);
  for (const ring of rings) {
    ring.forEach((b, i) => {
      const a = ring[(i + ring.length - 1) % ring.length] as XY;
      const edge: [XY, XY] = [a, b];
      for (let k = bandOf(Math.min(a[1], b[1])); k <= bandOf(Math.max(a[1], b[1])); k++) bands[k]?.push(edge);
    });
  }
  return (x, y) => {
    let inside = false;
    for (const [a, b] of bands[bandOf(y)] ?? []) if (isLeftOf(a, b, x, y)) inside = !inside;
    return inside;
  };
}
