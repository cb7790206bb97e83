import type { Kit } from '../../../geometry/plan/model.ts';
import { HOUR, type Ms } from './clock.ts';

/** From when to when the detectors of a kit may be fetched; both ends belong to it. */
export interface PickUpWindow {
  readonly from: Ms;
  readonly to: Ms;
}

export function pickUpWindow(start: Ms, kit: Pick<Kit, 'minimumHours' | 'maximumHours'>): PickUpWindow {
  return { from: start + kit.minimumHours * HOUR, to: start + kit.maximumHours * HOUR };
}
