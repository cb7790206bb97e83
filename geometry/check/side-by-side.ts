import type { Detector, Mm } from '../plan/model.ts';
import { distance } from '../plane/point.ts';
import { LIMIT_TOLERANCE } from '../plane/tolerances.ts';

/**
 * Greatest distance of a collocated pair, mm: 8 in between the outer surfaces of the devices (ANSI/AARST MALB-2014 with 1/21 revisions,
 * 8.1.2(a); MAH-2019, 8.5.2(d)). Farther apart, detectors are two locations and never averaged.
 */
const COLLOCATED_WITHIN: Mm = 203.2;

/** The greatest difference between the undersides of a pair, mm: 4 in, rounded up. Up to it their distance is taken in plan. */
export const SAME_HEIGHT: Mm = 102;

/** Returns whether two detectors of a level are one location. */
export function areSideBySide(a: Detector, b: Detector): boolean {
  const inPlan = Math.max(0, distance(a.at, b.at) - a.radius - b.radius);
  const above = Math.max(a.base - b.base - b.tall, b.base - a.base - a.tall, 0);
  const inHeight = Math.abs(a.base - b.base) <= SAME_HEIGHT ? 0 : above;
  return Math.hypot(inPlan, inHeight) <= COLLOCATED_WITHIN + LIMIT_TOLERANCE;
}

/** Returns how many locations the detectors of a level are. Detectors side by side are one, whether marked as a pair or not. */
export function countLocations(detectors: readonly Detector[]): number {
  const locations: Detector[][] = [];
  for (const detector of detectors) {
    const near = locations.filter((location) => location.some((other) => areSideBySide(other, detector)));
    const apart = locations.filter((location) => !near.includes(location));
    locations.splice(0, locations.length, ...apart, [...near.flat(), detector]);
  }
  return locations.length;
}
