import type { RuleId } from '../rules/types.ts';
import type { Check, DetectorReport } from './types.ts';

/** A clearance is worth a line on the drawing while it has less than this share of its limit to spare. */
const NEAR_SHARE = 0.5;

/**
 * The distances that a tester would tape for this detector: of each rule the tightest subject, where it is not clear or near
 * its limit; and always the one with the least to spare. Only checks that have a place on the drawing. Tightest first.
 */
export function nearLimit(report: DetectorReport): readonly Check[] {
  const tightest = new Map<RuleId, Check>();
  for (const check of report.checks) {
    if (!check.witness || check.margin === null) continue;
    const known = tightest.get(check.rule);
    if (!known || (known.margin ?? 0) > check.margin) tightest.set(check.rule, check);
  }
  const ordered = [...tightest.values()].sort((a, b) => (a.margin ?? 0) - (b.margin ?? 0));
  return ordered.filter((check, index) => index === 0 || check.verdict !== 'clear' || isNear(check));
}

function isNear({ margin, required }: Check): boolean {
  return margin !== null && required !== null && margin < required * NEAR_SHARE;
}
