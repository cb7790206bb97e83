import type { ArcEdge, ArcRing } from '../arrangement/types.ts';
import type { Mm, XY } from '../plan/model.ts';
import type { Ring } from '../plane/types.ts';
import { edgeEnds } from './nearest.ts';

/**
 * Returns closed outlines as polygons, for consumers without arcs. Arcs are replaced by circumscribed tangents, which
 * lie outside the circle by at most `tolerance` mm and share its start and end. Every arc of a zone or a region is
 * part of a circle inside the zone, so the polygon of a zone contains the zone and the polygon of a region lies in
 * the region: never a wrong "clear".
 *
 * Fill zones with the non-zero rule. Fill a region only where its rings have positive winding (clockwise on screen):
 * a strip narrower than twice the tolerance may be inverted and is then not clear.
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

/** Adds the intersections of tangents at the ends of an arc and at equal steps between. */
function pushTangentCorners(ring: XY[], { center: [x, y], radius, start, sweep }: ArcEdge, tolerance: Mm): void {
  // Two tangents one step apart meet at radius / cos(step / 2).
  const widest = 2 * Math.acos(radius / (radius + tolerance));
  const count = Math.ceil(Math.abs(sweep) / widest);
  const step = sweep / count;
  const reach = radius / Math.cos(step / 2);
  for (let k = 0; k < count; k++) {
    const angle = start + step * (k + 0.5);
    ring.push([x + reach * Math.cos(angle), y + reach * Math.sin(angle)]);
  }
}
