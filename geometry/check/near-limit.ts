import type { RuleId } from '../rules/types.ts';
import type { Check, DetectorReport } from './types.ts';

/** A clearance is drawn while its margin is less than this fraction of its limit. */
const NEAR_SHARE = 0.5;

/**
 * Returns the distances that a tester would tape for this detector: for each rule the subject with the smallest
 * margin, if it is not clear or near its limit; and always the smallest margin of all. Only checks that have a place
 * on the drawing. Smallest margin first.
 */
export function nearLimit(report: DetectorReport): readonly Check[] {
  const tightest = new Map<RuleId, Check>();
  for (const check of report.checks) {
    if (!check.witness || check.margin === null) continue;
    const existing = tightest.get(check.rule);
    if (!existing || (existing.margin ?? 0) > check.margin) tightest.set(check.rule, check);
  }
  const ordered = [...tightest.values()].sort((a, b) => (a.margin ?? 0) - (b.margin ?? 0));
  return ordered.filter((check, index) => index === 0 || check.verdict !== 'clear' || isNear(check));
}

function isNear({ margin, required }: Check): boolean {
  return margin !== null && required !== null && margin < required * NEAR_SHARE;
}
