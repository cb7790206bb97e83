import { DateTime } from 'luxon';
import type { Plan } from '../../geometry/plan/model.ts';
import type { Visit } from '../../geometry/plan/test-record.ts';
import { emptyPlan } from '../../geometry/planfile/empty.ts';
import type { TimingRule } from '../../src/protocol/timing/timing-check.ts';
import { timingReport } from '../../src/protocol/timing/timing-report.ts';

const ZONE = 'America/New_York';
/** Returns the RFC 3339 instant of a local time of the site in 2026: "3-7 18:00". */
export const at = (text: string): string => {
  const [date = '', time = ''] = text.split(' ');
  const [month, day] = date.split('-').map(Number);
  const [hour, minute] = time.split(':').map(Number);
  return (
    DateTime.fromObject({ year: 2026, month, day, hour, minute }, { zone: ZONE }).toISO({
      suppressMilliseconds: true,
    }) ?? ''
  );
};
export const NONE: Visit = { closedSince: null, mitigationOnSince: null, start: null, end: null };
export const planWith = (visit: Partial<Visit>, change: Partial<Plan> = {}): Plan => {
  const plan = emptyPlan();
  return { ...plan, site: { ...plan.site, timeZone: ZONE }, visit: { ...NONE, ...visit }, ...change };
};
export const verdictOf = (plan: Plan, rule: TimingRule) =>
  timingReport(plan).checks.find((check) => check.rule === rule)?.verdict;
export const kit = (minimumHours: number, maximumHours: number) => ({
  kit: { ...emptyPlan().kit, minimumHours, maximumHours },
});
