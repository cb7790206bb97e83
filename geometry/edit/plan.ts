import type { Plan, Site } from '../plan/model.ts';
import { checkedPlan, type EditResult } from './checked.ts';

/** Everything but the levels, which have edits of their own. */
export type PlanPatch = Partial<Omit<Plan, 'format' | 'version' | 'levels'>>;

/** Some of the plan's sections replaced, each as a whole. Refused where one makes no sense: an end before the start, say. */
export function withPlan(plan: Plan, patch: PlanPatch): EditResult {
  return checkedPlan(plan, { ...plan, ...patch });
}

/** Some values of the site changed. */
export function withSite(plan: Plan, patch: Partial<Site>): EditResult {
  return withPlan(plan, { site: { ...plan.site, ...patch } });
}
