import type { Mm, XY } from '../plan/model.ts';
import { dot } from './plane.ts';

/** A convex ring as the intersection of half-planes: a corner of each side and its inward normal. */
export type Convex = readonly { readonly corner: XY; readonly normal: XY }[];

/** Returns the half-planes of a convex ring of either orientation. */
export function convexOf(ring: readonly XY[]): Convex {
  const turn = Math.sign(area(ring));
  return ring.map((corner, i) => {
    const next = ring[(i + 1) % ring.length] as XY;
    return { corner, normal: [(corner[1] - next[1]) * turn, (next[0] - corner[0]) * turn] };
  });
}

/** Returns where a line enters and leaves a convex ring, as multiples of `way` from its start; null if it misses the ring. */
export function crossing(ring: Convex, [x, y]: XY, way: XY): readonly [Mm, Mm] | null {
  let [from, to] = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (const { corner, normal } of ring) {
    const at = (x - corner[0]) * normal[0] + (y - corner[1]) * normal[1];
    const run = dot(way, normal);
    if (Math.abs(run) < 1e-12) {
      if (at <= 0) return null;
    } else if (run > 0) from = Math.max(from, -at / run);
    else to = Math.min(to, -at / run);
    if (from >= to) return null;
  }
  return [from, to];
}

function area(ring: readonly XY[]): number {
  return ring.reduce((sum, [x, y], i) => {
    const [p, q] = ring[(i + 1) % ring.length] as XY;
    return sum + x * q - y * p;
  }, 0);
}
