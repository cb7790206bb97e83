import type { Plan } from '../../../geometry/plan/model.ts';
import { type Ms, msOf } from '../timing/clock.ts';

/** Returns why questions about the house wait for the pick-up, since an earlier answer does not cover the rest of the test; empty after it. */
export function whyAnswersWait({ visit }: Plan, now: Ms): string {
  const end = msOf(visit.end);
  return end !== null && end <= now ? '' : 'Record the pick-up first: an answer from before it is asked again.';
}
