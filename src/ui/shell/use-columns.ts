import { useEffect } from 'react';
import { foldAll, isPhonePage, SMALL_PAGE, unfold, unfoldFirst, usePanels } from '../../commands/panels.ts';
import type { AppState } from '../../state/app-state.ts';
import { isGestureUnderWay, selectLevel } from '../../state/selectors.ts';
import { useAppStore } from '../../state/store.ts';

/**
 * On a page with room for one column, opens the verdict column when a detector is selected; at first, the verdict column if the level has
 * detectors, else the job column. On a phone a column covers the sheet: both are folded when a tool is chosen.
 */
export function useColumns(): void {
  useEffect(() => {
    const small = window.matchMedia(SMALL_PAGE);
    const settle = () => {
      if (!small.matches) usePanels.setState({ jobFolded: false, sideFolded: false });
      else unfoldFirst(selectLevel(useAppStore.getState()).detectors.length > 0 ? 'side' : 'job');
    };
    if (small.matches) settle();
    small.addEventListener('change', settle);
    let due = false;
    const stop = useAppStore.subscribe((state, before) => {
      const chosen = chosenDetector(state);
      if (chosen !== chosenDetector(before)) due = chosen !== null;
      const takesTool = state.tool !== before.tool && state.tool.kind !== 'select';
      const takesFrame = state.tracingFrameOpen && !before.tracingFrameOpen;
      if ((takesTool || takesFrame) && isPhonePage()) foldAll();
      // A press that selects may start a drag, during which the sheet must not move.
      if (due) queueMicrotask(openWhenAtRest);
    });
    const openWhenAtRest = () => {
      // During a gesture the sheet keeps its width.
      if (!due || isGestureUnderWay(useAppStore.getState())) return;
      due = false;
      if (small.matches && !isPhonePage()) unfold('side');
    };
    return () => {
      small.removeEventListener('change', settle);
      stop();
    };
  }, []);
}

function chosenDetector(state: AppState): string | null {
  const [id] = state.selection;
  return selectLevel(state).detectors.some((detector) => detector.id === id) ? (id ?? null) : null;
}
