import { useEffect, useState } from 'react';
import { counted } from '../../../geometry/messages/index.ts';
import { sheetDrawings, troubleOf } from '../../commands/sheet-files.ts';
import type { VisitDocument } from '../../report/documents/draw-document.ts';
import { isPortrait, PAPERS, type PageChoice, type PageSize, sizeOfPage } from '../../report/paper.ts';
import { useAppStore } from '../../state/store.ts';
import { jobPaperDrawings } from './paper-files.ts';
import { PrintedPages, printPages } from './printed-pages.tsx';

type Preview =
  | { readonly state: 'drawing' }
  | { readonly state: 'drawn'; readonly addresses: readonly string[]; readonly page: PageSize }
  | { readonly state: 'failed'; readonly why: string };

/** Preview of the sheets as they will be saved, one below another. */
export function SheetPreview({ choice, showTracing }: { readonly choice: PageChoice; readonly showTracing: boolean }) {
  return <Previews key={choice.paper} choice={choice} draw={() => sheetDrawings(choice, showTracing)} />;
}

/** Preview of the pages of a document as they will be saved. */
export function PaperPreview({ choice, which }: { readonly choice: PageChoice; readonly which: VisitDocument }) {
  return <Previews key={which} choice={choice} draw={() => jobPaperDrawings(which, choice)} />;
}

interface PreviewsProps {
  readonly choice: PageChoice;
  readonly draw: () => Promise<readonly string[]>;
}

/** Draws once, when it is mounted: the preview does not change while it is shown. */
function Previews({ choice, draw }: PreviewsProps) {
  const [preview, setPreview] = useState<Preview>({ state: 'drawing' });
  // biome-ignore lint/correctness/useExhaustiveDependencies: drawn once
  useEffect(() => {
    let gone = false;
    let addresses: readonly string[] = [];
    draw().then(
      (sheets) => {
        if (gone) return;
        addresses = sheets.map((svg) => URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' })));
        setPreview({ state: 'drawn', addresses, page: sizeOfPage(sheets[0] ?? '') });
      },
      (error: unknown) => setPreview({ state: 'failed', why: troubleOf(error) }),
    );
    return () => {
      gone = true;
      for (const address of addresses) URL.revokeObjectURL(address);
    };
  }, []);
  if (preview.state === 'drawing') return <p role="status">Drawing the plan sheet…</p>;
  if (preview.state === 'failed') return <p role="alert">{preview.why}</p>;
  const { addresses, page } = preview;
  return (
    <>
      <div className="preview-buttons">
        <button type="button" className="button button--main" onClick={() => void print()}>
          Print
        </button>
        <p className="small">
          {counted(addresses.length, 'page')}, {PAPERS[choice.paper].words},{' '}
          {isPortrait(page) ? 'portrait' : 'landscape'}. At 100% it has its true size.
        </p>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
      <section className="previews" aria-label="Sheets" tabIndex={0}>
        {addresses.map((address, index) => (
          <img key={address} src={address} alt={`Sheet ${index + 1} of ${addresses.length}`} />
        ))}
      </section>
      <PrintedPages page={page} addresses={addresses} />
    </>
  );
}

async function print(): Promise<void> {
  await printPages().catch(() => {
    const { say } = useAppStore.getState();
    say('A page could not be drawn, so nothing was printed. Save the drawing (SVG) and print that.');
  });
}
