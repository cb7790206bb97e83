import type { Level, Plan, Site } from '../plan/model.ts';
import { checkedPlan, type EditResult } from './checked.ts';

/** New values of sections, except the levels, which have their own edits. */
export type PlanPatch = Partial<Omit<Plan, 'format' | 'version' | 'levels'>>;

/** Replaces some of the plan's sections as a whole. Refused if one is invalid, for example an end before the start. */
export function withPlan(plan: Plan, patch: PlanPatch): EditResult {
  return checkedPlan(plan, { ...plan, ...patch });
}

/** Changes some values of the site. */
export function withSite(plan: Plan, patch: Partial<Site>): EditResult {
  return withPlan(plan, { site: { ...plan.site, ...patch } });
}

/** Returns the plan without pictures under its levels, small enough for mail. The same plan if there are none. */
export function withoutTracings(plan: Plan): Plan {
  if (!plan.levels.some(({ tracing }) => tracing)) return plan;
  return { ...plan, levels: plan.levels.map(({ tracing: _, ...level }): Level => level) };
}
