import type { Mm } from '../../plan/model.ts';
import { pieceGradient, pieceMargin } from './piece-margin.ts';
import { HANGING, type Primitives, SEGMENT } from './primitives.ts';

/** By how much a piece must be undercut to be left out, mm: more than rounding, and more than what counts as the same margin. */
const SLACK: Mm = 1e-5;

/**
 * Leaves out of a list the pieces that another one undercuts all over a square.
 *
 * The margin of a segment is a convex function: it lies above its tangent plane at the middle. A second one that lies below
 * that plane at all four corners lies below it everywhere in the square.
 */
export class Undominated {
  private readonly primitives: Primitives;
  private readonly margins: Float64Array;
  /** Margins at the corners of the square of what is kept, four each. */
  private readonly corners: Float64Array;

  constructor(primitives: Primitives) {
    this.primitives = primitives;
    this.margins = new Float64Array(primitives.count);
    this.corners = new Float64Array(4 * primitives.count);
  }

  /** Sifts a part of the pool in place, what is nearest to the middle of the square first, and returns its new end. */
  sift(pool: Int32Array, start: number, end: number, x: Mm, y: Mm, half: Mm): number {
    this.sort(pool, start, end, x, y);
    const { kind } = this.primitives;
    let kept = 0;
    for (let n = start; n < end; n++) {
      const piece = pool[n] as number;
      const convex = kind[piece] === SEGMENT || kind[piece] === HANGING;
      if (convex && this.isUndercut(piece, this.margins[n - start] as number, kept, x, y, half)) continue;
      this.writeCorners(piece, convex, kept, x, y, half);
      pool[start + kept] = piece;
      kept++;
    }
    return start + kept;
  }

  /** Lists are short: each piece is put in its place. */
  private sort(pool: Int32Array, start: number, end: number, x: Mm, y: Mm): void {
    const { margins } = this;
    for (let n = start; n < end; n++) {
      const piece = pool[n] as number;
      const margin = pieceMargin(this.primitives, piece, x, y);
      let place = n - start;
      while (place > 0 && (margins[place - 1] as number) > margin) {
        margins[place] = margins[place - 1] as number;
        pool[start + place] = pool[start + place - 1] as number;
        place--;
      }
      margins[place] = margin;
      pool[start + place] = piece;
    }
  }

  private writeCorners(piece: number, convex: boolean, row: number, x: Mm, y: Mm, half: Mm): void {
    for (let corner = 0; corner < 4; corner++) {
      this.corners[4 * row + corner] = convex
        ? pieceMargin(this.primitives, piece, x + (corner & 1 ? half : -half), y + (corner & 2 ? half : -half))
        : Number.POSITIVE_INFINITY;
    }
  }

  /** Whether one of the first `rows` of corners lies below a piece's tangent plane at all four. */
  private isUndercut(piece: number, margin: Mm, rows: number, x: Mm, y: Mm, half: Mm): boolean {
    const { corners } = this;
    const [gx, gy] = pieceGradient(this.primitives, piece, x, y);
    const [right, down] = [gx * half, gy * half];
    const plane = margin - SLACK;
    for (let k = 0; k < 4 * rows; k += 4) {
      if ((corners[k] as number) >= plane - right - down || (corners[k + 1] as number) >= plane + right - down)
        continue;
      if ((corners[k + 2] as number) < plane - right + down && (corners[k + 3] as number) < plane + right + down) {
        return true;
      }
    }
    return false;
  }
}
