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
  } finally {
    await browser.close();
    await server.close();
    rmSync(outDir, { recursive: true, force: true });
  }
}

await runPlainly(takePictures);
