import { useEffect, useState } from 'react';
import type { PaperName } from '../sheet/paper.ts';
import { sheetDrawings, troubleOf } from './sheet-acts.ts';

type Preview =
  | { readonly state: 'drawing' }
  | { readonly state: 'drawn'; readonly addresses: readonly string[] }
  | { readonly state: 'failed'; readonly why: string };

/** The sheets as they will be saved, one under another. */
export function SheetPreview({ paper, showTracing }: { readonly paper: PaperName; readonly showTracing: boolean }) {
  const [preview, setPreview] = useState<Preview>({ state: 'drawing' });
  useEffect(() => {
    let gone = false;
    let addresses: readonly string[] = [];
    sheetDrawings(paper, showTracing).then(
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
  }, [paper, showTracing]);
  if (preview.state === 'drawing') return <p role="status">Drawing the sheet…</p>;
  if (preview.state === 'failed') return <p role="alert">{preview.why}</p>;
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reachable by keyboard
    <section className="previews" aria-label="Sheets" tabIndex={0}>
      {preview.addresses.map((address, index) => (
        <img key={address} src={address} alt={`Sheet ${index + 1} of ${preview.addresses.length}`} />
      ))}
    </section>
  );
}
