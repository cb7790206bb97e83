import type { Mm, PlanObject } from '../plan/model.ts';
import { shapeBody, signedBodyDistance } from '../plane/body.ts';
import { interiorPoint } from '../plane/ring.ts';

/**
 * Distance of the footprint from every edge, mm: 2 in, if the object is large enough. Common practice, no published
 * source.
 */
const EDGE_DISTANCE: Mm = 50.8;

/**
 * Things that people sit and lie on. A detector on one is moved, covered or breathed on. Common practice, no published source.
 */
const SOFT =
  /\b(?:sofa|couch|settee|love ?seat|divan|futon|bed|bunk|mattress|cot|crib|armchair|chair|recliner|stool|ottoman|pouf|beanbag|cushion|hammock)s?\b/i;
const FIRM = /\b(?:table|desk|shelf|shelves|stand|cabinet|dresser|chest|counter)s?\b/i;

/** Returns whether an object, by its name, is for sitting or lying on. */
export function isSeat({ name }: Pick<PlanObject, 'name'>): boolean {
  return SOFT.test(name) && !FIRM.test(name);
}

/**
 * Returns how far the axis of a detector stays inside the outline of the supporting object, mm: the whole footprint
 * on it and 2 in to every edge; on a narrow one most of its width, so that the detector is in the middle.
 */
export function footprintInset({ shape }: PlanObject, radius: Mm): Mm {
  const free = widestOf(shape) - radius;
  return radius + Math.min(EDGE_DISTANCE, Math.max(0, 0.9 * free));
}

/** Returns the greatest distance, mm, that a point inside the shape can have from its edge. */
function widestOf(shape: PlanObject['shape']): Mm {
  if ('circle' in shape) return shape.circle.radius;
  if ('box' in shape) return Math.min(shape.box.width, shape.box.depth) / 2;
  const at = interiorPoint([shape.polygon.points]);
  return at ? -signedBodyDistance(shapeBody(shape), ...at) : 0;
}
