import type { LevelModel } from '../../geometry/level/types.ts';
import { type Spot, type SunSpan, sunHoursSteps } from '../../geometry/sun/sun-hours.ts';
import type { SunTimes } from '../../geometry/sun/times.ts';

/** Time in one go, ms: half a frame. */
const BUDGET_MS = 8;

/** Resolves to when direct sun through an opening comes near to a spot; null when it was given up meanwhile. */
export async function sunHours(
  model: LevelModel,
  times: SunTimes,
  opening: string,
  spot: Spot,
  isWanted: () => boolean,
): Promise<readonly SunSpan[] | null> {
  const steps = sunHoursSteps(model, times, opening, spot);
  while (isWanted()) {
    const until = performance.now() + BUDGET_MS;
    while (performance.now() < until) {
      const { done, value } = steps.next();
      if (done) return value;
    }
    await new Promise((go) => setTimeout(go, 0));
  }
  return null;
}
