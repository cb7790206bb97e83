import { useState } from 'react';
import { showDialog } from '../../../commands/panels.ts';
import { usualPaper } from '../../../commands/sheet-files.ts';
import type { VisitDocument } from '../../../report/documents/draw-document.ts';
import type { PaperName } from '../../../report/paper.ts';
import { useAppStore } from '../../../state/store.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { PaperField } from '../../print/paper-field.tsx';
import { DOCUMENT_NAMES, saveJobPaper } from '../../print/paper-files.ts';
import { saveDocumentPdf } from '../../print/pdf-files.ts';
import './papers.css';

/** Documents to preview, print or save as a drawing. `kinds`: at least one. */
export function Papers({ kinds }: { readonly kinds: readonly [VisitDocument, ...VisitDocument[]] }) {
  const usual = useAppStore((state) => usualPaper(state.plan));
  const [chosen, setChosen] = useState<PaperName | null>(null);
  const [which, setWhich] = useState(kinds[0]);
  const paper = chosen ?? usual;
  return (
    <section className="papers" aria-labelledby="papers-heading">
      <h3 id="papers-heading">{kinds.length > 1 ? 'Documents' : DOCUMENT_NAMES[which]}</h3>
      <div className="fields">
        {kinds.length > 1 && (
          <div className="wide">
            <ChoiceField
              label="Which one"
              value={which}
              choices={kinds.map((value) => ({ value, words: DOCUMENT_NAMES[value] }))}
              onCommit={setWhich}
            />
          </div>
        )}
        <PaperField label="Size" value={paper} onCommit={setChosen} />
      </div>
      <button type="button" className="button button--main" onClick={() => showDialog({ kind: 'paper', paper, which })}>
        Preview the document
      </button>
      <button type="button" className="button" onClick={() => void saveDocumentPdf(which, paper)}>
        Save it (PDF)
      </button>
      <button type="button" className="button" onClick={() => void saveJobPaper(which, paper)}>
        Save the drawing (SVG)
      </button>
    </section>
  );
}
