import { usePanels } from './panels.ts';

export const ROW_FIELDS = 'row-fields';

/** Opens the fields of a row in the panel of the selection, and focuses the first. */
export function openRowFields(): void {
  usePanels.setState({ rowOpen: true });
  requestAnimationFrame(() => document.querySelector<HTMLInputElement>(`#${ROW_FIELDS} input`)?.focus());
}
