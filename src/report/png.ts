/** The marked-up plan as a PNG picture, made in the browser. Every failure is an Error whose message is for people. */
import type { Plan } from '../../geometry/plan/model.ts';
import type { Computed } from '../../geometry/recheck/compare.ts';
import type { Probe } from '../../geometry/region/types.ts';
import { drawSheets } from './draw-sheets.ts';
import { withEmbeddedFont } from './embedded-font.ts';
import { type ImageSize, imageSize } from './image-size.ts';
import { type PageChoice, type PageSize, sizeOfPage } from './paper.ts';
import { withDensity } from './png-density.ts';
import { COLOR, EDGE_MM } from './style.ts';
import { num } from './svg.ts';

export interface ImageOptions extends PageChoice {
  /** Date of printing, ISO 8601 or as it is to be printed. */
  readonly date: string;
  /** px per inch; left out, 200. Lowered if the picture would be larger than a browser can draw. */
  readonly dpi?: number;
  /** One sheet by its number from 1, or all in one picture; left out, all, so that nothing is missing. */
  readonly sheet?: number | 'all';
  /** The detector that the allowed area is drawn for; left out, the level's first detector. */
  readonly probe?: Probe;
  /** Whether the picture that the level was traced from is drawn faintly; left out, it is not. */
  readonly showTracing?: boolean;
  /** Outcome of the second computation by detector id. */
  readonly computed?: ReadonlyMap<string, Computed>;
}

/** Returns a PNG of the sheets of one level. Rejects with a sentence for people; never resolves to an empty picture. */
export async function exportPlanImage(plan: Plan, levelId: string, options: ImageOptions): Promise<Blob> {
  const sheets = chosenSheets(plan, levelId, options);
  return imageOfSheets(sheets, imageSize(sizeOfPage(sheets[0] ?? ''), sheets.length, options.dpi));
}

/** Returns a PNG of one page, its size in mm. It must have a frame at the usual edge. Rejects as above. */
export async function exportPageImage(svg: string, page: PageSize, dpi = 150): Promise<Blob> {
  const [width, height] = [Math.floor((page.width * dpi) / 25.4), Math.floor((page.height * dpi) / 25.4)];
  const corners = [{ x: 0, y: 0 }];
  return imageOfSheets([svg], { width, height, dpi, corners, sheetWidth: width, sheetHeight: height });
}

async function imageOfSheets(sheets: readonly string[], size: ImageSize): Promise<Blob> {
  const canvas = document.createElement('canvas');
  try {
    canvas.width = size.width;
    canvas.height = size.height;
    const context = canvas.getContext('2d');
    if (!context) throw tooLarge(size);
    context.fillStyle = COLOR.paper;
    context.fillRect(0, 0, size.width, size.height);
    for (const [i, svg] of sheets.entries()) await drawSheetAt(context, svg, size, i);
    return await blobOf(canvas, size);
  } finally {
    // Some browsers keep the memory of a canvas until it is made small.
    canvas.width = 0;
    canvas.height = 0;
  }
}

function chosenSheets(
  plan: Plan,
  levelId: string,
  { sheet = 'all', showTracing = false, computed = new Map(), ...options }: ImageOptions,
): readonly string[] {
  if (!plan.levels.some(({ id }) => id === levelId))
    throw new Error('The level that was to be drawn is not in the plan.');
  const sheets = drawSheets({ ...options, plan, levelId, showTracing, computed });
  if (sheet === 'all') return sheets;
  const chosen = sheets[sheet - 1];
  if (!chosen) throw new Error(`There is no sheet ${sheet}: the level has ${sheets.length}.`);
  return [chosen];
}

async function drawSheetAt(
  context: CanvasRenderingContext2D,
  svg: string,
  size: ImageSize,
  index: number,
): Promise<void> {
  const corner = size.corners[index] ?? { x: 0, y: 0 };
  const image = await imageOf(await withEmbeddedFont(inPixels(svg, size)));
  context.drawImage(image, corner.x, corner.y, size.sheetWidth, size.sheetHeight);
  if (!hasFrame(context, corner, size)) throw tooLarge(size);
}

/** The document sized in whole px, with its hatches at the same places as on paper. */
function inPixels(svg: string, { dpi, sheetWidth, sheetHeight }: ImageSize): string {
  const mm = (px: number) => num((px * 25.4) / dpi);
  return svg.replace(
    /width="[^"]*" height="[^"]*" viewBox="[^"]*"/,
    `width="${sheetWidth}" height="${sheetHeight}" viewBox="0 0 ${mm(sheetWidth)} ${mm(sheetHeight)}"`,
  );
}

async function imageOf(svg: string): Promise<HTMLImageElement> {
  const url = URL.createObjectURL(new Blob([svg], { type: 'image/svg+xml' }));
  try {
    const image = new Image();
    image.src = url;
    await image.decode();
    return image;
  } catch {
    throw new Error(
      'This browser could not draw the sheet, so no picture was made. Try again, or print the sheet instead.',
    );
  } finally {
    URL.revokeObjectURL(url);
  }
}

/** Whether the frame of the sheet is drawn: a canvas that is too large for the browser stays blank without an error. */
function hasFrame(
  context: CanvasRenderingContext2D,
  { x, y }: { x: number; y: number },
  { dpi, sheetHeight }: ImageSize,
): boolean {
  const left = Math.round(x + (EDGE_MM * dpi) / 25.4);
  const [red = 255] = context.getImageData(left, y + Math.round(sheetHeight / 2), 1, 1).data;
  return red < 128;
}

async function blobOf(canvas: HTMLCanvasElement, size: ImageSize): Promise<Blob> {
  const blob = await new Promise<Blob | null>((resolve) => canvas.toBlob(resolve, 'image/png'));
  if (!blob || blob.size === 0) throw tooLarge(size);
  return new Blob([withDensity(new Uint8Array(await blob.arrayBuffer()), size.dpi)], { type: blob.type });
}

function tooLarge({ width, height }: ImageSize): Error {
  return new Error(
    `This browser made no picture of ${width} by ${height} pixels. Close other pages or choose a single sheet, and try again.`,
  );
}
