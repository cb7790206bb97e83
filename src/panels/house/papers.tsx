import { useState } from 'react';
import type { JobPaper } from '../../papers/papers.ts';
import type { PaperName } from '../../sheet/paper.ts';
import { useAppStore } from '../../state/store.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { usualPaper } from '../sheet-acts.ts';
import { showDialog } from '../ui.ts';
import { PAPER_NAMES, saveJobPaper } from './paper-acts.ts';

const KINDS = (Object.entries(PAPER_NAMES) as [JobPaper, string][]).map(([value, words]) => ({ value, words }));
const PAPERS = [
  { value: 'letter', words: 'Letter' },
  { value: 'a4', words: 'A4' },
] as const;

/** What is handed out or signed: looked at and printed, or saved as a drawing. */
export function Papers() {
  const usual = useAppStore((state) => usualPaper(state.plan));
  const [chosen, setChosen] = useState<PaperName | null>(null);
  const [which, setWhich] = useState<JobPaper>('notice');
  const paper = chosen ?? usual;
  return (
    <section className="papers" aria-labelledby="papers-heading">
      <h3 id="papers-heading">Papers</h3>
      <div className="fields">
        <div className="wide">
          <ChoiceField label="Which one" value={which} choices={KINDS} onCommit={setWhich} />
        </div>
        <ChoiceField label="Size" value={paper} choices={PAPERS} onCommit={setChosen} />
      </div>
      <button type="button" className="button button--main" onClick={() => showDialog({ kind: 'paper', paper, which })}>
        Look at the paper
      </button>
      <button type="button" className="button" onClick={() => void saveJobPaper(which, paper)}>
        Save the drawing (SVG)
      </button>
    </section>
  );
}
