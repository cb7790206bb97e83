import { type ItemRow, itemsInRow } from '../../../geometry/edit/row.ts';
import { selectLevel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';

/** Copies the selection in a row, as one step of history, and selects the copies too. Returns why it was refused, in words; empty if it was done. */
export function setOutRow(row: ItemRow): string {
  const state = useAppStore.getState();
  const copies = itemsInRow(state.plan, selectLevel(state).id, state.selection, row);
  const refusal = state.run(() => copies);
  if (copies.ok && !refusal) state.select([...state.selection, ...copies.ids]);
  return refusal;
}
