import { pagesToPdf } from '../../report/pdf/pdf.ts';
import { fontFiles, withEmbeddedFont } from './fonts.ts';
import { rasterize } from './raster.ts';

export const PAGE_FORMATS = ['pdf', 'svg', 'png'] as const;
export type PageFormat = (typeof PAGE_FORMATS)[number];

/** A file to write. */
export interface OutputFile {
  readonly path: string;
  readonly bytes: Uint8Array | string;
}

export interface PagesToWrite {
  readonly pages: readonly string[];
  readonly title: string;
  /** ISO 8601 date of printing. */
  readonly date: string;
  /** Width of the pages, mm. */
  readonly width: number;
}

const PNG_DPI = 200;

/**
 * Returns the files of drawn pages. One PDF holds them all; of SVG and PNG there is a file for each page, the first at `path`, the
 * others with "-2", "-3", … before the ending. `lacking`: letters that the font of the pages does not have.
 */
export async function filesOfPages(
  path: string,
  format: PageFormat,
  { pages, title, date, width }: PagesToWrite,
): Promise<{ readonly files: readonly OutputFile[]; readonly lacking: readonly string[] }> {
  const pdf = await pagesToPdf(pages, { title, date, fonts: fontFiles() });
  if (format === 'pdf') return { files: [{ path, bytes: pdf.bytes }], lacking: pdf.lacking };
  const draw = (page: string) =>
    format === 'svg'
      ? withEmbeddedFont(page)
      : new Uint8Array(rasterize(page, Math.round((width * PNG_DPI) / 25.4)).png);
  return {
    files: pages.map((page, index) => ({ path: numbered(path, index), bytes: draw(page) })),
    lacking: pdf.lacking,
  };
}

function numbered(path: string, index: number): string {
  return index === 0 ? path : path.replace(/(\.\w+)$/, `-${index + 1}$1`);
}
