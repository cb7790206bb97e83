import { duplicatedItems } from '../../geometry/edit/duplicate.ts';
import { COPY_OFFSET } from './item-actions.ts';
import { selectLevel } from './selectors.ts';
import { useAppStore } from './store.ts';

/** Copies the selected items one foot to the right and down, as one step of history, and selects the copies. */
export function duplicateSelection(): void {
  const state = useAppStore.getState();
  if (state.selection.length === 0) return;
  const copies = duplicatedItems(state.plan, selectLevel(state).id, state.selection, COPY_OFFSET, COPY_OFFSET);
  state.run(() => copies);
  if (copies.ok) useAppStore.setState({ selection: copies.ids });
}
