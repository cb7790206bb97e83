import type { ArcEdge, ArcRing } from '../arrangement/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import type { Ring } from '../plane/types.ts';
import { edgeEnds } from './nearest.ts';

/**
 * Closed outlines as polygons, for what knows no arcs. Each arc gives way to tangents: they lie outside its circle, at most
 * `tolerance` mm from it, and start and end where it does. Every arc of a zone or a region is part of a circle that lies in
 * the zone. So a zone's polygon holds the whole zone, a region's polygon lies in the region: never a wrong "clear".
 *
 * Fill zones by the non-zero rule. Of a region fill only what its rings go round clockwise on screen (the positive rule):
 * a strip narrower than twice the tolerance may turn inside out, and is not clear then.
 *
 * @param tolerance more than 0
 */
export function flattened(outlines: readonly ArcRing[], tolerance: Mm): Ring[] {
  return outlines.map((outline) => {
    const ring: XY[] = [];
    for (const edge of outline) {
      ring.push(edgeEnds(edge)[0]);
      if (edge.kind === 'arc') pushTangentCorners(ring, edge, tolerance);
    }
    return ring;
  });
}

/** The corners between the tangents at both ends of an arc and at equal steps between. */
function pushTangentCorners(ring: XY[], { center: [x, y], radius, start, sweep }: ArcEdge, tolerance: Mm): void {
  // Two tangents a step apart meet at radius / cos(step / 2).
  const widest = 2 * Math.acos(radius / (radius + tolerance));
  const count = Math.ceil(Math.abs(sweep) / widest);
  const step = sweep / count;
  const reach = radius / Math.cos(step / 2);
  for (let k = 0; k < count; k++) {
    const angle = start + step * (k + 0.5);
    ring.push([x + reach * Math.cos(angle), y + reach * Math.sin(angle)]);
  }
}
