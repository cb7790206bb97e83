import type { Kit } from '../../../geometry/plan/test-record.ts';
import { HOUR, type Ms } from './clock.ts';
import { LEAST_EXPOSURE } from './limits.ts';

/** From when to when the detectors of a kit may be fetched; both ends belong to it. */
export interface PickUpWindow {
  readonly from: Ms;
  readonly to: Ms;
}

/** The shortest test with a kit: no kit makes one of less than `LEAST_EXPOSURE`. */
export const leastExposure = ({ minimumHours }: Pick<Kit, 'minimumHours'>): Ms =>
  Math.max(minimumHours * HOUR, LEAST_EXPOSURE.duration);

/** Of a kit that must be fetched before `LEAST_EXPOSURE` it is its last moment alone: no pick-up of it is right. */
export function pickUpWindow(start: Ms, kit: Pick<Kit, 'minimumHours' | 'maximumHours'>): PickUpWindow {
  const to = start + kit.maximumHours * HOUR;
  return { from: Math.min(start + leastExposure(kit), to), to };
}
