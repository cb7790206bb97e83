import type { Plan } from '../../../geometry/plan/model.ts';
import { sizeOfPage } from '../../report/paper.ts';
import { pagesToPdf } from '../../report/pdf/pdf.ts';
import { fontFiles, withEmbeddedFont } from './fonts.ts';
import type { OutputFile } from './output-file.ts';
import { rasterize } from './raster.ts';

export const PAGE_FORMATS = ['pdf', 'svg', 'png'] as const;

const PNG_DPI = 200;

/**
 * Returns the files of drawn pages: one PDF with all of them, or an SVG or PNG file for each page, the first at `path`, the others with
 * "-2", "-3", … before the ending. `lacking`: letters that the font of the pages does not have.
 */
export async function filesOfPages(
  { path, format }: { readonly path: string; readonly format: string },
  pages: readonly string[],
  { plan, date }: { readonly plan: Plan; readonly date: string },
): Promise<{ readonly files: readonly OutputFile[]; readonly lacking: readonly string[] }> {
  const title = plan.title || 'Plan without a title';
  const pdf = await pagesToPdf(pages, { title, date, fonts: fontFiles() });
  if (format === 'pdf') return { files: [{ path, bytes: pdf.bytes }], lacking: pdf.lacking };
  const draw = (page: string) => {
    const width = Math.round((sizeOfPage(page).width * PNG_DPI) / 25.4);
    return format === 'svg' ? withEmbeddedFont(page) : rasterize(page, width).png;
  };
  return {
    files: pages.map((page, index) => ({ path: numbered(path, index), bytes: draw(page) })),
    lacking: pdf.lacking,
  };
}

function numbered(path: string, index: number): string {
  return index === 0 ? path : path.replace(/(\.\w+)$/, `-${index + 1}$1`);
}
