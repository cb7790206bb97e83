import type { Plan } from '../../../geometry/plan/model.ts';
import { HOUR, instantText, type Ms } from './clock.ts';
import { hoursAreKnown, isLongTerm, kitWindow, labDaysAreKnown, pickUpWindow } from './exposure-limits.ts';
import { laboratoryBy } from './laboratory.ts';
import { CLOSED_BEFORE, MITIGATION_BEFORE } from './limits.ts';
import type { TimingCheck } from './timing-check.ts';
import { timingChecks } from './timing-checks.ts';
import { visitTimes } from './visit-times.ts';

/** The times of a plan's visit. Instants are RFC 3339 in the site's zone; null if the start or the limit of the kit is not known. */
export interface TimingReport {
  readonly exposureHours: number | null;
  /** Whether the pick-up, and all that depends on it, is only planned. */
  readonly planned: boolean;
  readonly earliestEnd: string | null;
  readonly latestEnd: string | null;
  /** When the building must be closed: 12 h before the start. Null for a long-term test, which needs no closed-building conditions. */
  readonly closeBy: string | null;
  /** When a mitigation system must be running. */
  readonly mitigationOnBy: string | null;
  /** When the laboratory must have the detectors; null while the pick-up or its days are not known, and for a continuous monitor. */
  readonly laboratoryBy: string | null;
  readonly checks: readonly TimingCheck[];
}

/** Returns the times of a plan's visit with the check of every limit. */
export function timingReport(plan: Plan): TimingReport {
  const { start, startPlanned, end, planned } = visitTimes(plan);
  const { kit, site, visit } = plan;
  const isSent = visit.device !== 'monitor' && labDaysAreKnown(plan);
  const text = (at: Ms | null) => (at === null ? null : instantText(at, site.timeZone));
  const before = (lead: Ms) => (start === null ? null : start - lead);
  const window = start === null || !hoursAreKnown(plan) ? null : pickUpWindow(start, kitWindow(plan));
  const isOpen = start === null || end === null || (startPlanned && !planned);
  const exposure = isOpen ? null : end - start;
  return {
    exposureHours: exposure === null ? null : exposure / HOUR,
    planned,
    earliestEnd: text(window?.from ?? null),
    latestEnd: text(window?.to ?? null),
    closeBy: text(isLongTerm(plan) ? null : before(CLOSED_BEFORE.duration)),
    mitigationOnBy: text(before(isLongTerm(plan) ? 0 : MITIGATION_BEFORE.duration)),
    laboratoryBy: text(end === null || !isSent ? null : laboratoryBy(end, kit.labDays)),
    checks: timingChecks(plan),
  };
}

/** Rules that make results invalid when broken. */
export const DECIDING_RULES: readonly TimingCheck['rule'][] = ['exposure', 'closed-building', 'mitigation-system'];

/** Returns whether a check leaves the validity of a test unknown because of the delivery to the laboratory. */
export const isLaboratoryIssue = ({ rule, verdict }: TimingCheck): boolean =>
  rule === 'laboratory' && (verdict === 'blocked' || verdict === 'unknown');
