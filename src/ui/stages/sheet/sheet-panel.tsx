import { useState } from 'react';
import { showDialog } from '../../../commands/panels.ts';
import { saveDrawings, savePicture } from '../../../commands/sheet-files.ts';
import { selectLevel } from '../../../state/selectors.ts';
import { useAppStore } from '../../../state/store.ts';
import { OrientationField, PaperField } from '../../print/paper-field.tsx';
import { canShareFiles, saveSheetPdf, shareSheetPdf } from '../../print/pdf-files.ts';
import { usePageChoice } from '../../print/use-page-choice.ts';
import { Parts } from '../parts.tsx';
import { ReportPanel } from './report-panel.tsx';

/** The marked-up sheet and the report. */
export function SheetPanel() {
  return <Parts fields={<SheetPart />} outcome={<ReportPanel />} />;
}

/** The marked-up sheet: preview, print and files. */
function SheetPart() {
  const { choice, orientation, setPaper, setOrientation } = usePageChoice();
  const hasTracing = useAppStore((state) => selectLevel(state).tracing !== undefined);
  const [wanted, setWanted] = useState(false);
  const showTracing = hasTracing && wanted;
  return (
    <>
      <p className="small">
        The level in view with its measures, what each rule takes away, the detectors, every check, the sources and the
        title block. It reads in black and white.
      </p>
      <PaperField label="Paper" value={choice.paper} onCommit={setPaper} />
      <OrientationField label="Orientation" value={orientation} onCommit={setOrientation} />
      {hasTracing && (
        <label className="tick">
          <input type="checkbox" checked={wanted} onChange={(event) => setWanted(event.currentTarget.checked)} />
          Show the picture that it was drawn over, faintly
        </label>
      )}
      <button
        type="button"
        className="button button--main"
        onClick={() => showDialog({ kind: 'sheet', choice, showTracing })}
      >
        Preview the plan sheet
      </button>
      <button type="button" className="button" onClick={() => void saveSheetPdf(choice, showTracing)}>
        Save the sheets (PDF)
      </button>
      {canShareFiles() && (
        <button type="button" className="button" onClick={() => void shareSheetPdf(choice, showTracing)}>
          Share the sheets
        </button>
      )}
      <button type="button" className="button" onClick={() => void savePicture(choice, showTracing)}>
        Save the picture (PNG)
      </button>
      <button type="button" className="button" onClick={() => void saveDrawings(choice, showTracing)}>
        Save the drawing (SVG)
      </button>
    </>
  );
}
