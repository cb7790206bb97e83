import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { fontFiles, withEmbeddedFont } from '../../src/cli/paper/fonts.ts';
import { drawDocument } from '../../src/report/documents/draw-document.ts';
import { drawSheets } from '../../src/report/draw-sheets.ts';
import { sizeOfPage } from '../../src/report/paper.ts';
import { pagesToPdf } from '../../src/report/pdf/pdf.ts';
import { howMany, isLongRun } from '../helpers/how-many.ts';
import { drawnByPdfium } from '../helpers/pdfium.ts';
import { noticedDifference, type Pixels } from '../helpers/picture-difference.ts';
import { SAMPLE_NAMES, samplePlan } from '../helpers/sample-files.ts';
import { openPage } from './harness.ts';

const date = '2026-03-07';
/** px per inch, twice that of the hatches: PDFium repeats a cell after a whole number of px, whatever its size. */
const DPI = 192;
const MOST = 0.005;

/** Names of the samples whose pages are compared: all pages of all samples in a long run. */
const CASES = isLongRun ? SAMPLE_NAMES : (['03-crowded-utility'] as const);
const PAGES = howMany(1, 1000);

/** Returns the SVG as the browser draws it. */
async function drawnByBrowser(
  page: Page,
  svg: string,
  { width, height }: Pick<Pixels, 'width' | 'height'>,
): Promise<Pixels> {
  const sized = withEmbeddedFont(svg).replace(/ width="[^"]*" height="[^"]*"/, ` width="${width}" height="${height}"`);
  const base64 = await page.evaluate(
    async ({ sized, width, height }) => {
      const image = new Image();
      image.src = URL.createObjectURL(new Blob([sized], { type: 'image/svg+xml' }));
      await image.decode();
      const canvas = new OffscreenCanvas(width, height);
      const context = canvas.getContext('2d');
      if (!context) throw new Error('This browser draws no canvas.');
      context.drawImage(image, 0, 0, width, height);
      const { data } = context.getImageData(0, 0, width, height);
      let text = '';
      for (let i = 0; i < data.length; i += 8192) text += String.fromCharCode(...data.subarray(i, i + 8192));
      return btoa(text);
    },
    { sized, width, height },
  );
  return { width, height, data: Uint8Array.from(Buffer.from(base64, 'base64')) };
}

describe('the picture of the PDF beside that of the SVG in the browser', () => {
  it.each(CASES)('differs noticeably in at most 1 of 200 pixels: %s', async (name) => {
    const order = { plan: samplePlan(name), paper: 'letter', date } as const;
    const pages = [
      ...order.plan.levels.flatMap(({ id }) => drawSheets({ ...order, levelId: id })),
      ...drawDocument('report', order),
    ].slice(0, PAGES);
    const { bytes } = await pagesToPdf(pages, { title: name, date, fonts: fontFiles() });
    const { page } = await openPage();
    const shares: number[] = [];
    for (const [index, svg] of pages.entries()) {
      const { width, height, pixels } = await drawnByPdfium(bytes, index, DPI);
      const size = sizeOfPage(svg);
      expect(
        [width, height].map((px, i) => Math.abs(px - (([size.width, size.height][i] ?? 0) * DPI) / 25.4) < 1),
      ).toEqual([true, true]);
      shares.push(
        noticedDifference(await drawnByBrowser(page, svg, { width, height }), { width, height, data: pixels }),
      );
    }
    if (PAGES > 1) console.info(name, shares.map((share) => (share * 100).toFixed(3)).join(' '));
    expect(Math.max(...shares)).toBeLessThan(MOST);
  });
});
