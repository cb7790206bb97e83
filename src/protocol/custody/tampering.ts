import type { Plan } from '../../../geometry/plan/model.ts';
import { type Ms, msOf } from '../timing/clock.ts';

/** Returns why "no evidence of tampering" cannot be recorded yet; empty once the detectors are picked up. */
export function whyTamperingWaits({ visit }: Plan, now: Ms): string {
  const end = msOf(visit.end);
  if (end !== null && end <= now) return '';
  return 'That there is no evidence of tampering is recorded after the pick-up: until then a detector can still be moved or opened.';
}
