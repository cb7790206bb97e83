import type { XY } from '../plane/types.ts';
import { at, CX, CY, RADIUS, START, STRIDE, SWEEP, X0, X1, Y0, Y1 } from './pieces.ts';
import type { ArcRing, Edge } from './types.ts';

/**
 * Returns the area inside linked rings, mm², by Green's theorem in closed form, arcs included. Computed from the
 * rings and not from the parts they were linked from, because a dangle would contribute its distance from the origin.
 */
export function ringsArea(rings: readonly ArcRing[]): number {
  let twice = 0;
  for (const ring of rings) {
    // Relative to a point of the ring, to keep precision.
    const [ox, oy] = ring[0] ? startOf(ring[0]) : [0, 0];
    ring.forEach((edge, i) => {
      const [x0, y0] = startOf(edge);
      const [x1, y1] = startOf(ring[(i + 1) % ring.length] as Edge);
      if (edge.kind === 'arc') {
        const [cx, cy] = edge.center;
        twice += edge.radius * edge.radius * edge.sweep + (cx - ox) * (y1 - y0) - (cy - oy) * (x1 - x0);
      } else twice += (x0 - ox) * (y1 - oy) - (x1 - ox) * (y0 - oy);
    });
  }
  // Rounding may make an empty area slightly negative.
  return Math.max(0, twice / 2);
}

function startOf(edge: Edge): XY {
  if (edge.kind === 'line') return edge.from;
  return [edge.center[0] + edge.radius * Math.cos(edge.start), edge.center[1] + edge.radius * Math.sin(edge.start)];
}

/** Returns the start points of the edges of a ring without arcs. */
export function straightRing(ring: ArcRing): XY[] {
  return ring.map((edge) => {
    if (edge.kind === 'arc') throw new Error('a ring of wall faces holds an arc');
    return edge.from;
  });
}

/** Returns flat pieces as edges, with their zone on the right. */
export function toEdges(pieces: Float64Array): Edge[] {
  const edges: Edge[] = [];
  for (let k = 0; k < pieces.length; k += STRIDE) {
    const radius = at(pieces, k + RADIUS);
    if (radius > 0) {
      const center: XY = [at(pieces, k + CX), at(pieces, k + CY)];
      edges.push({ kind: 'arc', center, radius, start: at(pieces, k + START), sweep: at(pieces, k + SWEEP) });
    } else {
      edges.push({
        kind: 'line',
        from: [at(pieces, k + X0), at(pieces, k + Y0)],
        to: [at(pieces, k + X1), at(pieces, k + Y1)],
      });
    }
  }
  return edges;
}

/** Returns the ring with reversed orientation. */
export function reversedRing(ring: ArcRing): ArcRing {
  return [...ring]
    .reverse()
    .map((edge) =>
      edge.kind === 'line'
        ? { kind: 'line', from: edge.to, to: edge.from }
        : { ...edge, start: edge.start + edge.sweep, sweep: -edge.sweep },
    );
}
