import type { Plan } from '../../../geometry/plan/model.ts';
import type { Computed } from '../../../geometry/recheck/compare.ts';
import type { VerifiedLevel } from '../../protocol/validity/verified-placement.ts';
import { dayOfPrinting } from '../../report/day-of-printing.ts';

/** Returns the outcome of the second computation by detector id. */
export function computedById(placement: readonly VerifiedLevel[]): ReadonlyMap<string, Computed> {
  return new Map(placement.flatMap(({ detectors }) => detectors.map(({ id, computed }) => [id, computed] as const)));
}

/** Returns today's date at the site in ISO 8601 form. */
export function today(plan: Plan): string {
  return dayOfPrinting(plan, Date.now());
}
