import { create } from 'zustand';
import { itemsInRow, type Row } from '../../geometry/edit/index.ts';
import { selectLevel } from '../state/selectors.ts';
import { useAppStore } from '../state/store.ts';

/** The row that was set out last stands in the fields for the next one. Registers every 6 ft: common practice, no published source. */
const FIRST_ROW: Row = { more: 3, spacing: 1828.8, direction: 0 };

/** Whether the numbers of a row are asked for, and what they are. */
export const useRow = create<{ readonly open: boolean; readonly row: Row }>()(() => ({ open: false, row: FIRST_ROW }));

export const ROW_FIELDS = 'row-fields';

/** Opens the numbers of a row, in the panel of what is selected, and puts the keyboard there. */
export function askForRow(): void {
  useRow.setState({ open: true });
  requestAnimationFrame(() => document.querySelector<HTMLInputElement>(`#${ROW_FIELDS} input`)?.focus());
}

/** What is selected copied in a row, as one step; the copies are selected with what they were made from. Returns why not. */
export function setOutRow(row: Row): string {
  const state = useAppStore.getState();
  const copies = itemsInRow(state.plan, selectLevel(state).id, state.selection, row);
  const refusal = state.run(() => copies);
  if (copies.ok && !refusal) state.select([...state.selection, ...copies.ids]);
  return refusal;
}
