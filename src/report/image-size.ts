/** Size of a picture of sheets, and the places of the sheets in it. Lengths in px unless they say mm. */
import type { PageSize } from './paper.ts';

/** Sharp enough for the smallest type, and small enough to send, px per inch. */
const USUAL_DPI = 200;
/** Limits of browsers on tablets, px: a larger canvas stays blank without an error. */
const LONGEST_SIDE = 8192;
const MOST_PIXELS = 16e6;

export interface ImageSize {
  readonly width: number;
  readonly height: number;
  /** px per inch of paper: the resolution wanted, lowered to the limits. */
  readonly dpi: number;
  /** Upper left corners of the sheets. */
  readonly corners: readonly { readonly x: number; readonly y: number }[];
  /** Size of one sheet. */
  readonly sheetWidth: number;
  readonly sheetHeight: number;
}

/**
 * Returns the size of a picture of all sheets, in the number of columns that leaves the sheets largest, within the limits of a canvas.
 * @param count 1 or more
 */
export function imageSize(page: PageSize, count: number, wantedDpi: number = USUAL_DPI): ImageSize {
  const layouts = Array.from({ length: count }, (_, i) => layout(page, count, i + 1, wantedDpi));
  return layouts.reduce((best, each) => (each.dpi > best.dpi ? each : best));
}

function layout(page: PageSize, count: number, columns: number, wantedDpi: number): ImageSize {
  const rows = Math.ceil(count / columns);
  const [inchesWide, inchesHigh] = [page.width / 25.4, page.height / 25.4];
  const most = Math.min(
    LONGEST_SIDE / (inchesWide * columns),
    LONGEST_SIDE / (inchesHigh * rows),
    Math.sqrt(MOST_PIXELS / (inchesWide * columns * inchesHigh * rows)),
  );
  const dpi = Math.min(wantedDpi, most);
  const [sheetWidth, sheetHeight] = [Math.floor(inchesWide * dpi), Math.floor(inchesHigh * dpi)];
  return {
    width: sheetWidth * columns,
    height: sheetHeight * rows,
    dpi,
    corners: Array.from({ length: count }, (_, i) => ({
      x: (i % columns) * sheetWidth,
      y: Math.floor(i / columns) * sheetHeight,
    })),
    sheetWidth,
    sheetHeight,
  };
}
