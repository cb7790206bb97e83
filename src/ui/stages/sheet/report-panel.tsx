import { showDialog } from '../../../commands/panels.ts';
import { requiredItems } from '../../../protocol/required-items/item-states.ts';
import { useAppStore } from '../../../state/store.ts';
import { OrientationField, PaperField } from '../../print/paper-field.tsx';
import { canShareFiles, saveDocumentPdf, saveReportData, shareDocumentPdf } from '../../print/pdf-files.ts';
import { usePageChoice } from '../../print/use-page-choice.ts';
import { Cautions } from '../../verdict/cautions.tsx';
import { ReportFields } from './report-fields.tsx';
import '../house/papers.css';

/** The report of the test: what it needs, what is missing, and its files. */
export function ReportPanel() {
  const plan = useAppStore((state) => state.plan);
  const { choice, orientation, setPaper, setOrientation } = usePageChoice();
  const missing = requiredItems(plan).filter(({ state }) => state === 'missing');
  return (
    <section className="papers" aria-labelledby="report-heading">
      <h3 id="report-heading">Report of the test</h3>
      <p className="small">
        Validity of the test, the results, the next step, and what they rest on, with the plan of each level. It says
        what is missing.
      </p>
      <ReportFields plan={plan} />
      <details className="group">
        <summary>
          Required by published lists:{' '}
          <span className="soft">{missing.length === 0 ? 'all there' : `${missing.length} missing`}</span>
        </summary>
        <ul>
          {missing.map(({ item, lacking }) => (
            <li key={item.id}>
              {item.name}: {lacking.join(', ')}
            </li>
          ))}
        </ul>
        <p className="small soft">Local codes decide what a report must hold. The report names each list.</p>
      </details>
      <PaperField label="Paper of the report" value={choice.paper} onCommit={setPaper} />
      <OrientationField label="Orientation of the report" value={orientation} onCommit={setOrientation} />
      <button
        type="button"
        className="button button--main"
        onClick={() => showDialog({ kind: 'paper', choice, which: 'report' })}
      >
        Preview the report
      </button>
      <button type="button" className="button" onClick={() => void saveDocumentPdf('report', choice)}>
        Save the report (PDF)
      </button>
      {canShareFiles() && (
        <button type="button" className="button" onClick={() => void shareDocumentPdf('report', choice)}>
          Share the report
        </button>
      )}
      <button type="button" className="button" onClick={() => void saveReportData('csv')}>
        Save the results as a table (CSV)
      </button>
      <button type="button" className="button" onClick={() => void saveReportData('json')}>
        Save the report for other programs (JSON)
      </button>
      <Cautions />
    </section>
  );
}
