import { useState } from 'react';
import { showDialog } from '../../../commands/panels.ts';
import type { VisitDocument } from '../../../report/documents/draw-document.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { PageOrientationField, PaperField } from '../../print/paper-field.tsx';
import { DOCUMENT_NAMES, saveJobPaper } from '../../print/paper-files.ts';
import { canShareFiles, saveDocumentPdf, shareDocumentPdf } from '../../print/pdf-files.ts';
import { usePageChoice } from '../../print/use-page-choice.ts';
import './papers.css';

/** Documents to preview, print or save. */
export function Papers({ kinds }: { readonly kinds: readonly [VisitDocument, ...VisitDocument[]] }) {
  const [which, setWhich] = useState(kinds[0]);
  const { choice, orientation, setPaper, setOrientation } = usePageChoice();
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
        <PaperField label="Size" value={choice.paper} onCommit={setPaper} />
        <PageOrientationField label="Orientation" value={orientation} onCommit={setOrientation} />
      </div>
      <button
        type="button"
        className="button button--main"
        onClick={() => showDialog({ kind: 'paper', choice, which })}
      >
        Preview the document
      </button>
      <button type="button" className="button" onClick={() => void saveDocumentPdf(which, choice)}>
        Save it (PDF)
      </button>
      {canShareFiles() && (
        <button type="button" className="button" onClick={() => void shareDocumentPdf(which, choice)}>
          Share it
        </button>
      )}
      <button type="button" className="button" onClick={() => void saveJobPaper(which, choice)}>
        Save the drawing (SVG)
      </button>
    </section>
  );
}
