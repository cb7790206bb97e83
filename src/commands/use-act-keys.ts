import { useEffect } from 'react';
import { SHEET_ID } from '../editor/open-menu.ts';
import { isTyping } from '../editor/typing.ts';
import { isIdleLetter } from '../state/letter-keys.ts';
import { useMenu } from '../state/menu.ts';
import { useAppStore } from '../state/store.ts';
import { isKeyOf, placeOf } from './command.ts';
import { showDialog, usePanels } from './panels.ts';
import { rememberTools } from './repeat.ts';
import { doAct } from './run-command.ts';
import { ACTS } from './table.ts';

/** The browser's own keys: they come as events of the clipboard. */
const CLIPBOARD = ['copy', 'cut', 'paste'];

/** Listens for the keys of the acts, while nothing is typed and nothing stands over the page. */
export function useActKeys(): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      const isOver = document.querySelector('dialog[open]') !== null;
      // What is still on its way to the page can be given up too.
      if (event.key === 'Escape' && !isOver && usePanels.getState().dialog) showDialog(null);
      if (event.defaultPrevented || isOver || useMenu.getState().ask) return;
      if (isTyping(event.target)) {
        if (event.key === 'Escape') leaveField(event.target as HTMLElement);
        return;
      }
      if (isIdleLetter(event)) return;
      const { selection } = useAppStore.getState();
      const place = placeOf(useAppStore.getState(), selection, null);
      const act = ACTS.find((each) => !CLIPBOARD.includes(each.id) && isKeyOf(each, event) && each.applies(place));
      if (!act) return;
      event.preventDefault();
      doAct(act, selection, null);
    };
    const forget = rememberTools();
    window.addEventListener('keydown', onKey);
    return () => {
      forget();
      window.removeEventListener('keydown', onKey);
    };
  }, []);
}

/** A field has put its old value back by now: the keyboard goes back to the sheet. Later, so that the field has drawn itself. */
function leaveField(field: HTMLElement): void {
  if (field.closest('dialog')) return;
  setTimeout(() => {
    field.blur();
    document.getElementById(SHEET_ID)?.focus({ preventScroll: true });
  });
}
