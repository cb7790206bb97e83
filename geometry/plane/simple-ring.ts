import type { XY } from './types.ts';

/** Why a ring is not simple. Corners are counted from 0; edge i starts at corner i. */
export type RingFlaw =
  | { readonly kind: 'same-corner'; readonly corners: readonly [number, number] }
  | { readonly kind: 'edges-meet'; readonly edges: readonly [number, number] };

/**
 * Returns the first flaw of an open ring of at least 3 corners, or null when it is simple: no two consecutive corners
 * equal, no edge that folds back over the previous one, no other two edges that touch or cross. Exact predicates, no
 * tolerance. Compares the boxes of every pair of edges, O(n²): enough for outlines of a thousand corners.
 */
export function ringFlaw(ring: readonly XY[]): RingFlaw | null {
  const count = ring.length;
  const corner = (i: number) => ring[i % count] as XY;
  for (let i = 0; i < count; i++) {
    const [a, b] = [corner(i), corner(i + 1)];
    if (a[0] === b[0] && a[1] === b[1]) return { kind: 'same-corner', corners: [i, (i + 1) % count] };
  }
  const boxes = edgeBoxes(ring);
  for (let i = 0; i < count; i++) {
    for (let j = i + 1; j < count; j++) {
      if (areApart(boxes, 4 * i, 4 * j)) continue;
      const [a, b, c, d] = [corner(i), corner(i + 1), corner(j), corner(j + 1)];
      const next = j === i + 1;
      const last = (j + 1) % count === i;
      const meet = next || last ? foldsBack(next ? [a, b, d] : [c, d, b]) : segmentsMeet(a, b, c, d);
      if (meet) return { kind: 'edges-meet', edges: [i, j] };
    }
  }
  return null;
}

/** Returns the least and greatest x and y of each edge, four numbers an edge. */
function edgeBoxes(ring: readonly XY[]): Float64Array {
  const boxes = new Float64Array(4 * ring.length);
  for (let i = 0; i < ring.length; i++) {
    const [a, b] = [ring[i] as XY, ring[(i + 1) % ring.length] as XY];
    boxes.set([Math.min(a[0], b[0]), Math.min(a[1], b[1]), Math.max(a[0], b[0]), Math.max(a[1], b[1])], 4 * i);
  }
  return boxes;
}

/** Returns whether two boxes share no point; edges that follow one another always share one. */
function areApart(boxes: Float64Array, i: number, j: number): boolean {
  const at = (k: number) => boxes[k] as number;
  return at(i + 2) < at(j) || at(j + 2) < at(i) || at(i + 3) < at(j + 1) || at(j + 3) < at(i + 1);
}

/** Returns whether b → c runs back over a → b. */
function foldsBack([a, b, c]: readonly [XY, XY, XY]): boolean {
  return turnSign(a, b, c) === 0 && (sameSide(a[0], b[0], c[0]) || sameSide(a[1], b[1], c[1]));
}

/** Returns whether a and c lie on the same side of b on one axis. */
function sameSide(a: number, b: number, c: number): boolean {
  return (a < b && c < b) || (a > b && c > b);
}

/** Returns whether two closed segments whose boxes share a point share one. */
function segmentsMeet(a: XY, b: XY, c: XY, d: XY): boolean {
  return turnSign(a, b, c) * turnSign(a, b, d) <= 0 && turnSign(c, d, a) * turnSign(c, d, b) <= 0;
}

/**
 * Returns the exact sign of the cross product of a → b and a → c: positive when c lies clockwise on screen of a → b.
 */
function turnSign(a: XY, b: XY, c: XY): number {
  const left = (b[0] - a[0]) * (c[1] - a[1]);
  const right = (b[1] - a[1]) * (c[0] - a[0]);
  const size = Math.abs(left) + Math.abs(right);
  // Error bound of the orientation test (Shewchuk, 1997): beyond it the floating-point sign is right, unless the
  // products
  // underflow. Otherwise the sign is computed with integers.
  if (size > 1e-200 && Math.abs(left - right) > 3.3306690738754716e-16 * size) return Math.sign(left - right);
  const [ax, ay, bx, by, cx, cy] = [...a, ...b, ...c].map(scaled) as [bigint, bigint, bigint, bigint, bigint, bigint];
  const exact = (bx - ax) * (cy - ay) - (by - ay) * (cx - ax);
  if (exact === 0n) return 0;
  return exact > 0n ? 1 : -1;
}

/** Returns a double multiplied by 2^1074, which is an integer for every finite double. */
function scaled(value: number): bigint {
  let exponent = 0;
  let mantissa = value;
  while (!Number.isInteger(mantissa)) {
    mantissa *= 2;
    exponent += 1;
  }
  return BigInt(mantissa) << BigInt(1074 - exponent);
}
