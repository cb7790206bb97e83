import type { Detector, PlanObject } from '../plan/model.ts';
import { bodyDistance, shapeBody } from '../plane/body.ts';
import { objectSubject, SEATED, carries as subjectCarries } from './subjects.ts';

/** Whether an object carries a detector: its top within 3 mm of the base, under the whole foot. */
export function carries(object: PlanObject, detector: Pick<Detector, 'at' | 'base' | 'radius' | 'tall'>): boolean {
  return subjectCarries(objectSubject(object), detector, ...detector.at);
}

/** Whether a detector stands on the object: at its top, its axis on it. What hangs or has a stand of its own does not. */
export function standsOn({ at, base, support }: Detector, { shape, top }: PlanObject): boolean {
  if (support === 'hung' || support === 'stand') return false;
  return top > 0 && Math.abs(base - top) <= SEATED && bodyDistance(shapeBody(shape), at[0], at[1]) === 0;
}
