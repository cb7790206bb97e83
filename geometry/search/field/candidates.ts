import type { Mm } from '../../plan/model.ts';
import type { Extent } from '../../plane/extent.ts';
import { Undominated } from './dominance.ts';
import { pieceMargin } from './piece-margin.ts';
import { INSIDE, type Primitives, STRIDE } from './primitives.ts';
import { primitivesOn } from './primitives-on.ts';
import { ZoneSquares } from './zone-squares.ts';

/** Side of a leaf, mm: 20 in. Smaller leaves make queries faster, but building their lists slower. */
const LEAF: Mm = 508;

/** The level of the largest squares, two leaves wide. Leaves are level 0. */
export const COARSEST = 1;

/** Most leaves along one side, so that a single distant wall does not cause endless lists. */
const MOST_LEAVES = 512;

/** Rounding in comparisons of margins, mm; more than the tolerance for equal margins. */
const SLACK: Mm = 1e-5;

/**
 * For each square of a quadtree grid over a level, the pieces that may determine the margin somewhere in it. A
 * square's list is filtered from the list of the square around it on first use. Margins are 1-Lipschitz, so a piece
 * whose margin at the middle of a square exceeds the least by more than the diagonal cannot be the least anywhere in
 * it.
 *
 * Squares are numbered. The list of a square is `pool` from its `starts` to its `ends`.
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
  /** The start of each list; −1 if it is not built yet. */
  readonly starts: Int32Array;
  readonly ends: Int32Array;
  /** The margin at the middle of each square with a list, mm. */
  readonly middles: Float64Array;
  /** The number of the first square of each level. */
  private readonly firsts: readonly number[];
  private used: number;
  /** Per leaf, whether dominated pieces have been removed. */
  private readonly pruned: Uint8Array;
  private readonly margins: Float64Array;
  /** Per largest square the last upper bound, and the `enough` it was computed for: the rooms at a square ask for the same bound. */
  private readonly bounds: Float64Array;
  private readonly boundEnough: Float64Array;
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
    this.pruned = new Uint8Array(this.across * this.down);
    this.used = 0;
    this.pool = new Int32Array(4 * primitives.count + 1024);
    this.margins = new Float64Array(primitives.count);
    const [across, down] = [this.columns(COARSEST), this.rows(COARSEST)];
    this.bounds = new Float64Array(across * down);
    this.boundEnough = new Float64Array(across * down).fill(Number.NaN);
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

  /** Returns the number of a square, given by its column and row on its level, after building its list. */
  square(level: number, i: number, j: number): number {
    const square = this.numberOf(level, i, j);
    if ((this.starts[square] as number) < 0) this.make(square, level, i, j);
    return square;
  }

  private numberOf(level: number, i: number, j: number): number {
    return (this.firsts[level] as number) + j * this.columns(level) + i;
  }

  /** Returns the number of a leaf, after pruning its list to undominated pieces, sorted by margin at its middle. */
  pruneLeaf(i: number, j: number): number {
    const leaf = this.square(0, i, j);
    if (this.pruned[leaf] === 0) {
      const [x, y] = [this.minX + (i + 0.5) * this.leaf, this.minY + (j + 0.5) * this.leaf];
      const [start, end] = [this.starts[leaf] as number, this.ends[leaf] as number];
      this.ends[leaf] = this.undominated.prune(this.pool, start, end, x, y, this.leaf / 2);
      this.pruned[leaf] = 1;
    }
    return leaf;
  }

  /**
   * Returns an upper bound of the margin at the middle of one of the largest squares, mm, without building its list.
   * The bound need not be tight at or below `enough`.
   */
  upperBound(i: number, j: number, enough: Mm): Mm {
    const square = this.numberOf(COARSEST, i, j);
    if ((this.starts[square] as number) >= 0) return this.middles[square] as Mm;
    const place = square - (this.firsts[COARSEST] as number);
    if (this.boundEnough[place] !== enough) {
      this.bounds[place] = this.zones.upperBound(i, j, enough);
      this.boundEnough[place] = enough;
    }
    return this.bounds[place] as Mm;
  }

  /** Returns the pieces that may determine the margin somewhere on an extent, ignoring some objects. */
  piecesOn(without: readonly string[], extent: Extent): Primitives {
    const { primitives, zones } = this;
    const isLeftOut = primitives.subjects.map(({ id }) => without.includes(id));
    const near = new Int32Array(primitives.count);
    const end = zones.gather(zones.blockAround(extent), near, 0, this.margins, isLeftOut);
    return primitivesOn(primitives, near.subarray(0, end), extent);
  }

  private make(square: number, level: number, i: number, j: number): void {
    const half = (this.leaf * 2 ** level) / 2;
    const x = this.minX + (2 * i + 1) * half;
    const y = this.minY + (2 * j + 1) * half;
    if (level === COARSEST) {
      this.reserve(this.primitives.count);
      const end = this.zones.gather({ left: i, right: i, top: j, bottom: j }, this.pool, this.used, this.margins);
      this.filterList(square, this.used, end, x, y, half);
      return;
    }
    const parent = this.square(level + 1, i >> 1, j >> 1);
    const [first, end] = [this.starts[parent] as number, this.ends[parent] as number];
    this.reserve(end - first);
    for (let n = first; n < end; n++) {
      this.margins[n - first] = pieceMargin(this.primitives, this.pool[n] as number, x, y);
    }
    this.filterList(square, first, end, x, y, half);
  }

  /**
   * Builds the list of a square around (x, y): those pieces of a part of the pool, with their margins at (x, y), that may be
   * the least within the square. The part may start where the list does, because entries only move forward.
   */
  private filterList(square: number, first: number, end: number, x: Mm, y: Mm, half: Mm): void {
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
        // The floor of the piece applies anywhere in its body.
        pool[this.used++] = piece;
      }
    }
    this.ends[square] = this.used;
  }

  /** Returns whether the body of an `INSIDE` piece may reach into a square, by its bounding box. */
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
