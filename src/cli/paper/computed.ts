import type { Computed } from '../../../geometry/recheck/compare.ts';
import type { VerifiedLevel } from '../../protocol/validity/verified-placement.ts';

/** Returns the outcome of the second computation by detector id. */
export function computedById(placement: readonly VerifiedLevel[]): ReadonlyMap<string, Computed> {
  return new Map(placement.flatMap(({ detectors }) => detectors.map(({ id, computed }) => [id, computed] as const)));
}

/** Returns the current date as ISO 8601, in the time zone of this computer. */
export function today(): string {
  const now = new Date();
  const two = (part: number) => String(part).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}
