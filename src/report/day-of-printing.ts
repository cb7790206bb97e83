import type { Plan } from '../../geometry/plan/model.ts';
import { isoDay, type Ms } from '../protocol/timing/clock.ts';

/** Returns the day of an instant at the site as ISO 8601 date: papers have every other time by the clock of the site too. */
export function dayOfPrinting({ site }: Plan, now: Ms): string {
  return isoDay(now, site.timeZone);
}
