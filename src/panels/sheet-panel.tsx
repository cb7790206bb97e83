import { useState } from 'react';
import type { PaperName } from '../sheet/paper.ts';
import { useAppStore } from '../state/store.ts';
import { ChoiceField } from './fields/choice-field.tsx';
import { saveDrawings, savePicture, usualPaper } from './sheet-acts.ts';
import { showDialog } from './ui.ts';

const PAPERS = [
  { value: 'letter', words: 'Letter' },
  { value: 'a4', words: 'A4' },
] as const;

/** The end of the job: the marked-up sheet, to be looked at and handed over. */
export function SheetPanel() {
  const usual = useAppStore((state) => usualPaper(state.plan));
  const [chosen, setChosen] = useState<PaperName | null>(null);
  const paper = chosen ?? usual;
  return (
    <>
      <p className="small">
        The level in view with its measures, what each rule takes away, the detectors, every check, the sources and the
        title block. It reads in black and white.
      </p>
      <ChoiceField label="Paper" value={paper} choices={PAPERS} onCommit={setChosen} />
      <button type="button" className="button button--main" onClick={() => showDialog({ kind: 'sheet', paper })}>
        Look at the sheet
      </button>
      <button type="button" className="button" onClick={() => void savePicture(paper)}>
        Save the picture (PNG)
      </button>
      <button type="button" className="button" onClick={() => void saveDrawings(paper)}>
        Save the drawing (SVG)
      </button>
    </>
  );
}
