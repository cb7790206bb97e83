import type { Mm } from '../../plan/model.ts';
import { type Extent, overlaps } from '../../plane/extent.ts';
import { vectorLength } from '../../plane/point.ts';
import { pieceMargin } from './piece-margin.ts';
import { INSIDE, type Primitives, STRIDE } from './primitives.ts';

/** Rounding of a margin, mm. */
const ROUNDING: Mm = 1e-3;

/**
 * Returns those of some pieces that may determine the margin somewhere on an extent. Margins are 1-Lipschitz: a piece
 * whose margin at the middle exceeds the least by more than twice the distance to a corner is never the least.
 */
export function primitivesOn(all: Primitives, pieces: Int32Array, extent: Extent): Primitives {
  const { minX, minY, maxX, maxY } = extent;
  const [x, y] = [(minX + maxX) / 2, (minY + maxY) / 2];
  const margins = Float64Array.from(pieces, (piece) => pieceMargin(all, piece, x, y));
  const most =
    margins.reduce((a, b) => Math.min(a, b), Number.POSITIVE_INFINITY) +
    vectorLength(maxX - minX, maxY - minY) +
    ROUNDING;
  const mayBeLeast = (piece: number, n: number) => {
    // An `INSIDE` piece is discontinuous at the edge of its body.
    const body = all.kind[piece] === INSIDE ? all.bodies[all.owner[piece] as number] : null;
    return body ? overlaps(body.extent, extent) : (margins[n] as number) <= most;
  };
  // Restores profile order.
  const remaining = pieces.filter(mayBeLeast).sort();
  const data = new Float64Array(remaining.length * STRIDE);
  remaining.forEach((from, to) => {
    data.set(all.data.subarray(from * STRIDE, (from + 1) * STRIDE), to * STRIDE);
  });
  return {
    count: remaining.length,
    kind: Uint8Array.from(remaining, (piece) => all.kind[piece] as number),
    data,
    owner: remaining.map((piece) => all.owner[piece] as number),
    bodies: all.bodies,
    rules: all.rules,
    subjects: all.subjects,
  };
}
