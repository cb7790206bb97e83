import { create } from 'zustand';
import { itemsInRow, type Row } from '../../geometry/edit/index.ts';
import { selectLevel } from '../state/selectors.ts';
import { useAppStore } from '../state/store.ts';

/** The fields begin with the last row that was set out. Registers every 6 ft: common practice, no published source. */
const FIRST_ROW: Row = { more: 3, spacing: 1828.8, direction: 0 };

/** Whether the fields of a row are open, and their values. */
export const useRow = create<{ readonly open: boolean; readonly row: Row }>()(() => ({ open: false, row: FIRST_ROW }));

export const ROW_FIELDS = 'row-fields';

/** Opens the fields of a row, in the panel of what is selected, and focuses the first. */
export function openRowFields(): void {
  useRow.setState({ open: true });
  requestAnimationFrame(() => document.querySelector<HTMLInputElement>(`#${ROW_FIELDS} input`)?.focus());
}

/** Copies the selection in a row, as one step of history, and selects the copies with it. Returns why not, in words. */
export function setOutRow(row: Row): string {
  const state = useAppStore.getState();
  const copies = itemsInRow(state.plan, selectLevel(state).id, state.selection, row);
  const refusal = state.run(() => copies);
  if (copies.ok && !refusal) state.select([...state.selection, ...copies.ids]);
  return refusal;
}
