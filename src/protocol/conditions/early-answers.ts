import type { Plan } from '../../../geometry/plan/model.ts';
import { type Ms, msOf } from '../timing/clock.ts';

/** Returns why answers about the house wait for the pick-up; empty once it is recorded: none from before it speaks for the time until it. */
export function whyAnswersWait({ visit }: Plan, now: Ms): string {
  const end = msOf(visit.end);
  return end !== null && end <= now ? '' : 'Record the pick-up first: an answer from before it is asked again.';
}
