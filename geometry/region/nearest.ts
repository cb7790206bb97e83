import type { ArcEdge, ArcRing, Edge } from '../arrangement/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import { turnBetween } from '../plane/body.ts';
import { memoize } from '../plane/memoize.ts';
import { distance, nearestOnSegment, vectorLength } from '../plane/point.ts';
import type { LevelRegion, NearestSpot, RoomRegion } from './types.ts';

/**
 * A boundary point lies exactly at its limits, and rounding decides on which side. Who wants a spot that a check is sure to
 * accept asks for a region with this much more to spare, mm: nothing that a tape can tell.
 */
export const JUST_INSIDE: Mm = 0.2;

/**
 * The spot of a region that is nearest to a point, however the walls run; null when the region is empty. A point that lies
 * in the region is its own nearest spot, at distance 0.
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
  const direction = ((Math.atan2(best[1] - at[1], best[0] - at[0]) * 180) / Math.PI + 360) % 360;
  return { at: best, room, distance: least, direction };
}

/** The point of a boundary piece nearest to p. */
export function nearestOnEdge(edge: Edge, p: XY): XY {
  if (edge.kind === 'line') return nearestOnSegment(p, edge.from, edge.to);
  const { center, radius } = edge;
  const angle = Math.atan2(p[1] - center[1], p[0] - center[0]);
  if (arcHolds(edge, angle)) return onCircle(edge, angle);
  const [start, end] = [onCircle(edge, edge.start), onCircle(edge, edge.start + edge.sweep)];
  return radius === 0 || distance(p, start) <= distance(p, end) ? start : end;
}

function arcHolds({ start, sweep }: ArcEdge, angle: number): boolean {
  const middle = start + sweep / 2;
  return Math.abs(turnBetween(middle, angle)) <= Math.abs(sweep) / 2;
}

function onCircle({ center, radius }: ArcEdge, angle: number): XY {
  return [center[0] + radius * Math.cos(angle), center[1] + radius * Math.sin(angle)];
}

/** Where an edge starts and ends. */
export function edgeEnds(edge: Edge): readonly [XY, XY] {
  return edge.kind === 'line'
    ? [edge.from, edge.to]
    : [onCircle(edge, edge.start), onCircle(edge, edge.start + edge.sweep)];
}

/**
 * Whether a point lies in the area of rings of lines and arcs, by counting crossings of the ray towards +x. On the boundary
 * either answer may come. An edge ends for the count where the next one starts: were each end worked out on its own, a ray
 * through a corner could pass between two that differ by rounding.
 */
export function arcRingsContain(rings: readonly ArcRing[], [x, y]: XY): boolean {
  let inside = false;
  for (const ring of rings) {
    const starts = edgeStarts(ring);
    for (let i = 0; i < ring.length; i++) {
      const edge = ring[i] as Edge;
      if (edge.kind === 'arc' && isPast(edge, x, y)) continue;
      const next = i + 1 < ring.length ? i + 1 : 0;
      if (crossesRay(edge, starts[i] as XY, starts[next] as XY, x, y)) inside = !inside;
    }
  }
  return inside;
}

/** Where the edges of a ring start: asked for again and again by whoever looks for what shows of an outline. */
const edgeStarts = memoize((ring: ArcRing): readonly XY[] =>
  ring.map((edge) => (edge.kind === 'line' ? edge.from : onCircle(edge, edge.start))),
);

/**
 * Whether the ray from (x, y) towards +x crosses the edge from a to b an odd number of times. By its chord; then what lies
 * between chord and arc turns the answer over. A point on the chord counts for both as if it lay a hair further down the page.
 */
function crossesRay(edge: Edge, a: XY, b: XY, x: Mm, y: Mm): boolean {
  const dx = b[0] - a[0];
  const dy = b[1] - a[1];
  const side = dx * (y - a[1]) - dy * (x - a[0]);
  const onRight = side > 0 || (side === 0 && (dx > 0 || (dx === 0 && dy < 0)));
  const straddles = a[1] > y !== b[1] > y;
  const odd = straddles && onRight === dy > 0;
  return edge.kind === 'arc' && liesInSegment(edge, onRight, x, y) ? !odd : odd;
}

/** What rounding may do to the ends of an arc, and a joint between it and its neighbour, mm. */
const END_SLACK: Mm = 0.01;

/** Whether the ray passes the whole circle of an arc by, so that its ends need not be worked out. */
function isPast({ center, radius }: ArcEdge, x: Mm, y: Mm): boolean {
  return x > center[0] + radius + END_SLACK || Math.abs(y - center[1]) > radius + END_SLACK;
}

/** Whether (x, y), on this side of the chord, lies between it and its arc: one that runs clockwise on screen bulges left. */
function liesInSegment({ center, radius, sweep }: ArcEdge, onRight: boolean, x: Mm, y: Mm): boolean {
  return onRight === sweep < 0 && vectorLength(x - center[0], y - center[1]) < radius;
}
