import type { Computed } from './compare.ts';
import type { Verdict } from './types.ts';

/** The report with the verdict that may leave the tool: unknown where the two computations differ. */
export function settled<Report extends { readonly verdict: Verdict }>(
  report: Report,
  computed: Computed | null,
): Report {
  return computed?.how === 'differs' ? { ...report, verdict: 'unknown' } : report;
}
