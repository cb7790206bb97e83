import { useState } from 'react';
import { CAUTIONS, counted } from '../../../geometry/messages/index.ts';
import { describeSources } from '../../../geometry/messages/sources.ts';
import { showDialog } from '../../commands/panels.ts';
import { describeCopies } from '../../protocol/quality/describe-quality.ts';
import { OWN_LIMITS_FROM, RUN_OF_WARNINGS, SHARE_LIMITS } from '../../protocol/quality/requirements.ts';
import { useModal } from '../hooks/use-modal.ts';
import { usePaperForPrint } from '../print/use-paper-for-print.ts';
import { ChartView } from './chart-view.tsx';
import { Checks } from './checks.tsx';
import { Duties } from './duties.tsx';
import { type OtherPlansState, useBook } from './use-book.ts';
import './quality.css';

/** The quality book over all plans in this browser: completed and required checks, control charts, blanks and spikes. */
export function QualityDialog() {
  const { ref, shut, events } = useModal(() => showDialog(null));
  usePaperForPrint();
  const { kept, book, charts } = useBook();
  const [message, setMessage] = useState('');
  return (
    <dialog ref={ref} className="book" aria-labelledby="book-heading" {...events}>
      <header className="book__head">
        <h2 id="book-heading">Quality book</h2>
        <p className="book__said" role="status">
          {message || statusWords(kept)}
        </p>
        <div className="buttons book__acts">
          <button type="button" className="button" onClick={() => window.print()}>
            Print
          </button>
          <button type="button" className="button" onClick={shut}>
            Back to the plan
          </button>
        </div>
      </header>
      <div className="book__body">
        {kept.state === 'failed' && (
          <p role="alert">
            The plans kept in this browser could not be read: what follows is the open plan alone. Close the book and
            try again.
          </p>
        )}
        {kept.state === 'read' && kept.kept.unread > 0 && (
          <p role="alert">{counted(kept.kept.unread, 'kept plan')} could not be read. They are not counted.</p>
        )}
        {book.copies > 0 && <p>{describeCopies(book)}</p>}
        <Duties book={book} say={setMessage} />
        <section aria-label="Control charts" className="book__part">
          <h3>Control charts</h3>
          {charts.map((chart) => (
            <ChartView key={`${chart.device} ${chart.band.from}`} chart={chart} say={setMessage} />
          ))}
          <details className="small soft">
            <summary>Sources of the lines and run rules</summary>
            <p>{RULE_SOURCES}</p>
          </details>
        </section>
        <Checks checks={book.checks} say={setMessage} />
        <p className="small soft">{CAUTIONS.join(' ')}</p>
      </div>
    </dialog>
  );
}

const sources = [...SHARE_LIMITS.sources, ...OWN_LIMITS_FROM.sources, ...RUN_OF_WARNINGS.sources];
const RULE_SOURCES = describeSources(sources);

function statusWords(kept: OtherPlansState): string {
  if (kept.state === 'reading') return 'Reading the plans in this browser…';
  if (kept.state === 'failed') return 'The open plan only.';
  return `The open plan and ${counted(kept.kept.plans.length, 'other plan')} kept in this browser.`;
}
