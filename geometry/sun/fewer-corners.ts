import type { Mm, XY } from '../plan/model.ts';
import { distance, nearestOnSegment } from '../plane/point.ts';

/** A corner of a ring that is simplified, linked to its neighbors. */
interface Corner {
  p: XY;
  /** How far the corner may be from the given ring, mm. */
  depth: Mm;
  next: Corner;
  last: Corner;
  /** The intersection of the neighbors of the side to the next corner, and its distance from the given ring; null if it is not near. */
  instead: { readonly p: XY; readonly depth: Mm } | null;
}

/** A corner that replaces a side is at most this far from the given ring, mm. */
const NEAREST: Mm = 5;

/**
 * Returns a convex ring that contains another and has fewer corners. A side is removed where its two neighbors meet near it, the flattest
 * corner first.
 */
export function withFewerCorners(ring: readonly XY[], nearest: Mm = NEAREST): readonly XY[] {
  if (ring.length <= 4) return ring;
  const corners = ring.map((p): Corner => ({ p, depth: 0, instead: null }) as Corner);
  corners.forEach((corner, i) => {
    corner.next = corners[(i + 1) % corners.length] as Corner;
    corner.last = corners[(i + corners.length - 1) % corners.length] as Corner;
  });
  for (const corner of corners) corner.instead = meeting(corner, nearest);
  for (;;) {
    let best: Corner | null = null;
    for (const corner of corners)
      if (corner.instead && (!best?.instead || corner.instead.depth < best.instead.depth)) best = corner;
    if (!best?.instead || best.next.next.next === best) break;
    const { next } = best;
    Object.assign(best, best.instead);
    next.instead = null;
    corners.splice(corners.indexOf(next), 1);
    best.next = next.next;
    best.next.last = best;
    for (const one of [best.last.last, best.last, best, best.next]) one.instead = meeting(one, nearest);
  }
  return corners.map(({ p }) => p);
}

function meeting(
  {
    p: a,
    last: { p: o },
    next: {
      p: b,
      depth: other,
      next: { p: c },
    },
    depth: own,
  }: Corner,
  nearest: Mm,
) {
  const [dx, dy, ex, ey] = [a[0] - o[0], a[1] - o[1], b[0] - c[0], b[1] - c[1]];
  const turn = dx * ey - dy * ex;
  if (Math.abs(turn) < 1e-12) return null;
  const t = ((c[0] - o[0]) * ey - (c[1] - o[1]) * ex) / turn;
  const s = ((c[0] - o[0]) * dy - (c[1] - o[1]) * dx) / turn;
  if (t < 1 || s < 1) return null;
  const p: XY = [o[0] + dx * t, o[1] + dy * t];
  // Distance from the side itself, not from its line: in a narrow ring the line comes close to corners that are far away.
  const depth = Math.max(own, other) + distance(p, nearestOnSegment(p, a, b));
  return depth <= nearest ? { p, depth } : null;
}
