import type { Mm } from '../../plan/model.ts';
import type { Extent } from '../../plane/extent.ts';
import { vectorLength } from '../../plane/point.ts';
import { pieceMargin } from './piece-margin.ts';
import { HANGING, INSIDE, type Primitives, SECTOR, STRIDE } from './primitives.ts';

/** A grid of squares. */
export interface Grid {
  readonly minX: Mm;
  readonly minY: Mm;
  readonly side: Mm;
  readonly across: number;
  readonly down: number;
}

/** A rectangle of squares: first and last column and row. */
interface Block {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/**
 * A piece is listed in the squares in which its margin may be below this, mm. A larger value makes the lists longer, a
 * smaller one searches farther around.
 */
const NEAR: Mm = 300;

/**
 * For each square of a grid, the pieces whose margin may be small in it. Other pieces that may be the least there are
 * found in rings of squares around it, one side farther per ring.
 */
export class ZoneSquares {
  private readonly primitives: Primitives;
  private readonly grid: Grid;
  /** Per piece the first and last column and row of its squares. */
  private readonly ranges: Int32Array;
  /** Per square the start of its pieces in `pieces`, and the end of the last. */
  private readonly starts: Int32Array;
  private readonly pieces: Int32Array;
  /** Per piece the last search that found it, because it may be listed in several squares. */
  private readonly lastSearch: Int32Array;
  private searches = 0;

  constructor(primitives: Primitives, grid: Grid) {
    this.primitives = primitives;
    this.grid = grid;
    this.lastSearch = new Int32Array(primitives.count);
    this.ranges = new Int32Array(4 * primitives.count);
    for (let piece = 0; piece < primitives.count; piece++) this.writeRange(piece);
    this.starts = new Int32Array(grid.across * grid.down + 1);
    this.eachSquare((square) => {
      this.starts[square + 1] = (this.starts[square + 1] as number) + 1;
    });
    for (let n = 1; n < this.starts.length; n++) {
      this.starts[n] = (this.starts[n] as number) + (this.starts[n - 1] as number);
    }
    this.pieces = new Int32Array(this.starts[this.starts.length - 1] as number);
    const ends = this.starts.slice();
    this.eachSquare((square, piece) => {
      const end = ends[square] as number;
      this.pieces[end] = piece;
      ends[square] = end + 1;
    });
  }

  /**
   * Returns an upper bound of the margin at the middle of a square, mm: the least of its own pieces; infinite if it
   * has none. Stops as soon as it is at most `enough`.
   */
  upperBound(i: number, j: number, enough: Mm): Mm {
    const { side, minX, minY, across } = this.grid;
    const x = minX + (i + 0.5) * side;
    const y = minY + (j + 0.5) * side;
    const square = j * across + i;
    let least = Number.POSITIVE_INFINITY;
    for (let n = this.starts[square] as number; n < (this.starts[square + 1] as number); n++) {
      const margin = pieceMargin(this.primitives, this.pieces[n] as number, x, y);
      if (margin < least) least = margin;
      if (least <= enough) break;
    }
    return least;
  }

  /**
   * Returns the squares that meet a rectangle; every square if part of it is outside the grid, because `gather` bounds
   * margins within the block only.
   */
  blockAround({ minX, minY, maxX, maxY }: Extent): Block {
    const { grid } = this;
    const [endX, endY] = [grid.minX + grid.across * grid.side, grid.minY + grid.down * grid.side];
    if (minX < grid.minX || minY < grid.minY || maxX > endX || maxY > endY) {
      return { left: 0, right: grid.across - 1, top: 0, bottom: grid.down - 1 };
    }
    return {
      left: within((minX - grid.minX) / grid.side, grid.across),
      right: within((maxX - grid.minX) / grid.side, grid.across),
      top: within((minY - grid.minY) / grid.side, grid.down),
      bottom: within((maxY - grid.minY) / grid.side, grid.down),
    };
  }

  /**
   * Writes to `out` from `at` on every piece that may determine the margin somewhere in a block of squares, and some
   * more, and to `margins` from 0 on their margins at its middle. Returns the end. The arrays must be large enough
   * for all pieces.
   *
   * @param isLeftOut for each limit, whether its pieces are ignored
   */
  gather(block: Block, out: Int32Array, at: number, margins: Float64Array, isLeftOut: readonly boolean[] = []): number {
    const { left, right, top, bottom } = block;
    const { side, minX, minY, across, down } = this.grid;
    const x = minX + ((left + right + 1) / 2) * side;
    const y = minY + ((top + bottom + 1) / 2) * side;
    const reach = vectorLength(right - left + 1, bottom - top + 1) * (side / 2);
    const farthest = Math.max(left, top, across - 1 - right, down - 1 - bottom);
    this.searches++;
    let end = at;
    let least = Number.POSITIVE_INFINITY;
    for (let ring = 0; ring <= farthest; ring++) {
      // Lower bound, over the whole block, of pieces that are first found in this ring.
      if (NEAR + (ring - 1) * side > least + reach) break;
      const from = end;
      end = this.addRing(block, ring, out, end, isLeftOut);
      for (let n = from; n < end; n++) {
        const margin = pieceMargin(this.primitives, out[n] as number, x, y);
        margins[n - at] = margin;
        if (margin < least) least = margin;
      }
    }
    return end;
  }

