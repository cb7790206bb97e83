import type { Plan } from '../../../geometry/plan/model.ts';
import { type TimingCheck, timingChecks, visitTimes } from './checks.ts';
import { HOUR, instantText, type Ms } from './clock.ts';
import { laboratoryBy } from './laboratory.ts';
import { CLOSED_BEFORE, MITIGATION_BEFORE, SHORT_TEST } from './limits.ts';
import { pickUpWindow } from './pick-ups.ts';

/** The times of a plan's visit. Instants in the site's zone, RFC 3339; null where the start is not known. */
export interface TimingReport {
  readonly exposureHours: number | null;
  readonly earliestEnd: string | null;
  readonly latestEnd: string | null;
  /** When the house must be closed: 12 h before a test of less than 96 h, and at the start of a longer one. */
  readonly closeBy: string | null;
  /** When a mitigation system must run. */
  readonly mitigationOnBy: string | null;
  /** When the laboratory must have it; null while the pick-up is not known, and for a monitor. */
  readonly laboratoryBy: string | null;
  readonly checks: readonly TimingCheck[];
}

export function timingReport(plan: Plan): TimingReport {
  const { start, end } = visitTimes(plan);
  const { kit, site, visit } = plan;
  const text = (at: Ms | null) => (at === null ? null : instantText(at, site.timeZone));
  const before = (lead: Ms) => (start === null ? null : start - lead);
  const window = start === null ? null : pickUpWindow(start, kit);
  const exposure = start === null || end === null ? null : end - start;
  const lead = exposure !== null && exposure >= SHORT_TEST.duration ? 0 : CLOSED_BEFORE.duration;
  return {
    exposureHours: exposure === null ? null : exposure / HOUR,
    earliestEnd: text(window?.from ?? null),
    latestEnd: text(window?.to ?? null),
    closeBy: text(before(lead)),
    mitigationOnBy: text(before(MITIGATION_BEFORE.duration)),
    laboratoryBy: text(end === null || visit.device === 'monitor' ? null : laboratoryBy(end, kit.labDays)),
    checks: timingChecks(plan),
  };
}

/** The rules that a test stands and falls with: broken, its results are not evaluated. */
export const STANDS_WITH: readonly TimingCheck['rule'][] = ['exposure', 'closed-building', 'mitigation-system'];

/** Whether the way to the laboratory leaves the standing of a test open. */
export const isLaboratoryDoubt = ({ rule, verdict }: TimingCheck): boolean =>
  rule === 'laboratory' && (verdict === 'blocked' || verdict === 'unknown');
