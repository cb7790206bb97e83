import type { Mm, PlanObject } from '../plan/model.ts';
import { shapeBody, signedBodyDistance } from '../plane/body.ts';
import { interiorPoint } from '../plane/ring.ts';

/** Whole foot so far from every edge, mm: 2 in, where there is room. Common practice, no published source. */
const FROM_EDGE: Mm = 50.8;

/** What people sit and lie on. A detector there is moved, covered or breathed on. Common practice, no published source. */
const SOFT =
  /\b(?:sofa|couch|settee|love ?seat|divan|futon|bed|bunk|mattress|cot|crib|armchair|chair|recliner|stool|ottoman|pouf|beanbag|cushion|hammock)s?\b/i;
const FIRM = /\b(?:table|desk|shelf|shelves|stand|cabinet|dresser|chest|counter)s?\b/i;

/** Whether an object is by its name one that people sit or lie on. */
export function isSeat({ name }: Pick<PlanObject, 'name'>): boolean {
  return SOFT.test(name) && !FIRM.test(name);
}

/**
 * How far the axis of a detector stays inside the outline of what carries it, mm: the whole foot on it and 2 in to every edge; on
 * a narrow one most of what there is, so that it stands in the middle.
 */
export function insetOf({ shape }: PlanObject, radius: Mm): Mm {
  const free = widestOf(shape) - radius;
  return radius + Math.min(FROM_EDGE, Math.max(0, 0.9 * free));
}

/** How far the point with the most room about it is from the edge. */
function widestOf(shape: PlanObject['shape']): Mm {
  if ('circle' in shape) return shape.circle.radius;
  if ('box' in shape) return Math.min(shape.box.width, shape.box.depth) / 2;
  const at = interiorPoint([shape.polygon.points]);
  return at ? -signedBodyDistance(shapeBody(shape), ...at) : 0;
}
