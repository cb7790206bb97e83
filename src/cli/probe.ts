import { USUAL_DETECTOR } from '../../geometry/plan/items.ts';
import type { Level, Mm } from '../../geometry/plan/model.ts';
import type { Probe } from '../../geometry/region/types.ts';

/** Returns a detector the size of the level's first one, `base` mm above the floor. */
export function probeFor({ detectors: [first] }: Level, base: Mm): Probe {
  const { radius, tall } = first ?? USUAL_DETECTOR;
  return { base, radius, tall };
}
