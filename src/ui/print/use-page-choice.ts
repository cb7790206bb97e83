import { useState } from 'react';
import { usualPaper } from '../../commands/sheet-files.ts';
import type { Orientation, PageChoice, PaperName } from '../../report/paper.ts';
import { useAppStore } from '../../state/store.ts';

/** The paper that is chosen for some pages, and how it lies; `orientation` is null where it is left to the drawing. */
export function usePageChoice() {
  const usual = useAppStore((state) => usualPaper(state.plan));
  const [chosen, setPaper] = useState<PaperName | null>(null);
  const [orientation, setOrientation] = useState<Orientation | null>(null);
  const paper = chosen ?? usual;
  const choice: PageChoice = orientation ? { paper, orientation } : { paper };
  return { choice, orientation, setPaper, setOrientation };
}
