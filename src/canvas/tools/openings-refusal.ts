import type { Level } from '../../../geometry/plan/model.ts';
import { openingRefusal } from '../../../geometry/words/refusal.ts';
import { store } from './hand.ts';

/** Why an opening that a drag moved, or whose wall it moved, does not stand; empty when all do. What was wrong before is left alone. */
export function openingsRefusal(before: Level, after: Level): string {
  const unit = store().plan.display.length;
  const kept = new Set<unknown>([...before.openings, ...before.walls]);
  for (const opening of after.openings) {
    const wall = after.walls.find(({ id }) => id === opening.wall);
    if (kept.has(opening) && kept.has(wall)) continue;
    const refusal = openingRefusal(after, opening, unit);
    if (refusal) return refusal;
  }
  return '';
}
