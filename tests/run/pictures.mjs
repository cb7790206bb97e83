// The pictures of the README, taken from the built app: node tests/run/pictures.mjs
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { ensureDeps, ROOT, runPlainly } from './ensure-deps.mjs';
import { BROWSER_ARGS, findBrowser } from './find-browser.mjs';

const PICTURES = join(ROOT, 'samples', 'pictures');

/** @param {import('playwright-core').Page} page @param {RegExp} name */
async function openSample(page, name) {
  await page.getByRole('button', { name: 'Plans', exact: true }).click();
  await page.getByRole('button', { name }).first().click();
  await page.getByRole('button', { name: 'Hide', exact: true }).click();
  await page.waitForTimeout(1500);
}

/**
 * The first page of the notice as it is printed, small.
 * @param {import('playwright-core').Page} page
 */
async function takeNotice(page) {
  await page.getByRole('button', { name: 'Time', exact: true }).click();
  for (const [field, at] of [
    ['House closed since', '2026-11-27T20:00'],
    ['Set out', '2026-11-28T09:30'],
    ['Fetched', '2026-11-30T14:00'],
  ]) {
    await page.getByLabel(field ?? '', { exact: true }).fill(at ?? '');
    await page.getByLabel(field ?? '', { exact: true }).press('Enter');
  }
  await page.getByRole('button', { name: 'House', exact: true }).click();
  await page.getByRole('button', { name: 'Look at the paper' }).click();
  const sheet = page.locator('.printed img').first();
  await sheet.waitFor({ state: 'attached' });
  await page.emulateMedia({ media: 'print' });
  await sheet.screenshot({ path: join(PICTURES, 'notice.png') });
  await page.emulateMedia({ media: null });
}

/**
 * The card of a household, on its phone.
 * @param {import('playwright-core').Page} page
 */
async function takeQuickCard(page) {
  const tap = (/** @type {string | RegExp} */ name) => page.getByRole('button', { name }).first().tap();
  const tapIn = (/** @type {string | RegExp} */ group, /** @type {string} */ name) =>
    page.getByRole('group', { name: group }).getByRole('button', { name }).tap();
  await tap('One kit, one room: quick card');
  await tap('48 to 96 hours');
  await tap(/^5$/);
  await tap('Basement that we live in');
  await tap('Family room');
  await tapIn('From the left wall to the right wall: round lengths', '16 ft');
  await tapIn('From your wall to the far wall: round lengths', '20 ft');
  await tap(/^Right wall/);
  await tap(/^far wall, 2 of 5 from the left/);
  await tap(/^I looked on this whole floor: no /);
  await tap('A small table that I can move');
  await tapIn(/^Pets/, 'No');
  await tap(/evening: /);
  await tap('Make the card');
  await page.getByRole('heading', { name: /measure with a tape/ }).waitFor();
  await page.waitForTimeout(500);
  await page.screenshot({ path: join(PICTURES, 'quick-card.png') });
}

async function takePictures() {
  ensureDeps();
  const { build, preview } = await import('vite');
  const { chromium } = await import('playwright-core');
  const outDir = mkdtempSync(join(tmpdir(), 'stillspot-pictures-'));
  await build({ root: ROOT, logLevel: 'error', build: { outDir, emptyOutDir: true } });
  const server = await preview({ root: ROOT, logLevel: 'error', build: { outDir }, preview: { port: 0 } });
  const browser = await chromium.launch({ executablePath: findBrowser(), args: BROWSER_ARGS });
  const address = server.resolvedUrls?.local[0] ?? '';
  mkdirSync(PICTURES, { recursive: true });
  try {
    const desk = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    await desk.goto(address);
    await openSample(desk, /plain basement/i);
    await desk.screenshot({ path: join(PICTURES, 'plain-basement.png') });

    await takeNotice(desk);

    const tablet = await browser.newContext({ viewport: { width: 1024, height: 768 }, hasTouch: true, isMobile: true });
    const page = await tablet.newPage();
    await page.goto(address);
    await openSample(page, /crowded/i);
    await page.screenshot({ path: join(PICTURES, 'crowded-cellar-tablet.png') });

    const phone = await browser.newContext({ viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true });
    const card = await phone.newPage();
    await card.goto(address);
    await takeQuickCard(card);
  } finally {
    await browser.close();
    await server.close();
    rmSync(outDir, { recursive: true, force: true });
  }
}

await runPlainly(takePictures);
