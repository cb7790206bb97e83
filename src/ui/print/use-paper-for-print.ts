import { useEffect } from 'react';
import { useAppStore } from '../../state/store.ts';
import { applyTheme } from '../../theme/theme.ts';

/** What is printed has the colors of paper, whatever the screen shows: a browser leaves grounds out, and light ink with them. */
export function usePaperForPrint(): void {
  useEffect(() => {
    const before = () => applyTheme('paper');
    const after = () => applyTheme(useAppStore.getState().theme);
    window.addEventListener('beforeprint', before);
    window.addEventListener('afterprint', after);
    return () => {
      window.removeEventListener('beforeprint', before);
      window.removeEventListener('afterprint', after);
    };
  }, []);
}
