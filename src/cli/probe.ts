import { USUAL_DETECTOR } from '../../geometry/plan/items.ts';
import type { Level, Mm } from '../../geometry/plan/model.ts';
import type { Probe } from '../../geometry/region/types.ts';

/** A detector of the size of the level's first one at a height of its own. */
export function probeOf({ detectors: [first] }: Level, base: Mm): Probe {
  const { radius, tall } = first ?? USUAL_DETECTOR;
  return { base, radius, tall };
}
