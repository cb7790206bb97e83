import type { Detector, Level, PlanObject } from '../plan/model.ts';
import { bodyDistance, shapeBody } from '../plane/body.ts';
import type { EffectiveRule } from '../rules/profiles.ts';
import { reasonCheck } from './measure.ts';
import { objectSubject, SUPPORT_TOLERANCE, subjectSupports } from './subjects.ts';
import type { Check } from './types.ts';

/**
 * Checks what supports the detector: a drawn object, else what the detector itself says. With neither the check is
 * not run: the drawing cannot tell a forgotten hook from a detector in mid-air.
 */
export function checkSupport(level: Level, detector: Detector, rule: EffectiveRule): Check[] {
  const carrier = level.objects.find((object) => supports(object, detector));
  if (carrier) return [{ ...reasonCheck(rule, 'clear', 'Its whole foot stands on it.'), subject: carrier.id }];
  if (detector.support === 'hung') return [reasonCheck(rule, 'clear', 'It hangs.')];
  if (detector.support === 'stand') return [reasonCheck(rule, 'clear', 'It stands on its own stand.')];
  const reason = 'Nothing drawn carries it, and it is not known whether it hangs or has its own stand.';
  return [reasonCheck(rule, 'unknown', reason, true)];
}

/** The reason where the height of a detector depends on an object that nobody has measured. */
export const UNMEASURED_CARRIER = 'Nobody has measured how high the thing under it is.';

/**
 * Returns the object that a detector stands on if nobody has measured the object's height, so that the detector's height is not known either;
 * null for none. A detector that hangs or has its own stand has a height of its own.
 */
export function unmeasuredCarrier(
  { objects }: Level,
  detector: Pick<Detector, 'at' | 'base' | 'radius' | 'tall' | 'support'>,
): PlanObject | null {
  if (detector.support === 'hung' || detector.support === 'stand') return null;
  const carriers = objects.filter((object) => supports(object, detector));
  return carriers.every(({ topAnswered }) => topAnswered === false) ? (carriers[0] ?? null) : null;
}

/** Returns whether an object supports a detector: its top is within 3 mm of the base, under the whole footprint. */
export function supports(object: PlanObject, detector: Pick<Detector, 'at' | 'base' | 'radius' | 'tall'>): boolean {
  return subjectSupports(objectSubject(object), detector, ...detector.at);
}

/**
 * Returns whether a detector stands on the object: at the height of its top, with the axis over it. False for a
 * detector that hangs or has its own stand.
 */
export function standsOn({ at, base, support }: Detector, { shape, top }: PlanObject): boolean {
  if (support === 'hung' || support === 'stand') return false;
  return top > 0 && Math.abs(base - top) <= SUPPORT_TOLERANCE && bodyDistance(shapeBody(shape), at[0], at[1]) === 0;
}
