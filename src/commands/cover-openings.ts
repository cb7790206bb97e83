import type { Opening } from '../../geometry/plan/model.ts';
import { useAppStore } from '../state/store.ts';

/** Marks openings as kept covered during the test: one step of history. */
export function coverOpenings(ids: readonly string[]): void {
  const covered = (opening: Opening): Opening =>
    ids.includes(opening.id) ? { ...opening, shade: 'covered' } : opening;
  useAppStore.getState().run((plan) => ({
    ...plan,
    levels: plan.levels.map((level) =>
      level.openings.some(({ id }) => ids.includes(id)) ? { ...level, openings: level.openings.map(covered) } : level,
    ),
  }));
}
