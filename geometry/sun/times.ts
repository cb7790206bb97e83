import type { Deg, Plan } from '../plan/model.ts';
import { instantMs } from '../planfile/instant.ts';

/** Altitude below which the sun does not count if the site does not give one, degrees: common practice, no published source. */
const USUAL_HORIZON: Deg = 3;

/** The time and place for which the sun is computed. */
export interface SunTimes {
  readonly latitude: Deg;
  readonly longitude: Deg;
  /** Milliseconds since 1970. */
  readonly start: number;
  readonly end: number;
  readonly north: Deg;
  readonly horizon: Deg;
}

/** Returns the instant up to which the sun counts: the pick-up, or the planned one while none is recorded; null for neither. */
export function exposureEnd({ end, plannedEnd = null }: Plan['visit']): string | null {
  return end ?? plannedEnd;
}

/** Returns place, north and times of the exposure, up to the planned pick-up while none is recorded; null while any of them is missing. */
export function sunTimes({ site, visit }: Pick<Plan, 'site' | 'visit'>): SunTimes | null {
  const { latitude, longitude, north, horizon = USUAL_HORIZON } = site;
  const start = visit.start === null ? null : instantMs(visit.start);
  const endText = exposureEnd(visit);
  const end = endText === null ? null : instantMs(endText);
  if (latitude === null || longitude === null || start === null || end === null) return null;
  if (site.northAnswered === false) return null;
  return { latitude, longitude, start, end, north, horizon };
}
