import type { Mm, XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';

/** The six lengths of a four-cornered room A, B, C, D, from corner to corner. */
export const QUAD_LINES = ['A-B', 'B-C', 'C-D', 'D-A', 'A-C', 'B-D'] as const;
export type QuadLine = (typeof QUAD_LINES)[number];
export type QuadLengths = Readonly<Record<QuadLine, Mm>>;
export type Quad = readonly [a: XY, b: XY, c: XY, d: XY];

const ENDS: Readonly<Record<QuadLine, readonly [number, number]>> = {
  'A-B': [0, 1],
  'B-C': [1, 2],
  'C-D': [2, 3],
  'D-A': [3, 0],
  'A-C': [0, 2],
  'B-D': [1, 3],
};
/** Each diagonal with the two pairs of sides that span it. */
const SPANS = [
  ['A-C', 'A-B', 'B-C'],
  ['A-C', 'C-D', 'D-A'],
  ['B-D', 'B-C', 'C-D'],
  ['B-D', 'D-A', 'A-B'],
] as const;
/** Far more than needed: starting one foot off, the iteration converges in five steps. */
const MOST_STEPS = 60;

/** Returns the six lengths between the corners. */
export function quadLengths(quad: Quad): QuadLengths {
  const of = (line: QuadLine) => distance(...endsOf(quad, line));
  return { 'A-B': of('A-B'), 'B-C': of('B-C'), 'C-D': of('C-D'), 'D-A': of('D-A'), 'A-C': of('A-C'), 'B-D': of('B-D') };
}

function endsOf(quad: Quad, line: QuadLine): readonly [XY, XY] {
  const [i, j] = ENDS[line];
  return [quad[i] as XY, quad[j] as XY];
}

/** A diagonal that violates the triangle inequality, with the limit; null if every triangle closes. */
export interface ImpossibleDiagonal {
  readonly line: QuadLine;
  readonly sides: readonly [QuadLine, QuadLine];
  /** The diagonal must be shorter (longer) than this, mm. */
  readonly limit: Mm;
  readonly tooLong: boolean;
}
/** Returns the first taped diagonal that cannot close a triangle with two sides; null if every triangle closes. */
export function impossibleDiagonal(taped: QuadLengths): ImpossibleDiagonal | null {
  for (const [line, one, other] of SPANS) {
    const [most, least] = [taped[one] + taped[other], Math.abs(taped[one] - taped[other])];
    const sides = [one, other] as const;
    if (taped[line] >= most) return { line, sides, limit: most, tooLong: true };
    if (taped[line] <= least) return { line, sides, limit: least, tooLong: false };
  }
  return null;
}

/**
 * Returns the corners with the least squared differences to the six taped lengths (least squares, Gauss-Newton from
 * the corners as drawn; standard practice of surveying, from memory). Corner A stays and A-B keeps its direction. Six
 * lengths for five unknowns: their contradictions remain as residuals. The corners are four different points; null if
 * the iteration does not converge.
 */
export function adjustedQuad(quad: Quad, taped: QuadLengths): Quad | null {
  const [a, b] = quad;
  const ab = distance(a, b);
  if (ab === 0) return null;
  const u: XY = [(b[0] - a[0]) / ab, (b[1] - a[1]) / ab];
  const local = ([x, y]: XY): XY => [(x - a[0]) * u[0] + (y - a[1]) * u[1], (y - a[1]) * u[0] - (x - a[0]) * u[1]];
  const page = ([x, y]: XY): XY => [a[0] + x * u[0] - y * u[1], a[1] + x * u[1] + y * u[0]];
  let [cx, cy] = local(quad[2]);
  let [dx, dy] = local(quad[3]);
  let bx = ab;
  for (let step = 0; step < MOST_STEPS; step++) {
    const now: Quad = [
      [0, 0],
      [bx, 0],
      [cx, cy],
      [dx, dy],
    ];
    const change = solve(normalEquations(now, taped));
    if (!change) return null;
    const [b1 = 0, c1 = 0, c2 = 0, d1 = 0, d2 = 0] = change;
    bx += b1;
    cx += c1;
    cy += c2;
    dx += d1;
    dy += d2;
    if (Math.max(...change.map(Math.abs)) < 1e-9) return [a, page([bx, 0]), page([cx, cy]), page([dx, dy])];
  }
  return null;
}

/** Rows of five unknowns (B along, C, D) and the right side. */
function normalEquations(quad: Quad, taped: QuadLengths): number[][] {
  const rows = QUAD_LINES.map((line) => {
    const [i, j] = ENDS[line];
    const [p, q] = endsOf(quad, line);
    const far = distance(p, q) || 1;
    const [ux, uy] = [(q[0] - p[0]) / far, (q[1] - p[1]) / far];
    const row = new Array<number>(9).fill(0);
    // Coordinates of A to D as x, y pairs; both of A and the second of B are fixed.
    row[2 * i] = -ux;
    row[2 * i + 1] = -uy;
    row[2 * j] = ux;
    row[2 * j + 1] = uy;
    row[8] = taped[line] - far;
    return [2, 4, 5, 6, 7, 8].map((column) => row[column] as number);
  });
  return [0, 1, 2, 3, 4].map((i) =>
    [0, 1, 2, 3, 4, 5].map((j) => rows.reduce((sum, row) => sum + (row[i] as number) * (row[j] as number), 0)),
  );
}

/** Gaussian elimination with partial pivoting; null for a singular matrix. */
function solve(matrix: number[][]): readonly number[] | null {
  const size = matrix.length;
  const rows = matrix.map((row) => [...row]);
  for (let column = 0; column < size; column++) {
    let best = column;
    for (let r = column + 1; r < size; r++) {
      if (Math.abs(rows[r]?.[column] ?? 0) > Math.abs(rows[best]?.[column] ?? 0)) best = r;
    }
    [rows[column], rows[best]] = [rows[best] as number[], rows[column] as number[]];
    const pivot = rows[column] as number[];
    if (Math.abs(pivot[column] as number) < 1e-12) return null;
    for (const row of rows) {
      if (row === pivot) continue;
      const factor = (row[column] as number) / (pivot[column] as number);
      for (let k = column; k <= size; k++) row[k] = (row[k] as number) - factor * (pivot[k] as number);
    }
  }
  return rows.map((row, i) => (row[size] as number) / (row[i] as number));
}
