import type { Mm } from '../../plan/model.ts';
import { type Extent, overlaps } from '../../plane/body.ts';
import { pieceMargin } from './piece-margin.ts';
import { INSIDE, type Primitives, STRIDE } from './primitives.ts';

/** What rounding may do to a margin, mm. */
const SPARE: Mm = 1e-3;

/**
 * The pieces that can leave the least margin somewhere on an extent, without those of some objects. The margin of a piece changes by no
 * more than one moves: what leaves more at the middle than the least there and twice the way to a corner never counts.
 */
export function primitivesOn(all: Primitives, without: readonly string[], extent: Extent): Primitives {
  const { minX, minY, maxX, maxY } = extent;
  const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
  const isLeftOut = all.limits.map(({ subject }) => without.includes(subject));
  const margins = new Float64Array(all.count).fill(Number.POSITIVE_INFINITY);
  let least = Number.POSITIVE_INFINITY;
  for (let i = 0; i < all.count; i++) {
    if (isLeftOut[all.owner[i] as number]) continue;
    margins[i] = pieceMargin(all, i, x, y);
    least = Math.min(least, margins[i] as number);
  }
  const most = least + Math.hypot(maxX - minX, maxY - minY) + SPARE;
  const kept: number[] = [];
  for (let i = 0; i < all.count; i++) {
    const owner = all.owner[i] as number;
    if (isLeftOut[owner]) continue;
    // A piece that counts within its body alone leaps at the edge.
    const body = all.kind[i] === INSIDE ? all.bodies[owner] : null;
    if (body ? overlaps(body.extent, extent) : (margins[i] as number) <= most) kept.push(i);
  }
  const data = new Float64Array(kept.length * STRIDE);
  kept.forEach((from, to) => {
    data.set(all.data.subarray(from * STRIDE, (from + 1) * STRIDE), to * STRIDE);
  });
  return {
    count: kept.length,
    kind: Uint8Array.from(kept, (i) => all.kind[i] as number),
    data,
    owner: Int32Array.from(kept, (i) => all.owner[i] as number),
    bodies: all.bodies,
    limits: all.limits,
  };
}
