import type { Mm } from '../../plan/model.ts';
import { pieceGradient, pieceMargin } from './piece-margin.ts';
import { HANGING, type Primitives, SEGMENT } from './primitives.ts';

/** A piece is removed if it is undercut by more than this, mm: more than rounding and the tolerance for equal margins. */
const SLACK: Mm = 1e-5;

/**
 * Removes the pieces of a list that another one undercuts everywhere in a square.
 *
 * The margin of a segment is a convex function, so it is above its tangent plane at the middle. A margin that is
 * below that plane at all four corners is below it everywhere in the square.
 */
export class Undominated {
  private readonly primitives: Primitives;
  private margins = new Float64Array(64);
  /** Margins of the remaining pieces at the four corners of the square. */
  private corners = new Float64Array(4 * 64);

  constructor(primitives: Primitives) {
    this.primitives = primitives;
  }

  /** Prunes a part of the pool in place, sorted by margin at the middle of the square, and returns its new end. */
  prune(pool: Int32Array, start: number, end: number, x: Mm, y: Mm, half: Mm): number {
    this.reserve(end - start);
    this.sort(pool, start, end, x, y);
    const { kind } = this.primitives;
    let remaining = 0;
    for (let n = start; n < end; n++) {
      const piece = pool[n] as number;
      const convex = kind[piece] === SEGMENT || kind[piece] === HANGING;
      if (convex && this.isUndercut(piece, this.margins[n - start] as number, remaining, x, y, half)) continue;
      this.writeCorners(piece, convex, remaining, x, y, half);
      pool[start + remaining] = piece;
      remaining++;
    }
    return start + remaining;
  }

  private reserve(count: number): void {
    if (count <= this.margins.length) return;
    this.margins = new Float64Array(2 * count);
    this.corners = new Float64Array(8 * count);
  }

  /** Insertion sort: lists are short. */
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

  /** Returns whether one of the first `rows` of corners is below a piece's tangent plane at all four corners. */
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
