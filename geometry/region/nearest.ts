import type { ArcEdge, ArcRing, Edge } from '../arrangement/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import { direction } from '../plane/bearing.ts';
import { turnBetween } from '../plane/body.ts';
import { memoize } from '../plane/memoize.ts';
import { distance, nearestOnSegment, vectorLength } from '../plane/point.ts';
import type { LevelRegion, NearestSpot, RoomRegion } from './types.ts';

/**
 * A boundary point is exactly at its limits, and rounding decides on which side it is. A region built with this extra
 * distance, mm, gives positions that a check certainly accepts; no tape resolves the difference.
 */
export const JUST_INSIDE: Mm = 0.2;

/**
 * Returns the point of a region nearest to a point in a straight line, ignoring walls; null when the region is empty.
 * A point in the region is its own nearest, at distance 0.
 */
export function nearestSpot(region: LevelRegion, at: XY): NearestSpot | null {
  let best: NearestSpot | null = null;
  for (const room of region.rooms) {
    const spot = nearestInRoom(room, at);
    if (spot && (!best || spot.distance < best.distance)) best = spot;
  }
  return best;
}

function nearestInRoom({ room, rings }: RoomRegion, at: XY): NearestSpot | null {
  if (rings.length === 0) return null;
  if (arcRingsContain(rings, at)) return { at, room, distance: 0, direction: 0 };
  let best: XY | null = null;
  let least: Mm = Number.POSITIVE_INFINITY;
  for (const ring of rings) {
    for (const edge of ring) {
      const point = nearestOnEdge(edge, at);
      const d = distance(point, at);
      if (d >= least) continue;
      least = d;
      best = point;
    }
  }
  if (!best) return null;
  return { at: best, room, distance: least, direction: direction(at, best) };
}

/** Returns the point of a boundary edge nearest to p. */
export function nearestOnEdge(edge: Edge, p: XY): XY {
  if (edge.kind === 'line') return nearestOnSegment(p, edge.from, edge.to);
  const { center, radius } = edge;
  const angle = Math.atan2(p[1] - center[1], p[0] - center[0]);
  if (arcContains(edge, angle)) return onCircle(edge, angle);
  const [start, end] = [onCircle(edge, edge.start), onCircle(edge, edge.start + edge.sweep)];
  return radius === 0 || distance(p, start) <= distance(p, end) ? start : end;
}

function arcContains({ start, sweep }: ArcEdge, angle: number): boolean {
  const middle = start + sweep / 2;
  return Math.abs(turnBetween(middle, angle)) <= Math.abs(sweep) / 2;
}

function onCircle({ center, radius }: ArcEdge, angle: number): XY {
  return [center[0] + radius * Math.cos(angle), center[1] + radius * Math.sin(angle)];
}

/** Returns the start and end of an edge. */
export function edgeEnds(edge: Edge): readonly [XY, XY] {
  return edge.kind === 'line'
    ? [edge.from, edge.to]
    : [onCircle(edge, edge.start), onCircle(edge, edge.start + edge.sweep)];
}

/**
 * Returns whether a point is in the area of rings of lines and arcs, by counting crossings of the ray toward +x.
 * Undefined on the boundary. An edge counts as ending where the next one starts: if ends were computed separately, a ray
 * through a corner could pass between two that differ by rounding.
 */
export function arcRingsContain(rings: readonly ArcRing[], [x, y]: XY): boolean {
  let inside = false;
  for (const ring of rings) {
    const starts = edgeStarts(ring);
    for (let i = 0; i < ring.length; i++) {
      const edge = ring[i] as Edge;
      if (edge.kind === 'arc' && rayMisses(edge, x, y)) continue;
      const next = i + 1 < ring.length ? i + 1 : 0;
      if (crossesRay(edge, starts[i] as XY, starts[next] as XY, x, y)) inside = !inside;
    }
  }
  return inside;
}

/** The start points of the edges of a ring; memoized because visibility tests query the same rings many times. */
const edgeStarts = memoize((ring: ArcRing): readonly XY[] =>
  ring.map((edge) => (edge.kind === 'line' ? edge.from : onCircle(edge, edge.start))),
);

/**
 * Returns whether the ray from (x, y) toward +x crosses the edge from a to b an odd number of times: tested on its
 * chord, and inverted for points between chord and arc. A point on the chord is treated consistently in both tests,
 * as if slightly further down the page.
 */
function crossesRay(edge: Edge, a: XY, b: XY, x: Mm, y: Mm): boolean {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const side = dx * (y - a[1]) - dy * (x - a[0]);
  const onRight = side > 0 || (side === 0 && (dx > 0 || (dx === 0 && dy < 0)));
  const straddles = a[1] > y !== b[1] > y;
  const odd = straddles && onRight === dy > 0;
  return edge.kind === 'arc' && isInCircularSegment(edge, onRight, x, y) ? !odd : odd;
}

/** Rounding of the ends of an arc and of bridged gaps between edges, mm. */
const END_TOLERANCE: Mm = 0.01;

/** Returns whether the ray misses the whole circle of an arc: a quick test that avoids computing the arc's ends. */
function rayMisses({ center, radius }: ArcEdge, x: Mm, y: Mm): boolean {
  return x > center[0] + radius + END_TOLERANCE || Math.abs(y - center[1]) > radius + END_TOLERANCE;
}

/**
 * Returns whether (x, y), on the given side of the chord, is in the circular segment. An arc that runs clockwise on
 * screen bulges left.
 */
function isInCircularSegment({ center, radius, sweep }: ArcEdge, onRight: boolean, x: Mm, y: Mm): boolean {
  return onRight === sweep < 0 && vectorLength(x - center[0], y - center[1]) < radius;
}
