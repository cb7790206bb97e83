import type { Plan } from '../../../geometry/plan/model.ts';

/** Returns the detectors that are placed in the house, by the log: from then on each is measuring where it is. A start alone can be a plan. */
export function placedDetectors({ log = [], visit }: Plan): readonly string[] {
  return log
    .filter(({ placed, placedBy }) => placedBy.trim() !== '' || (placed === true && visit.start !== null))
    .map(({ detector }) => detector);
}
