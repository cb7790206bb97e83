import type { Plan } from '../../../geometry/plan/model.ts';

/** Whether the log says who placed a detector in the house: from then on it is measuring where it is. */
export function isPlaced({ log = [] }: Plan, detectorId: string): boolean {
  return log.some(({ detector, placedBy }) => detector === detectorId && placedBy.trim() !== '');
}
