import { useEffect } from 'react';
import { SHEET_ID } from '../../canvas/open-menu.ts';
import { useMenu } from '../../state/menu.ts';
import { useAppStore } from '../../state/store.ts';
import { isTyping } from '../palette-keys.ts';
import { useUi } from '../ui.ts';
import { isKeyOf, placeOf } from './act.ts';
import { rememberTools } from './again.ts';
import { doAct } from './do-act.ts';
import { ACTS } from './table.ts';

/** The browser's own keys: they come as events of the clipboard. */
const CLIPBOARD = ['copy', 'cut', 'paste'];

/** Listens for the keys of the acts, while nothing is typed and nothing stands over the page. */
export function useActKeys(): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.defaultPrevented || useUi.getState().dialog || useMenu.getState().ask) return;
      if (isTyping(event.target)) {
        if (event.key === 'Escape') leaveField(event.target as HTMLElement);
        return;
      }
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
