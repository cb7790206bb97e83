import { distance, vectorLength } from './point.ts';
import type { Line, Mm, XY } from './types.ts';

/** Two directions with a smaller sine between them count as parallel: 1 mm in a meter. */
const PARALLEL_SINE = 1e-3;

/** Returns where two infinite lines cross; null when they are parallel or one has no length. */
export function lineCrossing([a, b]: Line, [c, d]: Line): XY | null {
  const [ux, uy, vx, vy] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]];
  const turn = ux * vy - uy * vx;
  if (Math.abs(turn) <= PARALLEL_SINE * vectorLength(ux, uy) * vectorLength(vx, vy)) return null;
  const t = ((c[0] - a[0]) * vy - (c[1] - a[1]) * vx) / turn;
  return [a[0] + ux * t, a[1] + uy * t];
}

/** Returns the line moved by `left` mm to its left on screen; to its right if negative. */
export function lineMoved([a, b]: Line, left: Mm): Line {
  const length = vectorLength(b[0] - a[0], b[1] - a[1]) || 1;
  const [dx, dy] = [((b[1] - a[1]) * left) / length, (-(b[0] - a[0]) * left) / length];
  return [
    [a[0] + dx, a[1] + dy],
    [b[0] + dx, b[1] + dy],
  ];
}

/** Returns the unsigned sine of the angle between two lines: 0 for parallel ones, and where one has no length. */
export function sineBetween([a, b]: Line, [c, d]: Line): number {
  const turn = (b[0] - a[0]) * (d[1] - c[1]) - (b[1] - a[1]) * (d[0] - c[0]);
  return Math.abs(turn) / (distance(a, b) * distance(c, d) || 1);
}
