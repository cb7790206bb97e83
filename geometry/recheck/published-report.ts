import type { Computed } from './compare.ts';
import type { Verdict } from './types.ts';

/** Returns the report with the verdict to publish: unknown where the two computations differ. */
export function withAgreedVerdict<Report extends { readonly verdict: Verdict }>(
  report: Report,
  computed: Computed | null,
): Report {
  return computed?.how === 'differs' ? { ...report, verdict: 'unknown' } : report;
}
