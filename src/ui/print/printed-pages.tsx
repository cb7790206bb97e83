import { useEffect } from 'react';
import { createPortal } from 'react-dom';
import type { PageSize } from '../../report/paper.ts';
import './printed-pages.css';

interface PrintedPagesProps {
  readonly page: PageSize;
  /** URLs of the drawings, one per page. */
  readonly addresses: readonly string[];
}

/**
 * Pages that are printed in place of the app while this is mounted, by a button or by the browser's command: each drawing on its own page,
 * in its true size. Rendered outside the app's root element, because scrollers and overlays do not print as pages.
 */
export function PrintedPages({ page, addresses }: PrintedPagesProps) {
  const [width, height] = [`${page.width}mm`, `${page.height}mm`];
  useEffect(() => withPageRule(`@page{size:${width} ${height};margin:0}`), [width, height]);
  return createPortal(
    <div className="printed">
      {addresses.map((address, index) => (
        <img
          key={address}
          src={address}
          alt={`Sheet ${index + 1} of ${addresses.length}`}
          style={{ inlineSize: width, blockSize: height }}
        />
      ))}
    </div>,
    document.body,
  );
}

/** Adds a rule for printed pages. Returns the function that removes it. Not an element: the content security policy allows no inline style. */
function withPageRule(rule: string): () => void {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(rule);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  return () => {
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((each) => each !== sheet);
  };
}

/** Opens the browser's print dialog once every page is drawn. Rejects if a page cannot be drawn. */
export async function printPages(): Promise<void> {
  await Promise.all([...document.querySelectorAll<HTMLImageElement>('.printed img')].map((image) => image.decode()));
  window.print();
}
