import { useEffect } from 'react';
import { isTyping } from '../editor/input/typing.ts';
import { useAppStore } from '../state/store.ts';
import { copied, paste, reachedSystem } from './clipboard.ts';
import { isPlanInView, usePanels } from './panels.ts';

/** The browser's keys for copy, cut and paste, wherever nothing is typed and no words of the page are marked. */
export function useClipboardKeys(): void {
  useEffect(() => {
    const ours = (event: ClipboardEvent) =>
      !event.defaultPrevented &&
      !isTyping(event.target) &&
      isPlanInView(usePanels.getState()) &&
      !document.querySelector('dialog[open]') &&
      !useAppStore.getState().menu;
    const onCopy = (event: ClipboardEvent) => {
      if (!ours(event) || document.getSelection()?.isCollapsed === false) return;
      const text = copied();
      if (!text) return;
      event.clipboardData?.setData('text/plain', text);
      event.preventDefault();
      reachedSystem();
      if (event.type === 'cut') useAppStore.getState().deleteSelection();
    };
    const onPaste = (event: ClipboardEvent) => {
      const data = event.clipboardData;
      // Pictures and files are somebody else's.
      if (!data || data.files.length > 0 || !ours(event)) return;
      event.preventDefault();
      paste(data.getData('text/plain'), null);
    };
    const listeners = [
      ['copy', onCopy],
      ['cut', onCopy],
      ['paste', onPaste],
    ] as const;
    for (const [type, listener] of listeners) window.addEventListener(type, listener);
    return () => {
      for (const [type, listener] of listeners) window.removeEventListener(type, listener);
    };
  }, []);
}
