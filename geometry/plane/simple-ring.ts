import { nearbyOf } from './nearby.ts';
import type { XY } from './types.ts';

/** Why a ring is not known to be simple. Corners are counted from 0; edge i starts at corner i. */
export type RingFlaw =
  | { readonly kind: 'same-corner'; readonly corners: readonly [number, number] }
  | { readonly kind: 'edges-meet'; readonly edges: readonly [number, number] }
  /** The bounding boxes of too many edges overlap to compare them all in a second or two. No real outline is like that. */
  | { readonly kind: 'too-intricate' };

/** At most this many pairs of edges are compared. */
const MOST_PAIRS = 20_000_000;

/**
 * Returns the first flaw of an open ring of at least 3 corners, or null when it is simple: no two consecutive corners
 * equal, no edge that folds back over the previous one, no other two edges that touch or cross. Exact predicates, no
 * tolerance. Compares the edges whose boxes overlap, at most `mostPairs` of them.
 */
export function ringFlaw(ring: readonly XY[], mostPairs = MOST_PAIRS): RingFlaw | null {
  const count = ring.length;
  const corner = (i: number) => ring[i % count] as XY;
  for (let i = 0; i < count; i++) {
    const [a, b] = [corner(i), corner(i + 1)];
    if (a[0] === b[0] && a[1] === b[1]) return { kind: 'same-corner', corners: [i, (i + 1) % count] };
  }
  const edges = ring.map((at, i): readonly [XY, XY] => [at, corner(i + 1)]);
  const near = nearbyOf(edges);
  let pairs = 0;
  for (let i = 0; i < count; i++) {
    const later = near(edges[i] as readonly [XY, XY], 0, (place) => place > i).sort((j, k) => j - k);
    pairs += later.length;
    if (pairs > mostPairs) return { kind: 'too-intricate' };
    for (const j of later) {
      const [a, b, c, d] = [corner(i), corner(i + 1), corner(j), corner(j + 1)];
      const next = j === i + 1;
      const last = (j + 1) % count === i;
      const meet = next || last ? foldsBack(next ? [a, b, d] : [c, d, b]) : segmentsMeet(a, b, c, d);
      if (meet) return { kind: 'edges-meet', edges: [i, j] };
    }
  }
  return null;
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
  // products underflow. Otherwise the sign is computed with integers.
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
