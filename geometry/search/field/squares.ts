import type { Mm } from '../../plan/model.ts';
import type { Extent } from '../../plane/extent.ts';
import { type Candidates, COARSEST } from './candidates.ts';

/**
 * A square of the grid of a field: at level 0 a leaf, above it four squares of the level below, below it a part of a
 * leaf.
 */
export interface Square {
  readonly level: number;
  /** Column and row among the squares of its level. */
  readonly i: number;
  readonly j: number;
  /** Its middle, and half its side, mm. */
  readonly x: Mm;
  readonly y: Mm;
  readonly half: Mm;
}

/**
 * Returns the largest squares that meet a rectangle, row by row.
 *
 * @param made cache of the grid's largest squares, by index: rooms share them
 */
export function squaresIn(grid: Candidates, { minX, minY, maxX, maxY }: Extent, made: Map<number, Square>): Square[] {
  const side = grid.leaf * 2 ** COARSEST;
  const column = (x: Mm) => Math.min(grid.columns(COARSEST) - 1, Math.max(0, Math.floor((x - grid.minX) / side)));
  const row = (y: Mm) => Math.min(grid.rows(COARSEST) - 1, Math.max(0, Math.floor((y - grid.minY) / side)));
  const squares: Square[] = [];
  for (let j = row(minY); j <= row(maxY); j++) {
    for (let i = column(minX); i <= column(maxX); i++) {
      const place = j * grid.columns(COARSEST) + i;
      let square = made.get(place);
      if (!square) {
        square = squareAt(grid, COARSEST, i, j);
        made.set(place, square);
      }
      squares.push(square);
    }
  }
  return squares;
}

/** Returns the four quarters of a square, without those beyond the last leaves. */
export function quartersOf(grid: Candidates, { level, i, j }: Square): Square[] {
  const quarters: Square[] = [];
  for (let n = 0; n < 4; n++) {
    const [column, row] = [2 * i + (n & 1), 2 * j + (n >> 1)];
    if (level > 0 && (column >= grid.columns(level - 1) || row >= grid.rows(level - 1))) continue;
    quarters.push(squareAt(grid, level - 1, column, row));
  }
  return quarters;
}

function squareAt({ minX, minY, leaf }: Candidates, level: number, i: number, j: number): Square {
  const half = (leaf * 2 ** level) / 2;
  return { level, i, j, x: minX + (2 * i + 1) * half, y: minY + (2 * j + 1) * half, half };
}

/** Returns the number of the square that holds the list for a square: the square itself, or the leaf that contains it. */
export function listOf(grid: Candidates, { level, i, j }: Square): number {
  return level > 0 ? grid.square(level, i, j) : grid.pruneLeaf(Math.floor(i * 2 ** level), Math.floor(j * 2 ** level));
}

/**
 * Returns the number of the square that holds the list for a point: its leaf, or a larger square for a long reach; −1
 * outside the grid.
 */
export function listAround(grid: Candidates, x: Mm, y: Mm, reach: Mm): number {
  const i = Math.floor((x - grid.minX) / grid.leaf);
  const j = Math.floor((y - grid.minY) / grid.leaf);
  if (!(i >= 0 && j >= 0 && i < grid.across && j < grid.down)) return -1;
  return reach < grid.leaf ? grid.pruneLeaf(i, j) : grid.square(COARSEST, i >> COARSEST, j >> COARSEST);
}
