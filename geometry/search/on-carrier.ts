import type { LevelModel } from '../level/types.ts';
import type { Detector, Mm, Plan, XY } from '../plan/model.ts';
import { distance } from '../plane/point.ts';
import { objectGrounds } from './ground.ts';

/** Places on a top are tried so far from each other, mm: an inch. */
const STEP: Mm = 25.4;

/**
 * The nearest spot on the object that carries a detector where every distance is met with `spare` mm more, its whole foot on it
 * and away from the edges; null where there is none. Among spots an inch apart about where it stands.
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

/** Whole steps from a value, both ways, within an interval. */
function stepsAbout(value: Mm, from: Mm, to: Mm): readonly Mm[] {
  const first = Math.ceil((from - value) / STEP);
  const count = Math.max(0, Math.floor((to - value) / STEP) - first + 1);
  return Array.from({ length: count }, (_, k) => value + (first + k) * STEP);
}
