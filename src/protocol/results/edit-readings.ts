import type { Plan } from '../../../geometry/plan/model.ts';
import type { Reading } from '../../../geometry/plan/test-record.ts';

/** Returns the plan with `reading` as the only result of its detector, at its former index or at the end. */
export function withReading(plan: Plan, reading: Reading): Plan {
  const place = plan.readings.findIndex(({ detector }) => detector === reading.detector);
  if (place < 0) return { ...plan, readings: [...plan.readings, reading] };
  const others = plan.readings.map((each, index) => (index === place ? reading : each));
  return {
    ...plan,
    readings: others.filter((each, index) => index === place || each.detector !== reading.detector),
  };
}

/** Returns the plan without results of a detector. */
export const withoutReading = (plan: Plan, detector: string): Plan => ({
  ...plan,
  readings: plan.readings.filter((each) => each.detector !== detector),
});
