import type { LevelModel, OpeningBody, Room } from '../level/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import { along, distance } from '../plane/point.ts';
import type { Ring } from '../plane/types.ts';

/** A piece of the boundary of a floor, with the floor on its right seen from a to b. */
interface FloorEdge {
  readonly a: XY;
  readonly b: XY;
  /** The openings that it belongs to, which may overlap; empty for a wall. */
  readonly openings: readonly number[];
}

/** The floors of a level, with their outlines cut at the openings, for tracing light. */
export interface FloorPlan {
  /** Per room. */
  readonly rooms: readonly (readonly FloorEdge[])[];
  /** Per opening: the edges of floors at it. */
  readonly doorways: readonly (readonly { readonly room: number; readonly edge: FloorEdge }[])[];
}

/** An edge this close to an opening's body is at it, mm. */
const AT_OPENING: Mm = 0.05;
/** A line near an opening that crosses its wall more steeply than this, as a fraction of its length, is the side of another wall. */
const ACROSS = 0.1;
/** A shorter piece is rounding, mm. */
const SHORTEST: Mm = 1e-4;

/**
 * Returns the outlines of all floors, cut at the openings. The body of an opening counts as open, whatever walls cross it: light is never
 * stopped too early.
 */
export function floorPlan({ rooms, openings }: Pick<LevelModel, 'rooms' | 'openings'>): FloorPlan {
  const doorways: { room: number; edge: FloorEdge }[][] = openings.map(() => []);
  const cut = rooms.map(({ floorRings }: Room, room) =>
    floorRings.flatMap((ring) =>
      ring.flatMap((a, i) => {
        const edges = cutEdge(a, ring[(i + 1) % ring.length] as XY, openings);
        for (const edge of edges) for (const opening of edge.openings) doorways[opening]?.push({ room, edge });
        return edges;
      }),
    ),
  );
  return { rooms: cut, doorways };
}

function cutEdge(a: XY, b: XY, openings: readonly OpeningBody[]): FloorEdge[] {
  const long = distance(a, b);
  const spans: { from: number; to: number; opening: number }[] = [];
  openings.forEach(({ body }, opening) => {
    const [from, to] = within(a, b, body);
    if ((to - from) * long > SHORTEST) spans.push({ from, to, opening });
  });
  if (spans.length === 0) return [{ a, b, openings: [] }];
  const stops = [...new Set([0, 1, ...spans.flatMap(({ from, to }) => [from, to])])].sort((s, t) => s - t);
  return stops.slice(1).map((to, i) => {
    const from = stops[i] as number;
    const here = spans.filter((span) => span.from <= from && span.to >= to).map(({ opening }) => opening);
    return { a: along(a, b, from), b: along(a, b, to), openings: here };
  });
}

/**
 * Returns the part of a line, as fractions of its length, in a rectangle and up to `AT_OPENING` around it. Empty for the side of a wall that
 * ends at the opening: light along the opening would pass through that wall.
 */
function within(a: XY, b: XY, body: Ring): [number, number] {
  const [p, q, , s] = body as readonly [XY, XY, XY, XY];
  let [from, to] = [0, 1];
  const width = distance(p, q);
  const ux = (q[0] - p[0]) / width;
  const uy = (q[1] - p[1]) / width;
  const depth = distance(p, s);
  // Along the wall and across it, also where the wall has no thickness.
  for (const [nx, ny, long] of [[ux, uy, width] as const, [-uy, ux, depth] as const]) {
    const at = (a[0] - p[0]) * nx + (a[1] - p[1]) * ny;
    const run = (b[0] - a[0]) * nx + (b[1] - a[1]) * ny;
    if (run === 0) {
      if (at < -AT_OPENING || at > long + AT_OPENING) return [0, 0];
      continue;
    }
    const [s, t] = [(-AT_OPENING - at) / run, (long + AT_OPENING - at) / run];
    from = Math.max(from, Math.min(s, t));
    to = Math.min(to, Math.max(s, t));
  }
  if (from >= to) return [0, 0];
  const start = (a[1] - p[1]) * ux - (a[0] - p[0]) * uy;
  const run = (b[1] - a[1]) * ux - (b[0] - a[0]) * uy;
  const middle = start + (run * (from + to)) / 2;
  const isNear = middle < 0 || middle > depth;
  return isNear && Math.abs(run) > ACROSS * distance(a, b) ? [0, 0] : [from, to];
}
