import { useState } from 'react';
import { usualPaper } from '../../commands/sheet-files.ts';
import type { Orientation, PageChoice, PaperName } from '../../report/paper.ts';
import { useAppStore } from '../../state/store.ts';

/** Returns the chosen size and orientation of the paper, and their setters; `orientation` is null if the drawing decides. */
export function usePageChoice() {
  const usual = useAppStore((state) => usualPaper(state.plan));
  const [chosen, setPaper] = useState<PaperName | null>(null);
  const [orientation, setOrientation] = useState<Orientation | null>(null);
  const paper = chosen ?? usual;
  const choice: PageChoice = orientation ? { paper, orientation } : { paper };
  return { choice, orientation, setPaper, setOrientation };
}
