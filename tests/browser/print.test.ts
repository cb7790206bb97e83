import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accessibilityFindings, type OpenPage, openPage } from './harness.ts';
import { openSample, openStage, saved } from './samples.ts';

/** Returns the size of each page of a PDF, in whole mm. */
function pageSizes(pdf: Buffer): readonly string[] {
  const boxes = [...pdf.toString('latin1').matchAll(/\/MediaBox \[\s*0 0 ([\d.]+) ([\d.]+)\s*\]/g)];
  return boxes.map(([, width, height]) =>
    [width, height].map((each) => Math.round((Number(each) * 25.4) / 72)).join('×'),
  );
}

const printed = async (page: Page) => pageSizes(await page.pdf({ preferCSSPageSize: true, printBackground: true }));
const close = (page: Page) => page.getByRole('button', { name: 'Close', exact: true }).click();

describe('printed from the browser', () => {
  let open: OpenPage;
  let page: Page;
  beforeAll(async () => {
    open = await openPage();
    page = open.page;
    await page.addInitScript(() => {
      window.print = () => document.documentElement.setAttribute('data-printed', 'yes');
    });
    await page.reload();
    await openSample(page, 'Plain basement');
    await saved(page);
  });
  afterAll(() => open.context.close());

  it.each([
    ['letter', 'Landscape', 'log', 4, '279×216'],
    ['a4', 'Landscape', 'notice', 1, '297×210'],
    ['a4', 'Portrait', 'entrance-notice', 1, '210×297'],
  ])(
    'on %s, %s, the %s is printed page by page at its own size, and nothing of the app with it',
    async (paper, orientation, which, count, size) => {
      await openStage(page, which === 'log' ? 'Log' : 'House');
      if (which !== 'log') await page.getByLabel('Which one').selectOption(which);
      await page.getByLabel('Size', { exact: true }).filter({ visible: true }).selectOption(paper);
      await page.getByLabel('Orientation', { exact: true }).filter({ visible: true }).selectOption(orientation);
      await page.getByRole('button', { name: 'Preview the document' }).click();
      await page.getByRole('img', { name: `Sheet 1 of ${count}` }).waitFor();
      await expect.poll(() => printed(page)).toEqual(Array(count).fill(size));
      await page.emulateMedia({ media: 'print' });
      const seen = await page
        .locator('body > *')
        .evaluateAll((all) =>
          all.filter((each) => getComputedStyle(each).display !== 'none').map((each) => each.className),
        );
      expect(seen.filter((name) => name !== '')).toEqual(['printed']);
      await page.emulateMedia({ media: null });
      await close(page);
    },
  );

  it('the button opens the print window; the marked-up sheet has it too', async () => {
    await openStage(page, 'Plan sheet');
    await page.getByRole('button', { name: 'Preview the plan sheet' }).click();
    await page.getByRole('button', { name: 'Print', exact: true }).click();
    await expect.poll(() => page.locator('html').getAttribute('data-printed')).toBe('yes');
    const sheets = await page.locator('.previews img').count();
    expect(sheets).toBeGreaterThan(1);
    await expect.poll(() => printed(page)).toEqual(Array(sheets).fill('279×216'));
    expect(await accessibilityFindings(page)).toEqual([]);
    await close(page);
    await page.locator('.printed').waitFor({ state: 'detached' });
    open.expectNoTroubles();
  });
});
