import type { Mm } from '../../plan/model.ts';

/** Numbers per half-plane: the inside is a·x + b·y ≥ c. */
const PLANE = 3;

/**
 * Returns the inside of a convex ring within a square, as the half-planes of the edges that cross the square: `[count,
 * a, b, c, …]`. No half-planes if the whole square is inside; null if no part of it is.
 *
 * @param flat corners x, y, …, clockwise on screen
 */
export function insideWithin(flat: Float64Array, x: Mm, y: Mm, half: Mm): number[] | null {
  const record = [0];
  let ax = flat[flat.length - 2] as number;
  let ay = flat[flat.length - 1] as number;
  for (let i = 0; i < flat.length; i += 2) {
    const bx = flat[i] as number;
    const by = flat[i + 1] as number;
    const a = ay - by;
    const b = bx - ax;
    const c = a * ax + b * ay;
    const middle = a * x + b * y - c;
    const spread = half * (Math.abs(a) + Math.abs(b));
    if (middle + spread < 0) return null;
    if (middle - spread < 0) record.push(a, b, c);
    ax = bx;
    ay = by;
  }
  record[0] = (record.length - 1) / PLANE;
  return record;
}

/** Returns whether all half-planes of the record at `k` contain a point. */
export function planesContain(flat: Float64Array, k: number, x: Mm, y: Mm): boolean {
  const end = planesEnd(flat, k);
  for (let n = k + 1; n < end; n += PLANE) {
    if ((flat[n] as number) * x + (flat[n + 1] as number) * y < (flat[n + 2] as number)) return false;
  }
  return true;
}

/** Returns the end of the record at `k`. */
export function planesEnd(flat: Float64Array, k: number): number {
  return k + 1 + PLANE * (flat[k] as number);
}
