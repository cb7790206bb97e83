import { useEffect } from 'react';
import { isTyping } from '../editor/typing.ts';
import { isIdleLetter } from '../state/letter-keys.ts';
import { saveFile } from './open-and-save.ts';
import { showDialog, usePanels } from './panels.ts';

interface PageKey {
  /** As the list shows it. */
  readonly keys: string;
  readonly does: string;
  readonly fits: (event: KeyboardEvent) => boolean;
  readonly run: () => void;
}

const control = (event: KeyboardEvent, key: string): boolean =>
  (event.ctrlKey || event.metaKey) && !event.shiftKey && !event.altKey && event.key.toLowerCase() === key;

/** One table drives the keys of the page and the list that tells of them. */
export const PAGE_KEYS: readonly PageKey[] = [
  {
    keys: 'Ctrl + S',
    does: 'Save the plan as a file',
    fits: (event) => control(event, 's'),
    run: () => void saveFile(),
  },
  {
    keys: 'Ctrl + O',
    does: 'Open a plan file',
    fits: (event) => control(event, 'o'),
    run: () => document.getElementById(PICKER)?.click(),
  },
  {
    keys: '?',
    does: 'This list',
    fits: (event) => event.key === '?' && !isTyping(event.target),
    run: () => showDialog({ kind: 'keys' }),
  },
];

export const PICKER = 'plan-file-picker';

export function usePageKeys(): void {
  useEffect(() => {
    const onKey = (event: KeyboardEvent) => {
      if (event.defaultPrevented || usePanels.getState().dialog || isIdleLetter(event)) return;
      const key = PAGE_KEYS.find(({ fits }) => fits(event));
      if (!key) return;
      event.preventDefault();
      key.run();
    };
    window.addEventListener('keydown', onKey);
    return () => window.removeEventListener('keydown', onKey);
  }, []);
}
