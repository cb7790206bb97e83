import type { LevelModel } from '../level/types.ts';
import type { Detector, Mm, Plan, XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';
import { objectGrounds } from './ground.ts';

/** Spacing of the positions tried on a top, mm: an inch. */
const STEP: Mm = 25.4;

/**
 * Returns the nearest position on the object that supports a detector at which every limit is met with `spare` mm to
 * spare, with the whole footprint on the object and away from its edges; null if there is none. Tries positions an inch
 * apart around the current one.
 */
export function spotOnCarrier(
  plan: Plan,
  model: LevelModel,
  detector: Detector,
  carrierId: string,
  spare: Mm,
): XY | null {
  const { at, radius, tall } = detector;
  let best: XY | null = null;
  let least = Number.POSITIVE_INFINITY;
  for (const { on, extent, inside, field } of objectGrounds(plan, model, { radius, tall }, 'off-edge')) {
    if (on?.id !== carrierId) continue;
    for (const x of stepsAbout(at[0], extent.minX, extent.maxX)) {
      for (const y of stepsAbout(at[1], extent.minY, extent.maxY)) {
        const far = distance(at, [x, y]);
        if (far >= least || inside(x, y) < 0 || field.margin(x, y) < spare) continue;
        least = far;
        best = [x, y];
      }
    }
  }
  return best;
}

/** Returns whole steps from a value, in both directions, within an interval. */
function stepsAbout(value: Mm, from: Mm, to: Mm): readonly Mm[] {
  const first = Math.ceil((from - value) / STEP);
  const count = Math.max(0, Math.floor((to - value) / STEP) - first + 1);
  return Array.from({ length: count }, (_, k) => value + (first + k) * STEP);
}
