/** Reads a PDF with PDFium, which is independent of pdf.js, as a second check of its text and its appearance. */
import { PDFiumLibrary } from '@hyzyla/pdfium';
import { sizeOfPage } from '../../src/report/paper.ts';

export interface SeenPage {
  /** Width and height in mm. */
  readonly width: number;
  readonly height: number;
  readonly text: string;
}
export interface DrawnPage {
  /** Width and height in px. */
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

/** Returns size and text of every page. Rejects if the file cannot be opened. */
export async function seenByPdfium(bytes: Uint8Array): Promise<readonly SeenPage[]> {
  return opened(bytes, async (document) =>
    [...document.pages()].map((page) => {
      const { originalWidth, originalHeight } = page.getOriginalSize();
      return { width: originalWidth * MM, height: originalHeight * MM, text: page.getText() };
    }),
  );
}

/** Returns a page as a picture. @param dpi px per inch */
export async function drawnByPdfium(bytes: Uint8Array, index: number, dpi: number): Promise<DrawnPage> {
  return opened(bytes, async (document) => {
    const page = document.getPage(index);
    const { originalWidth, originalHeight } = page.getOriginalSize();
    // The size is given in px: with a scale, the library first truncates the page to whole points.
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
 * Returns a drawn page cut to whole px, by less than one on either side: two readers stretch half a px in different ways, which moves half
 * of the texts by a px. @param dpi px per inch
 */
export function inWholePixels(svg: string, dpi: number): string {
  const { width, height } = sizeOfPage(svg);
  const [across, down] = [width, height].map((mm) => (Math.floor((mm * dpi) / 25.4 + 0.001) * 25.4) / dpi);
  return svg.replace(
    /width="[^"]*" height="[^"]*" viewBox="[^"]*"/,
    `width="${across}mm" height="${down}mm" viewBox="0 0 ${across} ${down}"`,
  );
}
