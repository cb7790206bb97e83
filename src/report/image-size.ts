/** How large a picture of sheets may be, and where the sheets stand in it. Lengths in px unless they say mm. */
import type { PageSize } from './paper.ts';

/** Sharp enough for the smallest type, and small enough to send: px to the inch. */
const USUAL_DPI = 200;
/** What browsers on tablets still draw: beyond it a canvas stays blank without a word. */
const LONGEST_SIDE = 8192;
const MOST_PIXELS = 16e6;

export interface ImageSize {
  readonly width: number;
  readonly height: number;
  /** px to the inch of paper, after what the limits leave of the wish. */
  readonly dpi: number;
  /** Upper left corners of the sheets. */
  readonly corners: readonly { readonly x: number; readonly y: number }[];
  /** Of one sheet. */
  readonly sheetWidth: number;
  readonly sheetHeight: number;
}

/**
 * Sheets below one another, in as many rows of two or more as leave them largest; never beyond what a canvas holds.
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
