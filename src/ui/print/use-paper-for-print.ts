import { useEffect } from 'react';
import { useAppStore } from '../../state/store.ts';
import { applyTheme } from '../../theme/theme.ts';

/** Prints in the paper theme: browsers omit backgrounds in print, so that the light text of a dark theme would be unreadable. */
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
