import type { Extent } from '../body.ts';
import type { Mm } from '../plan/model.ts';
import { Undominated } from './dominance.ts';
import { pieceMargin } from './piece-margin.ts';
import { INSIDE, type Primitives, STRIDE } from './primitives.ts';

/** Side of a leaf, mm: 24 in. */
const LEAF: Mm = 609.6;

/** The most leaves along one side of a level, so that one stray wall does not ask for endless lists. */
const MOST_LEAVES = 512;

/** What rounding may do to a comparison of margins, mm; more than what counts as the same margin. */
const SLACK: Mm = 1e-5;

/**
 * For each square of a grid over a level, the pieces that can leave the least margin somewhere in it. Squares are halved from
 * the whole level down to leaves; a square's list is sifted from the list of the square around it when it is first asked
 * for. A margin changes by at most the way moved, so a piece that at the middle of a square lies more than the whole
 * diagonal above the least cannot be the least anywhere in it.
 *
 * Lists lie one after another in `pool`: that of a square from `starts` to `ends` of its number.
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
  /** The level of the one square that holds all; leaves are at level 0. */
  private readonly top: number;
  /** The number of the first square of each level. */
  private readonly firsts: readonly number[];
  private used: number;
  private readonly margins: Float64Array;
  private readonly undominated: Undominated;

  constructor(primitives: Primitives, { minX, minY, maxX, maxY }: Extent) {
    this.primitives = primitives;
    this.minX = minX;
    this.minY = minY;
    this.leaf = Math.max(LEAF, Math.max(maxX - minX, maxY - minY) / MOST_LEAVES);
    this.across = Math.floor((maxX - minX) / this.leaf) + 1;
    this.down = Math.floor((maxY - minY) / this.leaf) + 1;
    this.top = Math.ceil(Math.log2(Math.max(this.across, this.down)));
    const firsts = [0];
    for (let level = 0; level <= this.top; level++) {
      firsts.push((firsts[level] as number) + this.columns(level) * ((this.down >> level) + 1));
    }
    this.firsts = firsts;
    const squares = firsts[this.top + 1] as number;
    this.starts = new Int32Array(squares).fill(-1);
    this.ends = new Int32Array(squares);
    this.used = primitives.count;
    this.pool = new Int32Array(2 * primitives.count + 1024);
    for (let piece = 0; piece < primitives.count; piece++) this.pool[piece] = piece;
    this.starts[this.whole] = 0;
    this.ends[this.whole] = primitives.count;
    this.margins = new Float64Array(primitives.count);
    this.undominated = new Undominated(primitives);
  }

  /** The level whose squares are as large as a side, mm, or the next larger. */
  levelOf(side: Mm): number {
    return Math.min(this.top, Math.max(0, Math.ceil(Math.log2(side / this.leaf))));
  }

  /** The number of the square of a level that holds a point, its list made; of the whole level for a point outside the grid. */
  at(level: number, x: Mm, y: Mm): number {
    const i = Math.floor((x - this.minX) / this.leaf);
    const j = Math.floor((y - this.minY) / this.leaf);
    if (!(i >= 0 && j >= 0 && i < this.across && j < this.down)) return this.whole;
    return this.square(level, i >> level, j >> level);
  }

  /** The number of a square, counted from the corner in squares of its level; its list is made. */
  square(level: number, i: number, j: number): number {
    const square = (this.firsts[level] as number) + j * this.columns(level) + i;
    if ((this.starts[square] as number) < 0) this.make(square, level, i, j);
    return square;
  }

  /** The number of the square that holds all. */
  private get whole(): number {
    return this.firsts[this.top] as number;
  }

  private columns(level: number): number {
    return (this.across >> level) + 1;
  }

  private make(square: number, level: number, i: number, j: number): void {
    const parent = this.square(level + 1, i >> 1, j >> 1);
    const half = (this.leaf * 2 ** level) / 2;
    const x = this.minX + (2 * i + 1) * half;
    const y = this.minY + (2 * j + 1) * half;
    const start = this.used;
    this.keepNear(parent, x, y, half);
    if (level === 0) this.used = this.undominated.sift(this.pool, start, this.used, x, y, half);
    this.starts[square] = start;
    this.ends[square] = this.used;
  }

  /** Adds to the pool those of a square's list that can be the least within a square about (x, y). */
  private keepNear(parent: number, x: Mm, y: Mm, half: Mm): void {
    const { primitives, margins } = this;
    const { kind, data } = primitives;
    const first = this.starts[parent] as number;
    const count = (this.ends[parent] as number) - first;
    this.reserve(count);
    const { pool } = this;
    const radius = half * Math.SQRT2;
    let least = Number.POSITIVE_INFINITY;
    for (let n = 0; n < count; n++) {
      const piece = pool[first + n] as number;
      if (kind[piece] === INSIDE) {
        // Its floor counts anywhere in its body.
        margins[n] = (data[piece * STRIDE + 6] as number) + radius;
        continue;
      }
      const margin = pieceMargin(primitives, piece, x, y);
      margins[n] = margin;
      if (margin < least) least = margin;
    }
    const limit = least + 2 * radius + SLACK;
    for (let n = 0; n < count; n++) {
      const piece = pool[first + n] as number;
      if ((margins[n] as number) > limit) continue;
      if (kind[piece] === INSIDE && !this.reaches(piece, x, y, half)) continue;
      pool[this.used++] = piece;
    }
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
