import type { Plan } from '../../../geometry/plan/model.ts';
import { type Ms, msOf } from './clock.ts';
import { kitWindow, leastExposure } from './exposure-limits.ts';
import { formatDuration } from './format-time.ts';

/** Returns the earliest pick-up after the least exposure of kit and profile; null while the start is not recorded. */
export function earliestPickUp(plan: Plan): Ms | null {
  const start = msOf(plan.visit.start);
  return start === null ? null : start + leastExposure(kitWindow(plan));
}

/** Returns the question to ask before a pick-up at `at` that is too early; empty if it is not. */
export function earlyPickUpQuestion(plan: Plan, at: Ms): string {
  const [start, earliest] = [msOf(plan.visit.start), earliestPickUp(plan)];
  if (start === null || earliest === null || at >= earliest) return '';
  const out = formatDuration(Math.max(0, at - start));
  return `The detectors have been in place for ${out}, and the least exposure is ${formatDuration(earliest - start)}: picked up now, the test is invalid.`;
}
