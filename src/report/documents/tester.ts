import type { Plan } from '../../../geometry/plan/model.ts';

/** Who set the detectors out, where the log names one person for all; empty otherwise. */
export function testerOf({ log = [] }: Plan): string {
  const names = new Set(log.map(({ placedBy }) => placedBy.trim()).filter(Boolean));
  return names.size === 1 ? ([...names][0] ?? '') : '';
}