  /** Adds the pieces of a ring of squares; ring 0 is the block itself. */
  private addRing(block: Block, ring: number, out: Int32Array, at: number, isLeftOut: readonly boolean[]): number {
    const { across, down } = this.grid;
    const [left, right] = [block.left - ring, block.right + ring];
    const [top, bottom] = [block.top - ring, block.bottom + ring];
    let end = at;
    for (let row = Math.max(0, top); row <= Math.min(down - 1, bottom); row++) {
      const step = ring === 0 || row === top || row === bottom ? 1 : right - left;
      for (let column = left; column <= right; column += step) {
        if (column < 0 || column >= across) continue;
        end = this.addSquare(row * across + column, ring > 0, out, end, isLeftOut);
      }
    }
    return end;
  }

  private addSquare(
    square: number,
    outer: boolean,
    out: Int32Array,
    at: number,
    isLeftOut: readonly boolean[],
  ): number {
    const { lastSearch, searches, pieces } = this;
    const { kind, owner } = this.primitives;
    let end = at;
    for (let n = this.starts[square] as number; n < (this.starts[square + 1] as number); n++) {
      const piece = pieces[n] as number;
      // The inside of a body counts only in squares that it touches.
      if (lastSearch[piece] === searches || (outer && kind[piece] === INSIDE)) continue;
      lastSearch[piece] = searches;
      if (!isLeftOut[owner[piece] as number]) out[end++] = piece;
    }
    return end;
  }

  private eachSquare(visit: (square: number, piece: number) => void): void {
    const { ranges } = this;
    for (let piece = 0; piece < this.primitives.count; piece++) {
      const right = ranges[4 * piece + 1] as number;
      const bottom = ranges[4 * piece + 3] as number;
      for (let j = ranges[4 * piece + 2] as number; j <= bottom; j++) {
        for (let i = ranges[4 * piece] as number; i <= right; i++) visit(j * this.grid.across + i, piece);
      }
    }
  }

  private writeRange(piece: number): void {
    const { data, kind, owner, bodies } = this.primitives;
    const k = piece * STRIDE;
    const x = data[k] as number;
    const y = data[k + 1] as number;
    const around = kind[piece] === INSIDE ? 0 : NEAR + offsetOf(this.primitives, piece);
    const extent = bodies[owner[piece] as number]?.extent;
    if (extent && (kind[piece] === INSIDE || kind[piece] === SECTOR)) {
      this.setRange(piece, extent.minX, extent.minY, extent.maxX, extent.maxY, around);
    } else {
      const toX = x + (data[k + 2] as number);
      const toY = y + (data[k + 3] as number);
      this.setRange(piece, Math.min(x, toX), Math.min(y, toY), Math.max(x, toX), Math.max(y, toY), around);
    }
  }

  private setRange(piece: number, minX: Mm, minY: Mm, maxX: Mm, maxY: Mm, around: Mm): void {
    const { grid, ranges } = this;
    ranges[4 * piece] = within((minX - around - grid.minX) / grid.side, grid.across);
    ranges[4 * piece + 1] = within((maxX + around - grid.minX) / grid.side, grid.across);
    ranges[4 * piece + 2] = within((minY - around - grid.minY) / grid.side, grid.down);
    ranges[4 * piece + 3] = within((maxY + around - grid.minY) / grid.side, grid.down);
  }
}

/** Returns an index within the grid: pieces outside the grid are listed in the squares on its edge. */
function within(place: number, count: number): number {
  return Math.min(count - 1, Math.max(0, Math.floor(place)));
}

/** Returns by how much a piece's margin can be below its distance from the axis, mm. */
function offsetOf({ kind, data }: Primitives, piece: number): Mm {
  const k = piece * STRIDE;
  if (kind[piece] === SECTOR) return data[k + 7] as number;
  // In space the distance is never less than in plan, and the height minus the floor is the required distance.
  const required = kind[piece] === HANGING ? (data[k + 7] as number) - (data[k + 6] as number) : 0;
  return (data[k + 5] as number) + required;
}
