import type { Plan } from '../../geometry/plan/model.ts';

/** Returns a sentence if results or entries of the log were deleted with something; empty if none were. */
export function recordsGone(before: Plan, after: Plan): string {
  return records(after) < records(before) ? 'Its results and its entries in the log went with it.' : '';
}

const records = ({ readings, log }: Plan): number => readings.length + (log?.length ?? 0);
