import type { Level } from '../../../geometry/plan/model.ts';
import { openingRefusal } from '../../../geometry/words/refusal.ts';
import { store } from './hand.ts';

/** Why the openings of a level as a drag leaves it do not stand; empty when they do. */
export function openingsRefusal(level: Level): string {
  const unit = store().plan.display.length;
  for (const opening of level.openings) {
    const refusal = openingRefusal(level, opening, unit);
    if (refusal) return refusal;
  }
  return '';
}
