import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { someOf } from '../helpers/how-many.ts';
import { download, type OpenPage, openPage, pngSize } from './harness.ts';
import { openStage } from './samples.ts';

let open: OpenPage;
let page: Page;

beforeAll(async () => {
  open = await openPage();
  page = open.page;
});

const bar = () => page.getByRole('banner');
const title = () => page.evaluate(() => window.__stillspot?.store.getState().plan.title);
const file = (name: string, text: string) => ({ name, mimeType: 'application/json', buffer: Buffer.from(text) });
const openFile = (name: string, text: string) => page.getByLabel('Plan file to open').setInputFiles(file(name, text));
const SAMPLE = readFileSync('samples/01-plain-basement.plan.json', 'utf8');

describe('the empty page', () => {
  it('says what to do first, and offers it', async () => {
    await page.getByRole('heading', { name: 'Start with the room that you are in.' }).waitFor();
    await page.getByLabel('Where to start').getByRole('button', { name: 'Type the lengths' }).click();
    await expect.poll(() => page.evaluate(() => window.__stillspot?.store.getState().tool.kind)).toBe('wall');
    await page.getByText('Press where the wall begins').waitFor();
    await page.getByRole('button', { name: 'Put the tool back' }).click();
    await expect.poll(() => page.evaluate(() => window.__stillspot?.store.getState().tool.kind)).toBe('select');
  });
});

describe('opening a file', () => {
  it('shows a plan that is one', async () => {
    await openFile('finch.plan.json', SAMPLE);
    await page.getByText('finch.plan.json is open.').waitFor();
    await expect.poll(() => title()).toBe('Finch Lane, basement');
  });

  it('refuses a broken one with every problem and its place, and keeps what is open', async () => {
    const before = await page.evaluate(() => JSON.stringify(window.__stillspot?.store.getState().plan));
    const broken = SAMPLE.replace('"version": 1', '"version": 1, "tapeTolerance": "an inch"')
      .replace('"ceiling": 2286', '"ceiling": -5')
      .replace('"living": "lived-in"', '"living": "sometimes"')
      .replace('"tapeTolerance": 25.4,', '');
    await openFile('broken.plan.json', broken);
    const dialog = page.getByRole('dialog', { name: 'broken.plan.json was not opened' });
    await dialog.waitFor();
    const places = await dialog.locator('tbody td:first-child').allTextContents();
    expect(places).toEqual(expect.arrayContaining(['/tapeTolerance', '/levels/0/ceiling', '/levels/0/living']));
    await expect.poll(() => dialog.textContent()).toContain('sometimes');
    await expect.poll(() => dialog.textContent()).toContain('The open plan is unchanged.');
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    await expect
      .poll(() => page.evaluate(() => JSON.stringify(window.__stillspot?.store.getState().plan)))
      .toBe(before);
  });

  it.each([
    ['empty.plan.json', ''],
    ['photo.plan.json', '\u0089PNG not a plan at all'],
    ['newer.plan.json', SAMPLE.replace('"version": 1', '"version": 7')],
  ])('refuses %s in words', async (name, text) => {
    await openFile(name, text);
    const dialog = page.getByRole('dialog', { name: `${name} was not opened` });
    await dialog.waitFor();
    await expect.poll(() => dialog.locator('tbody tr').count()).toBeGreaterThan(0);
    await dialog.getByRole('button', { name: 'Close' }).click();
    await expect.poll(() => title()).toBe('Finch Lane, basement');
  });

  it('takes a plan that is dropped on the page', async () => {
    const text = SAMPLE.replace('Finch Lane, basement', 'Dropped here');
    const transfer = await page.evaluateHandle((content) => {
      const data = new DataTransfer();
      data.items.add(new File([content], 'dropped.plan.json', { type: 'application/json' }));
      return data;
    }, text);
    await page.dispatchEvent('body', 'drop', { dataTransfer: transfer });
    await page.getByText('dropped.plan.json is open.').waitFor();
    await expect.poll(() => title()).toBe('Dropped here');
  });
});

describe('saving', () => {
  it('hands over a plan file that reads back as the same plan, named after its title', async () => {
    const { name, bytes } = await download(page, () =>
      bar().getByRole('button', { name: 'Save', exact: true }).click(),
    );
    expect(name).toBe('dropped-here.plan.json');
    const saved: unknown = JSON.parse(bytes.toString('utf8'));
    const shown = await page.evaluate(() => window.__stillspot?.store.getState().plan);
    expect(saved).toEqual(shown);
    await page.getByText('dropped-here.plan.json is in your downloads.').waitFor();
  });
});

describe('the sheet', () => {
  it('is saved as a picture from the top bar, named after its title', async () => {
    const { name, bytes } = await download(page, () => bar().getByRole('button', { name: 'Picture' }).click());
    expect(name).toBe('dropped-here.png');
    const { width, height } = pngSize(bytes);
    expect(Math.min(width, height)).toBeGreaterThan(1000);
    await page.getByText('dropped-here.png is in your downloads.').waitFor();
  });

  it('can be looked at before, and saved as a drawing', async () => {
    await openStage(page, 'Plan sheet');
    await page.getByRole('button', { name: 'Preview the plan sheet' }).click();
    const first = page.getByRole('img', { name: /^Sheet 1 of / });
    await first.waitFor();
    await expect.poll(() => first.evaluate((image) => (image as HTMLImageElement).naturalWidth)).toBeGreaterThan(100);
    await page.keyboard.press('Escape');
    const { name, bytes } = await download(page, () => page.getByRole('button', { name: 'Save the drawing' }).click());
    expect(name).toMatch(/^dropped-here(-1)?\.svg$/);
    expect(bytes.toString('utf8')).toContain('Dropped here');
  });

  it('says in words when no picture can be made', async () => {
    await page.evaluate(() => {
      HTMLCanvasElement.prototype.toBlob = (give) => give(null);
    });
    await bar().getByRole('button', { name: 'Picture' }).click();
    await page.getByText(/^This browser made no picture of /).waitFor();
  });
});

describe('nothing drawn is lost', () => {
  it('when a new plan takes its place: it stands under Plans', async () => {
    await bar().getByRole('button', { name: 'Plans' }).click();
    await page.getByRole('button', { name: 'New plan' }).click();
    await page.getByText('A new plan. The previous plan is in Plans.').waitFor();
    await expect.poll(() => title()).toBe('');
    await bar().getByRole('button', { name: 'Plans' }).click();
    await page
      .getByRole('dialog')
      .getByRole('button', { name: /^Dropped here/ })
      .click();
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await expect.poll(() => title()).toBe('Dropped here');
  });
});

describe('the samples', () => {
  it('open, each with what it shows', async () => {
    await bar().getByRole('button', { name: 'Plans' }).click();
    const rows = page.getByRole('dialog').locator('.row');
    await rows.first().waitFor();
    const count = await rows.count();
    expect(count).toBeGreaterThanOrEqual(4);
    await page.keyboard.press('Escape');
    const titles = new Set<string | undefined>();
    const shown = someOf([...Array(count).keys()], 3);
    for (const index of shown) {
      await bar().getByRole('button', { name: 'Plans' }).click();
      await expect
        .poll(async () => (await rows.nth(index).locator(':scope > span').last().textContent())?.length)
        .toBeGreaterThan(20);
      await rows.nth(index).click();
      await page.getByRole('dialog').waitFor({ state: 'detached' });
      titles.add(await title());
    }
    expect(titles.size).toBe(shown.length);
    open.expectNoTroubles();
  });
});
