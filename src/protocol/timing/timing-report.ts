import type { Plan } from '../../../geometry/plan/model.ts';
import { HOUR, instantText, type Ms } from './clock.ts';
import { isLongTerm, kitWindow, pickUpWindow } from './exposure-window.ts';
import { laboratoryBy } from './laboratory.ts';
import { CLOSED_BEFORE, MITIGATION_BEFORE } from './limits.ts';
import type { TimingCheck } from './timing-check.ts';
import { timingChecks } from './timing-checks.ts';
import { visitTimes } from './visit-times.ts';

/** The times of a plan's visit. Instants in the site's zone, RFC 3339; null where the start is not known. */
export interface TimingReport {
  readonly exposureHours: number | null;
  /** Whether the pick-up is only planned: what hangs on it is as planned. */
  readonly planned: boolean;
  readonly earliestEnd: string | null;
  readonly latestEnd: string | null;
  /** When the house must be closed: 12 h before the start, however long the test. Null for a long-term test, which needs no closed house. */
  readonly closeBy: string | null;
  /** When a mitigation system must run. */
  readonly mitigationOnBy: string | null;
  /** When the laboratory must have it; null while the pick-up is not known, and for a monitor. */
  readonly laboratoryBy: string | null;
  readonly checks: readonly TimingCheck[];
}

export function timingReport(plan: Plan): TimingReport {
  const { start, end, planned } = visitTimes(plan);
  const { kit, site, visit } = plan;
  const text = (at: Ms | null) => (at === null ? null : instantText(at, site.timeZone));
  const before = (lead: Ms) => (start === null ? null : start - lead);
  const window = start === null ? null : pickUpWindow(start, kitWindow(plan));
  const exposure = start === null || end === null ? null : end - start;
  return {
    exposureHours: exposure === null ? null : exposure / HOUR,
    planned,
    earliestEnd: text(window?.from ?? null),
    latestEnd: text(window?.to ?? null),
    closeBy: text(isLongTerm(plan) ? null : before(CLOSED_BEFORE.duration)),
    mitigationOnBy: text(before(isLongTerm(plan) ? 0 : MITIGATION_BEFORE.duration)),
    laboratoryBy: text(end === null || visit.device === 'monitor' ? null : laboratoryBy(end, kit.labDays)),
    checks: timingChecks(plan),
  };
}

/** The rules that a test stands and falls with: broken, its results are not evaluated. */
export const DECIDING_RULES: readonly TimingCheck['rule'][] = ['exposure', 'closed-building', 'mitigation-system'];

/** Whether the way to the laboratory leaves the standing of a test open. */
export const isLaboratoryIssue = ({ rule, verdict }: TimingCheck): boolean =>
  rule === 'laboratory' && (verdict === 'blocked' || verdict === 'unknown');
