import type { Mm } from '../../plan/model.ts';
import type { Extent } from '../../plane/body.ts';
import { Undominated } from './dominance.ts';
import { pieceMargin } from './piece-margin.ts';
import { INSIDE, type Primitives, STRIDE } from './primitives.ts';
import { primitivesOn } from './primitives-on.ts';
import { ZoneSquares } from './zone-squares.ts';

/** Side of a leaf, mm: 20 in. Smaller ones make a query faster and the lists longer to make. */
const LEAF: Mm = 508;

/** The level of the largest squares: two leaves wide. Leaves are at level 0. */
export const COARSEST = 1;

/** The most leaves along one side of a level, so that one stray wall does not ask for endless lists. */
const MOST_LEAVES = 512;

/** What rounding may do to a comparison of margins, mm; more than what counts as the same margin. */
const SLACK: Mm = 1e-5;

/**
 * For each square of a grid over a level, the pieces that can leave the least margin somewhere in it. Squares are halved from
 * the largest down to leaves; a square's list is sifted from the list of the square around it when it is first asked for. A
 * margin changes by at most the way moved, so a piece that at the middle of a square lies more than the whole diagonal above
 * the least cannot be the least anywhere in it.
 *
 * Squares have numbers. The list of a square lies in `pool` from its `starts` to its `ends`.
 */
export class Candidates {
  readonly primitives: Primitives;
  readonly minX: Mm;
  readonly minY: Mm;
  readonly leaf: Mm;
  /** Leaves along x and y. */
  readonly across: number;
  readonly down: number;
  pool: Int32Array;
  /** −1 where the list is not yet made. */
  readonly starts: Int32Array;
  readonly ends: Int32Array;
  /** The margin at the middle of each square whose list is made, mm. */
  readonly middles: Float64Array;
  /** The number of the first square of each level. */
  private readonly firsts: readonly number[];
  private used: number;
  /** Per leaf whether dominated pieces have been left out. */
  private readonly thinned: Uint8Array;
  private readonly margins: Float64Array;
  private readonly zones: ZoneSquares;
  private readonly undominated: Undominated;

  constructor(primitives: Primitives, { minX, minY, maxX, maxY }: Extent) {
    this.primitives = primitives;
    this.minX = minX;
    this.minY = minY;
    this.leaf = Math.max(LEAF, Math.max(maxX - minX, maxY - minY) / MOST_LEAVES);
    this.across = Math.floor((maxX - minX) / this.leaf) + 1;
    this.down = Math.floor((maxY - minY) / this.leaf) + 1;
    const firsts = [0];
    for (let level = 0; level <= COARSEST; level++) {
      firsts.push((firsts[level] as number) + this.columns(level) * this.rows(level));
    }
    this.firsts = firsts;
    const squares = firsts[COARSEST + 1] as number;
    this.starts = new Int32Array(squares).fill(-1);
    this.ends = new Int32Array(squares);
    this.middles = new Float64Array(squares);
    this.thinned = new Uint8Array(this.across * this.down);
    this.used = 0;
    this.pool = new Int32Array(4 * primitives.count + 1024);
    this.margins = new Float64Array(primitives.count);
    const [across, down] = [this.columns(COARSEST), this.rows(COARSEST)];
    this.zones = new ZoneSquares(primitives, { minX, minY, side: this.leaf * 2 ** COARSEST, across, down });
    this.undominated = new Undominated(primitives);
  }

  /** Squares of a level along x. */
  columns(level: number): number {
    return ((this.across - 1) >> level) + 1;
  }

  /** Squares of a level along y. */
  rows(level: number): number {
    return ((this.down - 1) >> level) + 1;
  }

  /** The number of a square, counted from the corner in squares of its level; its list is made. */
  square(level: number, i: number, j: number): number {
    const square = this.numberOf(level, i, j);
    if ((this.starts[square] as number) < 0) this.make(square, level, i, j);
    return square;
  }

  private numberOf(level: number, i: number, j: number): number {
    return (this.firsts[level] as number) + j * this.columns(level) + i;
  }

