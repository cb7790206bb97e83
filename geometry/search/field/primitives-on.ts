import type { Mm } from '../../plan/model.ts';
import { type Extent, overlaps } from '../../plane/body.ts';
import { vectorLength } from '../../plane/point.ts';
import { pieceMargin } from './piece-margin.ts';
import { INSIDE, type Primitives, STRIDE } from './primitives.ts';

/** What rounding may do to a margin, mm. */
const SPARE: Mm = 1e-3;

/**
 * Those of some pieces that can leave the least margin somewhere on an extent. The margin of a piece changes by no more than one
 * moves: what leaves more at the middle than the least there and twice the way to a corner never counts.
 */
export function primitivesOn(all: Primitives, pieces: Int32Array, extent: Extent): Primitives {
  const { minX, minY, maxX, maxY } = extent;
  const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
  const margins = Float64Array.from(pieces, (piece) => pieceMargin(all, piece, x, y));
  const most =
    margins.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY) + vectorLength(maxX - minX, maxY - minY) + SPARE;
  const keptHere = (piece: number, n: number) => {
    // A piece that counts within its body alone leaps at the edge.
    const body = all.kind[piece] === INSIDE ? all.bodies[all.owner[piece] as number] : null;
    return body ? overlaps(body.extent, extent) : (margins[n] as number) <= most;
  };
  // In the order of the profile again.
  const kept = pieces.filter(keptHere).sort();
  const data = new Float64Array(kept.length * STRIDE);
  kept.forEach((from, to) => {
    data.set(all.data.subarray(from * STRIDE, (from + 1) * STRIDE), to * STRIDE);
  });
  return {
    count: kept.length,
    kind: Uint8Array.from(kept, (piece) => all.kind[piece] as number),
    data,
    owner: kept.map((piece) => all.owner[piece] as number),
    bodies: all.bodies,
    limits: all.limits,
  };
}
