import { checkedLevelEdit } from '../../geometry/edit/level.ts';
import { withItemsMoved } from '../../geometry/edit/move-items.ts';
import type { XY } from '../../geometry/plan/model.ts';
import { refuseLocked } from './locked-detectors.ts';
import { selectLevel } from './selectors.ts';
import { useAppStore } from './store.ts';

/** Moves what is selected, mm: one step of history. What is locked stays, and the message says so. */
export function moveSelected(by: XY): void {
  const state = useAppStore.getState();
  const { selection } = state;
  if (selection.length === 0 || refuseLocked(state, selection)) return;
  const { id } = selectLevel(state);
  state.run((plan) => checkedLevelEdit(plan, id, (level) => withItemsMoved(level, new Set(selection), by)));
}
