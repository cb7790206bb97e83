/** Reads a PDF with PDFium, which shares nothing with pdf.js: a second opinion on what the file says and how it looks. */
import { PDFiumLibrary } from '@hyzyla/pdfium';
import { sizeOfPage } from '../../src/report/paper.ts';

export interface SeenPage {
  /** mm. */
  readonly width: number;
  readonly height: number;
  readonly text: string;
}
export interface DrawnPage {
  /** px. */
  readonly width: number;
  readonly height: number;
  /** RGBA of each pixel. */
  readonly pixels: Uint8Array;
}
const MM = 25.4 / 72;

let library: Promise<PDFiumLibrary> | undefined;

async function opened<T>(bytes: Uint8Array, use: (document: Document) => Promise<T>): Promise<T> {
  library ??= PDFiumLibrary.init();
  const document = await (await library).loadDocument(bytes);
  try {
    return await use(document);
  } finally {
    document.destroy();
  }
}
type Document = Awaited<ReturnType<PDFiumLibrary['loadDocument']>>;

/** Returns size and text of every page. Rejects where the file cannot be opened. */
export async function seenByPdfium(bytes: Uint8Array): Promise<readonly SeenPage[]> {
  return opened(bytes, async (document) =>
    [...document.pages()].map((page) => {
      const { originalWidth, originalHeight } = page.getOriginalSize();
      return { width: originalWidth * MM, height: originalHeight * MM, text: page.getText() };
    }),
  );
}

/** Returns a page as a picture. @param dpi px to the inch */
export async function drawnByPdfium(bytes: Uint8Array, index: number, dpi: number): Promise<DrawnPage> {
  return opened(bytes, async (document) => {
    const page = document.getPage(index);
    const { originalWidth, originalHeight } = page.getOriginalSize();
    // In px: given a scale, the library cuts the page down to whole points first.
    const [across, down] = [originalWidth, originalHeight].map((points) => Math.round((points * dpi) / 72));
    const { width, height, data } = await page.render({
      scale: 1,
      width: across as number,
      height: down as number,
      render: 'bitmap',
    });
    return { width, height, pixels: new Uint8Array(data) };
  });
}

/**
 * Returns a drawn page cut to whole px, less than one on either side: where a page has half a px more, two readers stretch it in two
 * ways, and half of its texts stand a px apart. @param dpi px to the inch
 */
export function inWholePixels(svg: string, dpi: number): string {
  const { width, height } = sizeOfPage(svg);
  const [across, down] = [width, height].map((mm) => (Math.floor((mm * dpi) / 25.4 + 0.001) * 25.4) / dpi);
  return svg.replace(
    /width="[^"]*" height="[^"]*" viewBox="[^"]*"/,
    `width="${across}mm" height="${down}mm" viewBox="0 0 ${across} ${down}"`,
  );
}
