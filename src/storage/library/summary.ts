import type { Plan } from '../../../geometry/plan/model.ts';
import { visitFacts } from '../../protocol/timing/visit-facts.ts';
import { type Described, describedPlan } from './described.ts';

/** Returns what a summary says of a plan. Judges the whole test, so it is not part of the start (`plans.ts`). */
export const summaryOf = (plan: Plan): Described => ({ ...describedPlan(plan), visit: visitFacts(plan) });
