import { useEffect } from 'react';
import { createPortal } from 'react-dom';
import type { PageSize } from '../../report/paper.ts';
import './printed-pages.css';

interface PrintedPagesProps {
  readonly page: PageSize;
  /** Addresses of the drawings, one a page. */
  readonly addresses: readonly string[];
}

/**
 * What goes to the printer in place of the app while it is here, by a button or by the browser's own command: each drawing on a page
 * of its own, as large as it is. Outside the app's own element, since nothing that scrolls or lies over the page prints as pages.
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

/** Adds a rule for printed pages. Returns what takes it away again. Not as an element: the page's policy allows no inline style. */
function withPageRule(rule: string): () => void {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync(rule);
  document.adoptedStyleSheets = [...document.adoptedStyleSheets, sheet];
  return () => {
    document.adoptedStyleSheets = document.adoptedStyleSheets.filter((each) => each !== sheet);
  };
}

/** Opens the browser's own print window once every page is drawn. Rejects where one cannot be drawn. */
export async function printPages(): Promise<void> {
  await Promise.all([...document.querySelectorAll<HTMLImageElement>('.printed img')].map((image) => image.decode()));
  window.print();
}
