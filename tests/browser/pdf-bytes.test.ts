import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { expect, inject, it } from 'vitest';
import { fontFiles } from '../../src/cli/paper/fonts.ts';
import { drawDocument } from '../../src/report/documents/draw-document.ts';
import { drawSheets } from '../../src/report/draw-sheets.ts';
import { pagesToPdf } from '../../src/report/pdf/pdf.ts';
import { samplePlan } from '../helpers/sample-files.ts';
import { bundleScript } from './bundle-script.ts';
import { openPage } from './harness.ts';

const { resolve } = createRequire(import.meta.url);
const date = '2026-03-07';

/** The font files as the app loads them, base64; the command line has uncompressed ones. */
const woff = (weight: number) =>
  ['latin', 'latin-ext'].map((subset) =>
    readFileSync(
      resolve(
        `@fontsource/atkinson-hyperlegible-next/files/atkinson-hyperlegible-next-${subset}-${weight}-normal.woff`,
      ),
      'base64',
    ),
  );

it('a PDF has the same bytes in the browser and in Node', async () => {
  const order = { plan: samplePlan('06-sale-report'), paper: 'letter', date } as const;
  const pages = [...drawSheets({ ...order, levelId: 'L1' }), ...drawDocument('report', order)];
  const { bytes } = await pagesToPdf(pages, { title: 'Żółw', date, fonts: fontFiles() });
  const { page } = await openPage();
  // A page without the policy of the app's page.
  await page.goto(inject('emptyUrl'));
  await page.setContent('<!doctype html><html lang="en"><title>PDF</title></html>');
  // A module with an address, because the library derives others from it.
  const url = new URL('pdf-library.js', inject('emptyUrl')).href;
  const script = `${await bundleScript('src/report/pdf/pdf.ts', 'Pdf', 'es')}\nwindow.Pdf = { pagesToPdf };`;
  await page.route(url, (route) => route.fulfill({ contentType: 'text/javascript', body: script }));
  await page.addScriptTag({ url, type: 'module' });
  const inBrowser = await page.evaluate(
    async ({ pages, date, files }) => {
      const { pagesToPdf } = (window as unknown as { Pdf: typeof import('../../src/report/pdf/pdf.ts') }).Pdf;
      const unpacked = (list: readonly string[]) =>
        list.map((base64) => Uint8Array.from(atob(base64), (character) => character.charCodeAt(0)));
      const fonts = { regular: unpacked(files.regular), bold: unpacked(files.bold) };
      const made = await pagesToPdf(pages, { title: 'Żółw', date, fonts });
      return btoa(Array.from(made.bytes, (byte) => String.fromCharCode(byte)).join(''));
    },
    { pages, date, files: { regular: woff(400), bold: woff(700) } },
  );
  expect(bytes.length).toBeGreaterThan(50_000);
  expect(Buffer.compare(Buffer.from(inBrowser, 'base64'), bytes)).toBe(0);
});
