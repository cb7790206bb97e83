import { useEffect } from 'react';
import { selectLevel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';

/** Shades the sheet for the height of the selected detector, so that white floor is where it may be placed. */
export function useHeightOfSelected(): void {
  const base = useAppStore((state) => {
    const chosen = selectLevel(state).detectors.find(({ id }) => state.selection.includes(id));
    return chosen?.base ?? null;
  });
  const setSitHeight = useAppStore((state) => state.setSitHeight);
  useEffect(() => {
    if (base !== null) setSitHeight(base);
  }, [base, setSitHeight]);
}
