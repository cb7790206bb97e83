import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { someOf } from '../helpers/how-many.ts';
import { type Editor, editorOf } from './editor.ts';
import { accessibilityFindings, type OpenPage, openPage } from './harness.ts';
import { openStage } from './samples.ts';

let open: OpenPage;
let page: Page;
let editor: Editor;

const button = (name: string | RegExp) =>
  page.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name }).first();
const stage = (name: string) => openStage(page, name);
const unfold = (summary: string) => page.locator('summary', { hasText: summary }).first().click();
const unfoldAll = (id: string) =>
  page.locator(`#stage-${id} details`).evaluateAll((all) => {
    for (const fold of all) (fold as HTMLDetailsElement).open = true;
  });
async function picture(): Promise<Buffer> {
  const base64 = await page.evaluate(async () => {
    const canvas = new OffscreenCanvas(80, 60);
    canvas.getContext('2d')?.fillRect(20, 15, 40, 30);
    const bytes = new Uint8Array(await (await canvas.convertToBlob({ type: 'image/png' })).arrayBuffer());
    return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(''));
  });
  return Buffer.from(base64, 'base64');
}

beforeAll(async () => {
  open = await openPage();
  page = open.page;
  editor = await editorOf(page);
});
afterAll(() => open.expectNoTroubles());

/** Screens that other files test (the bare sheet, the list of commands, spots, every published list) are not repeated here. */
describe('axe finds nothing', () => {
  it.each<{ screen: string; show: () => Promise<unknown> }>([
    {
      screen: 'the plans, with the samples',
      show: () => page.getByRole('banner').getByRole('button', { name: 'Plans' }).click(),
    },
    {
      screen: 'a sample: Property, with the rules that can be changed',
      show: async () => {
        await button(/^Crowded utility/).click();
        await page.getByRole('heading', { name: 'Blocked', exact: true }).waitFor();
        await stage('Property');
        await unfold('Change a distance for this plan');
      },
    },
    {
      screen: 'Draw, with levels, a picture and the list open, a wall selected and one of its lengths being typed',
      show: async () => {
        await stage('Draw');
        await unfold('Levels:');
        await unfold('Draw over a picture');
        const file = { name: 'sketch.png', mimeType: 'image/png', buffer: await picture() };
        await page.getByLabel('Picture to draw over').first().setInputFiles(file);
        await page.locator('.tracing').waitFor();
        await page.keyboard.press('Escape');
        await unfold('Everything on this level');
        await page.getByLabel('Walls', { exact: true }).getByRole('button').first().click();
        await page.keyboard.press('l');
        await page.locator('.length-box').waitFor();
      },
    },
    {
      screen: 'several things selected',
      show: async () => {
        await unfold('Everything on this level'); // closed again: axe reads every row
        const { fixtures } = await editor.level();
        await page.evaluate(
          (ids) => window.__stillspot?.store.getState().select(ids),
          fixtures.slice(0, 3).map(({ id }) => id),
        );
        await page.getByRole('heading', { name: '3 things selected' }).waitFor();
      },
    },
    {
      screen: 'a wall being drawn, with its length',
      show: async () => {
        await page.keyboard.press('Escape');
        await page.keyboard.press('Escape');
        await page.evaluate(() => window.__stillspot?.store.getState().setTool({ kind: 'wall' }));
        await editor.press(2000, 2000);
        await editor.move(2600, 2000);
        await page.keyboard.press('6');
      },
    },
    {
      screen: 'Place: best spots, side by side, heights',
      show: async () => {
        await page.keyboard.press('Escape');
        await page.keyboard.press('Escape');
        await stage('Place');
        await page.getByRole('heading', { name: 'Side by side' }).waitFor();
        await button(/^C1/).click();
        await page.locator('.places[aria-busy="true"]').waitFor({ state: 'detached' });
      },
    },
    {
      screen: 'House: an item kept, one broken and opened, and all that folds open',
      show: async () => {
        await stage('House');
        const first = page.locator('.condition').first();
        await first.getByRole('button', { name: 'Not met' }).click();
        await first.locator('.condition__name').click();
        await page.locator('.condition').nth(1).getByRole('button', { name: 'Met', exact: true }).click();
        await unfoldAll('house');
        await page.getByLabel('Signing was refused').waitFor();
      },
    },
    {
      screen: 'Log: numbers, transfers, photos and weather, all open',
      show: async () => {
        await stage('Log');
        await page.getByRole('heading', { name: 'Log of the detectors' }).waitFor();
        await unfoldAll('log');
        await button('Note the weather').waitFor();
      },
    },
    {
      screen: 'Results: results of a test that is not evaluated, one below the limit, and an earlier test',
      show: async () => {
        await stage('Results');
        const results = page.getByLabel(/^Result of [A-Z]\d$/);
        await results.first().waitFor();
        for (const field of await results.all()) {
          await field.fill('0.4');
          await field.press('Enter');
        }
        await page.getByLabel('Below the laboratory').first().check();
        await unfold('Earlier tests here');
        await page.getByLabel('Result of an earlier test').fill('4.8');
        await page.getByLabel('Result of an earlier test').press('Enter');
        await page.getByLabel('Kind of test').waitFor();
      },
    },
    {
      screen: 'Sheet, and why not here told beside the pointer',
      show: async () => {
        await stage('Plan sheet');
        await button('Preview the plan sheet').waitFor();
        await page.evaluate(() => (document.activeElement as HTMLElement | null)?.blur());
        await page.keyboard.press('w');
        await page.keyboard.press('ArrowRight');
      },
    },
    {
      screen: 'the sheet, looked at',
      show: async () => {
        await page.keyboard.press('Escape');
        await button('Preview the plan sheet').click();
        await page.getByRole('img', { name: /^Sheet 1 of / }).waitFor();
      },
    },
    {
      screen: 'a refused file',
      show: async () => {
        await page.keyboard.press('Escape');
        const text = readFileSync('samples/01-plain-basement.plan.json', 'utf8').replace(
          '"ceiling": 2286',
          '"ceiling": -5',
        );
        const file = { name: 'broken.plan.json', mimeType: 'application/json', buffer: Buffer.from(text) };
        await page.getByLabel('Plan file to open').setInputFiles(file);
        await page.getByRole('dialog', { name: 'broken.plan.json was not opened' }).waitFor();
      },
    },
    {
      screen: 'the shelf, with a plan on it chosen',
      show: async () => {
        await page.keyboard.press('Escape');
        await page.getByRole('banner').getByRole('button', { name: 'Plans' }).click();
        const more = button(/^More about /);
        await more.click();
        await expect.poll(() => more.getAttribute('aria-expanded')).toBe('true');
      },
    },
    {
      screen: 'both columns folded',
      show: async () => {
        await button('Back to the plan').click();
        await stage('Draw');
        for (const head of ['.job__head', '.side .column-head']) await page.locator(`${head} > .text-button`).click();
      },
    },
  ])('$screen', async ({ show }) => {
    await show();
    expect(await accessibilityFindings(page)).toEqual([]);
  });

  it.each(someOf(['dark', 'sun'], 1))('on the most crowded screen in the colors %s', async (theme) => {
    await page.getByLabel('Colors').selectOption(theme);
    for (const column of ['job', 'side']) {
      const rail = page.locator(`.${column} .rail`);
      if ((await rail.count()) > 0) await rail.click();
    }
    await stage('Draw');
    if ((await page.locator('.to-do').getAttribute('open')) === null) await page.locator('.to-do summary').click();
    expect(await accessibilityFindings(page)).toEqual([]);
  });
});
