import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { fontFiles } from '../../src/cli/paper/fonts.ts';
import { drawSheet } from '../../src/report/draw-sheets.ts';
import { pagesToPdf } from '../../src/report/pdf/pdf.ts';
import { someOf } from '../helpers/how-many.ts';
import { drawnByPdfium } from '../helpers/pdfium.ts';
import { noticedDifference } from '../helpers/picture-difference.ts';
import { samplePlan } from '../helpers/sample-files.ts';
import { textsWithOtherInk } from '../helpers/text-ink.ts';
import { bundleScript } from './bundle-script.ts';
import { imagePixel, openPage, pngSize } from './harness.ts';

interface Made {
  readonly base64: string;
  readonly type: string;
  readonly error: string;
}

/** Runs the export in the page. Returns the error's message if it rejects. */
async function exported(page: Page, sample: string, level: string, options: Record<string, unknown>): Promise<Made> {
  const plan = JSON.parse(readFileSync(`samples/${sample}.plan.json`, 'utf8'));
  return page.evaluate(
    async ({ plan, level, options }) => {
      const { Sheet } = window as unknown as {
        Sheet: { exportPlanImage: (...args: readonly unknown[]) => Promise<Blob> };
      };
      try {
        const blob = await Sheet.exportPlanImage(plan, level, options);
        const bytes = new Uint8Array(await blob.arrayBuffer());
        let text = '';
        for (let i = 0; i < bytes.length; i += 8192) text += String.fromCharCode(...bytes.subarray(i, i + 8192));
        return { base64: btoa(text), type: blob.type, error: '' };
      } catch (error) {
        return { base64: '', type: '', error: String((error as Error).message) };
      }
    },
    { plan, level, options },
  );
}

/** Returns the RGBA of each pixel of a PNG. */
async function pixelsOf(page: Page, base64: string): Promise<Uint8Array> {
  const text = await page.evaluate(async (png) => {
    const bytes = Uint8Array.from(atob(png), (sign) => sign.charCodeAt(0));
    const bitmap = await createImageBitmap(new Blob([bytes], { type: 'image/png' }));
    const context = new OffscreenCanvas(bitmap.width, bitmap.height).getContext('2d');
    if (!context) throw new Error('This browser draws no canvas.');
    context.drawImage(bitmap, 0, 0);
    const { data } = context.getImageData(0, 0, bitmap.width, bitmap.height);
    let signs = '';
    for (let i = 0; i < data.length; i += 8192) signs += String.fromCharCode(...data.subarray(i, i + 8192));
    return btoa(signs);
  }, base64);
  return Uint8Array.from(Buffer.from(text, 'base64'));
}

describe('exportPlanImage in a browser', () => {
  let script = '';
  beforeAll(async () => {
    script = await bundleScript('src/report/png.ts', 'Sheet');
  });

  async function barePage(): Promise<Page> {
    const { page } = await openPage();
    // A page without the policy of the app's page.
    await page.goto(inject('emptyUrl'));
    await page.setContent('<!doctype html><html lang="en"><title>Sheet</title></html>');
    await page.addScriptTag({ content: script });
    return page;
  }

  it('makes a PNG of the first sheet at 200 to the inch, with its frame, its walls and its white', async () => {
    const page = await barePage();
    const { base64, type, error } = await exported(page, '01-plain-basement', 'L1', {
      paper: 'letter',
      date: '2026-11-25',
      sheet: 1,
    });
    expect(error).toBe('');
    expect(type).toBe('image/png');
    const bytes = Buffer.from(base64, 'base64');
    expect(pngSize(bytes)).toEqual({ width: 2200, height: 1700 });
    // ISO/IEC 15948, 11.3.5.3: 200 to the inch are 7874 to the meter, so that a print is as large as the page.
    expect([bytes.toString('latin1', 37, 41), bytes.readUInt32BE(41), bytes.readUInt32BE(45), bytes[49]]).toEqual([
      'pHYs',
      7874,
      7874,
      1,
    ]);
    // The frame is 8 mm from the edge; the paper beyond it is white.
    const [frame] = await imagePixel(page, bytes, { x: 63, y: 850 });
    expect(frame).toBeLessThan(80);
    expect(await imagePixel(page, bytes, { x: 20, y: 850 })).toEqual([255, 255, 255, 255]);
  });

  it.each(someOf(['03-crowded-utility', '06-sale-report'] as const, 1))(
    'is the page that the PDF has, every text at its place: %s',
    async (sample) => {
      const page = await barePage();
      // Twice that of the hatches: the PDF renderer repeats a cell after a whole number of px.
      const dpi = 192;
      const choice = { paper: 'letter', date: '2026-11-25' } as const;
      const { base64, error } = await exported(page, sample, 'L1', { ...choice, dpi, sheet: 1 });
      expect(error).toBe('');
      const svg = drawSheet({ ...choice, plan: samplePlan(sample), levelId: 'L1' });
      const { bytes } = await pagesToPdf([svg], { title: sample, date: choice.date, fonts: fontFiles() });
      const { pixels, ...size } = await drawnByPdfium(bytes, 0, dpi);
      expect(pngSize(Buffer.from(base64, 'base64'))).toEqual(size);
      const [png, pdf] = [await pixelsOf(page, base64), pixels].map((data) => ({ ...size, data }));
      if (!png || !pdf) throw new Error('two pictures');
      expect(textsWithOtherInk(svg, png, pdf, dpi)).toEqual([]);
      expect(noticedDifference(png, pdf)).toBeLessThan(0.005);
    },
  );

  it('puts all sheets into one picture that keeps within what browsers draw', async () => {
    const page = await barePage();
    const { base64, error } = await exported(page, '05-boarding-house', 'L1', { paper: 'a4', date: '2026-11-25' });
    expect(error).toBe('');
    const { width, height } = pngSize(Buffer.from(base64, 'base64'));
    expect(width * height).toBeLessThanOrEqual(16e6);
    expect(Math.max(width, height)).toBeLessThanOrEqual(8192);
    expect(width * height).toBeGreaterThan(10e6);
  });

  it('says in a sentence what went wrong', async () => {
    const page = await barePage();
    const level = await exported(page, '01-plain-basement', 'no-such', { paper: 'letter', date: '2026-11-25' });
    expect(level.error).toBe('The level that was to be drawn is not in the plan.');
    const sheet = await exported(page, '01-plain-basement', 'L1', { paper: 'letter', date: '2026-11-25', sheet: 99 });
    expect(sheet.error).toMatch(/^There is no sheet 99: the level has \d+\.$/); // as many as its tables need
    await page.evaluate(() => {
      HTMLCanvasElement.prototype.toBlob = (done) => done(null);
    });
    const blank = await exported(page, '01-plain-basement', 'L1', { paper: 'letter', date: '2026-11-25', sheet: 1 });
    expect(blank.error).toMatch(/^This browser made no picture of 2200 by 1700 pixels\./);
  });
});