  /** The number of a leaf, its list cut down to what nothing else in it dominates, the nearest to its middle first. */
  thinLeaf(i: number, j: number): number {
    const leaf = this.square(0, i, j);
    if (this.thinned[leaf] === 0) {
      const [x, y] = [this.minX + (i + 0.5) * this.leaf, this.minY + (j + 0.5) * this.leaf];
      const [start, end] = [this.starts[leaf] as number, this.ends[leaf] as number];
      this.ends[leaf] = this.undominated.sift(this.pool, start, end, x, y, this.leaf / 2);
      this.thinned[leaf] = 1;
    }
    return leaf;
  }

  /**
   * No more than this is left at the middle of one of the largest squares, mm: seen without making its list, and looked into only
   * above `enough`.
   */
  atMost(i: number, j: number, enough: Mm): Mm {
    const square = this.numberOf(COARSEST, i, j);
    return (this.starts[square] as number) < 0 ? this.zones.atMost(i, j, enough) : (this.middles[square] as Mm);
  }

  /** The pieces that can leave the least margin somewhere on an extent, as though some objects were not there. */
  piecesOn(without: readonly string[], extent: Extent): Primitives {
    const { primitives, zones } = this;
    const isLeftOut = primitives.limits.map(({ subject }) => without.includes(subject));
    const near = new Int32Array(primitives.count);
    const end = zones.gather(zones.blockOf(extent), near, 0, this.margins, isLeftOut);
    return primitivesOn(primitives, near.subarray(0, end), extent);
  }

  private make(square: number, level: number, i: number, j: number): void {
    const half = (this.leaf * 2 ** level) / 2;
    const x = this.minX + (2 * i + 1) * half;
    const y = this.minY + (2 * j + 1) * half;
    if (level === COARSEST) {
      this.reserve(this.primitives.count);
      const end = this.zones.gather({ left: i, right: i, top: j, bottom: j }, this.pool, this.used, this.margins);
      this.keepNear(square, this.used, end, x, y, half);
      return;
    }
    const parent = this.square(level + 1, i >> 1, j >> 1);
    const [first, end] = [this.starts[parent] as number, this.ends[parent] as number];
    this.reserve(end - first);
    for (let n = first; n < end; n++) {
      this.margins[n - first] = pieceMargin(this.primitives, this.pool[n] as number, x, y);
    }
    this.keepNear(square, first, end, x, y, half);
  }

  /**
   * Makes the list of a square about (x, y): those of a part of the pool, with their margins there, that can be the least within
   * it. The part may begin at the very place where the list does: what is kept moves forward.
   */
  private keepNear(square: number, first: number, end: number, x: Mm, y: Mm, half: Mm): void {
    const { margins, pool } = this;
    const { kind, data } = this.primitives;
    const radius = half * Math.SQRT2;
    let least = Number.POSITIVE_INFINITY;
    for (let n = 0; n < end - first; n++) least = Math.min(least, margins[n] as number);
    const limit = least + 2 * radius + SLACK;
    this.middles[square] = least;
    this.starts[square] = this.used;
    for (let n = first; n < end; n++) {
      const piece = pool[n] as number;
      if (kind[piece] !== INSIDE) {
        if ((margins[n - first] as number) <= limit) pool[this.used++] = piece;
      } else if ((data[piece * STRIDE + 6] as number) <= least + radius && this.reaches(piece, x, y, half)) {
        // Its floor counts anywhere in its body.
        pool[this.used++] = piece;
      }
    }
    this.ends[square] = this.used;
  }

  /** Whether the body of an `INSIDE` piece reaches into a square, as far as the rectangle around it tells. */
  private reaches(piece: number, x: Mm, y: Mm, half: Mm): boolean {
    const body = this.primitives.bodies[this.primitives.owner[piece] as number];
    if (!body) return false;
    const { minX, minY, maxX, maxY } = body.extent;
    return minX <= x + half && maxX >= x - half && minY <= y + half && maxY >= y - half;
  }

  private reserve(count: number): void {
    if (this.used + count <= this.pool.length) return;
    const larger = new Int32Array(2 * this.pool.length + count);
    larger.set(this.pool);
    this.pool = larger;
  }
}
