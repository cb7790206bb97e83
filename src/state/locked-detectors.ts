import { standsOn } from '../../geometry/check/support.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { placedDetectors } from '../protocol/custody/placed.ts';
import type { AppState } from './app-state.ts';
import { selectLevelAtRest } from './selectors.ts';

/** Returns the ids of detectors that a move of these items would move although they are placed in the house and not unlocked. */
export function lockedAmong(state: AppState, ids: readonly string[]): readonly string[] {
  const { plan, unlocked } = state;
  const placed = placedDetectors(plan);
  if (placed.length === 0) return [];
  const { detectors, objects } = selectLevelAtRest(state);
  const moved = new Set(ids);
  const carriers = objects.filter(({ id }) => moved.has(id));
  return detectors
    .filter((one) => moved.has(one.id) || carriers.some((object) => standsOn(one, object)))
    .map(({ id }) => id)
    .filter((id) => placed.includes(id) && !unlocked.includes(id));
}

/** Says that detectors among these are locked, and offers to unlock them. Returns the words; "" where none is locked. */
export function refuseLocked(state: AppState, ids: readonly string[]): string {
  const locked = lockedAmong(state, ids);
  if (locked.length === 0) return '';
  const words = `${labelsOf(state.plan, locked)} ${locked.length > 1 ? 'are' : 'is'} placed in the house, and locked here.`;
  state.say(words, { kind: 'unlock', label: 'Unlock to move', levelId: selectLevelAtRest(state).id, ids: locked });
  return words;
}

function labelsOf({ levels }: Plan, ids: readonly string[]): string {
  const detectors = levels.flatMap((level) => level.detectors);
  return ids.map((id) => detectors.find((each) => each.id === id)?.label || 'The detector').join(' and ');
}
