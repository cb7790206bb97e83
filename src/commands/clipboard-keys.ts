import { isTyping } from '../editor/input/typing.ts';
import { useAppStore } from '../state/store.ts';
import { copied, paste, reachedSystem } from './clipboard.ts';
import { isPlanInView, usePanels } from './panels.ts';

/** Listens to the browser's copy, cut and paste events while no field has the focus; copy and cut only if no text of the page is selected. */
export function startClipboardKeys(): void {
  window.addEventListener('copy', onCopy);
  window.addEventListener('cut', onCopy);
  window.addEventListener('paste', onPaste);
}

const isOurs = (event: ClipboardEvent) =>
  !event.defaultPrevented &&
  !isTyping(event.target) &&
  isPlanInView(usePanels.getState()) &&
  !document.querySelector('dialog[open]') &&
  !useAppStore.getState().menu;

function onCopy(event: ClipboardEvent): void {
  if (!isOurs(event) || document.getSelection()?.isCollapsed === false) return;
  const text = copied();
  if (!text) return;
  event.clipboardData?.setData('text/plain', text);
  event.preventDefault();
  reachedSystem();
  if (event.type === 'cut') useAppStore.getState().deleteSelection();
}

function onPaste(event: ClipboardEvent): void {
  const data = event.clipboardData;
  // Other listeners handle pictures and files.
  if (!data || data.files.length > 0 || !isOurs(event)) return;
  event.preventDefault();
  paste(data.getData('text/plain'), null);
}
