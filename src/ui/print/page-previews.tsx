import { useEffect, useState } from 'react';
import { counted } from '../../../geometry/messages/index.ts';
import { sheetDrawings, troubleOf } from '../../commands/sheet-files.ts';
import type { VisitDocument } from '../../report/documents/draw-document.ts';
import { PAPERS, type PaperName } from '../../report/paper.ts';
import { useAppStore } from '../../state/store.ts';
import { jobPaperDrawings } from './paper-files.ts';
import { PrintedPages, printPages } from './printed-pages.tsx';

type Preview =
  | { readonly state: 'drawing' }
  | { readonly state: 'drawn'; readonly addresses: readonly string[] }
  | { readonly state: 'failed'; readonly why: string };

/** The sheets as they will be saved, one under another. */
export function SheetPreview({ paper, showTracing }: { readonly paper: PaperName; readonly showTracing: boolean }) {
  return <Previews key={paper} paper={paper} draw={() => sheetDrawings(paper, showTracing)} />;
}

/** The pages of a paper of the job as they will be saved. */
export function PaperPreview({ paper, which }: { readonly paper: PaperName; readonly which: VisitDocument }) {
  return <Previews key={which} paper={paper} draw={() => jobPaperDrawings(which, paper)} />;
}

interface PreviewsProps {
  readonly paper: PaperName;
  readonly draw: () => Promise<readonly string[]>;
}

/** Draws once, when it comes to the page: what it shows does not change while it is looked at. */
function Previews({ paper, draw }: PreviewsProps) {
  const [preview, setPreview] = useState<Preview>({ state: 'drawing' });
  // biome-ignore lint/correctness/useExhaustiveDependencies: drawn once
  useEffect(() => {
    let gone = false;
    let addresses: readonly string[] = [];
    draw().then(
      (sheets) => {
        if (gone) return;
        addresses = sheets.map((svg) => URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' })));
        setPreview({ state: 'drawn', addresses });
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
  const { addresses } = preview;
  return (
    <>
      <div className="preview-buttons">
        <button type="button" className="button button--main" onClick={() => void print()}>
          Print
        </button>
        <p className="small">
          {counted(addresses.length, 'page')}, {PAPERS[paper].words}, the long side across. At 100 % it has its true
          size.
        </p>
      </div>
      {/* biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard */}
      <section className="previews" aria-label="Sheets" tabIndex={0}>
        {addresses.map((address, index) => (
          <img key={address} src={address} alt={`Sheet ${index + 1} of ${addresses.length}`} />
        ))}
      </section>
      <PrintedPages paper={paper} addresses={addresses} />
    </>
  );
}

async function print(): Promise<void> {
  await printPages().catch(() => {
    const { say } = useAppStore.getState();
    say('A page could not be drawn, so nothing was printed. Save the drawing (SVG) and print that.');
  });
}
