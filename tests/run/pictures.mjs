// Takes the pictures of the README from the built app: node tests/run/pictures.mjs; only that of the report: node tests/run/pictures.mjs report
import { spawnSync } from 'node:child_process';
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { ensureDeps, ROOT, runPlainly } from './ensure-deps.mjs';
import { BROWSER_ARGS, findBrowser } from './find-browser.mjs';
import { movingPicture } from './moving-picture.mjs';

const PICTURES = join(ROOT, 'samples', 'pictures');

/** @param {import('playwright-core').Page} page @param {RegExp} name */
async function openSample(page, name) {
  await page.getByRole('button', { name: 'Plans', exact: true }).click();
  await page.getByRole('button', { name }).first().click();
  await page.getByRole('button', { name: 'Hide', exact: true }).click();
  await page.waitForTimeout(1500);
}

/** Later than the times of the notice: the app refuses a recorded time in the future. */
const TODAY = new Date('2026-12-01T12:00:00-05:00');

/**
 * Takes the first page of the notice as it is printed, reduced.
 * @param {import('playwright-core').Page} page
 */
async function takeNotice(page) {
  await page.getByRole('button', { name: 'Time', exact: true }).click();
  for (const [field, at] of [
    ['Closed-building conditions since', '2026-11-27T20:00'],
    ['Placed', '2026-11-28T09:30'],
    ['Picked up', '2026-11-30T14:00'],
  ]) {
    await page.getByLabel(field ?? '', { exact: true }).fill(at ?? '');
    await page.getByLabel(field ?? '', { exact: true }).press('Enter');
  }
  await page.getByRole('button', { name: 'House', exact: true }).click();
  await page.getByRole('button', { name: 'Preview the document' }).click();
  const sheet = page.locator('.printed img').first();
  await sheet.waitFor({ state: 'attached' });
  await page.emulateMedia({ media: 'print' });
  await sheet.screenshot({ path: join(PICTURES, 'notice.png') });
  await page.emulateMedia({ media: null });
}

/** The part of the page in the animation, with plan and verdict; the desk beside the open and the folded panel; the path to it. CSS px. */
const MOVING = { x: 44, y: 99, width: 980, height: 492 };
const DESK_AT_FIRST = { x: 520, y: 366 };
const DESK = { x: 300, y: 371 };
const WAY = [{ x: 404, y: 250 }, { x: 250, y: 418 }, DESK];
const STEPS = 9;

/**
 * Takes one detector dragged through the moving air of two registers to a desk in the allowed area, with its verdict.
 * @param {import('playwright-core').Page} page
 */
async function takeDrag(page) {
  for (const name of [/^A2/, /^A1/]) {
    await page.getByRole('button', { name }).first().click();
    await page.keyboard.press('Delete');
  }
  await page.getByRole('button', { name: 'Place panel' }).click();
  await page.locator('.answers').getByRole('button', { name: 'Detector' }).first().click();
  await page.waitForTimeout(1000);
  await page.getByRole('button', { name: 'Whole level' }).click();
  await page.waitForTimeout(500);
  await page.mouse.click(DESK_AT_FIRST.x, DESK_AT_FIRST.y);
  await page.keyboard.press('Escape');
  await page.waitForTimeout(1000);
  /** @type {import('./moving-picture.mjs').Frame[]} */
  const frames = [];
  const take = async (/** @type {number} */ delay) => {
    await page.waitForTimeout(200);
    frames.push({ png: await page.screenshot({ clip: MOVING }), delay });
  };
  await page.mouse.move(DESK.x, DESK.y);
  await page.mouse.down();
  const [first, ...others] = WAY;
  let at = first ?? DESK;
  await page.mouse.move(at.x, at.y, { steps: 6 });
  await take(1500);
  for (const next of others) {
    for (let step = 1; step <= STEPS; step++) {
      const along = (/** @type {'x' | 'y'} */ axis) => at[axis] + ((next[axis] - at[axis]) * step) / STEPS;
      await page.mouse.move(along('x'), along('y'));
      await take(step === STEPS ? 1500 : 80);
    }
    at = next;
  }
  await page.mouse.up();
  await take(2500);
  await writeFile(join(PICTURES, 'turning-clear.gif'), await movingPicture(page, frames));
}

/**
 * Takes the card of a household on a phone.
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
  await page.getByLabel('How high its top is above the floor, if you have measured it').fill('2 ft 6 in');
  await page.keyboard.press('Enter');
  await tapIn(/^Pets/, 'No');
  await tap(/evening: /);
  await tap('Make the card');
  await page.getByRole('heading', { name: /measure with a tape/ }).waitFor();
  await page.waitForTimeout(500);
  await page.screenshot({ path: join(PICTURES, 'quick-card.png') });
}

/** Takes the first page of the report of a sale, as the command line writes it. */
async function takeReport() {
  const { chromium } = await import('playwright-core');
  const folder = mkdtempSync(join(tmpdir(), 'stillspot-report-'));
  const file = join(folder, 'report.svg');
  const plan = join(ROOT, 'samples', '06-sale-report.plan.json');
  const args = [join(ROOT, 'tests', 'run', 'stillspot.mjs'), 'report', plan, '--out', file, '--paper', 'letter'];
  const browser = await chromium.launch({ executablePath: findBrowser(), args: BROWSER_ARGS });
  try {
    const { status, stderr } = spawnSync(process.execPath, args, { encoding: 'utf8' });
    if (status !== 0) throw new Error(stderr);
    const page = await browser.newPage({ viewport: { width: 1056, height: 816 } });
    await page.goto(pathToFileURL(file).href);
    await page.screenshot({ path: join(PICTURES, 'report.png') });
  } finally {
    await browser.close();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function takePictures() {
  ensureDeps();
  mkdirSync(PICTURES, { recursive: true });
  await takeReport();
  if (process.argv[2] === 'report') return;
  const { build, preview } = await import('vite');
  const { chromium } = await import('playwright-core');
  const outDir = mkdtempSync(join(tmpdir(), 'stillspot-pictures-'));
  await build({ root: ROOT, logLevel: 'error', build: { outDir, emptyOutDir: true } });
  const server = await preview({ root: ROOT, logLevel: 'error', build: { outDir }, preview: { port: 0 } });
  const browser = await chromium.launch({ executablePath: findBrowser(), args: BROWSER_ARGS });
  const address = server.resolvedUrls?.local[0] ?? '';
  try {
    const desk = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    await desk.clock.setFixedTime(TODAY);
    await desk.goto(address);
    await openSample(desk, /plain basement/i);
    await takeNotice(desk);

    const small = await browser.newPage({ viewport: { width: 1024, height: 640 } });
    await small.goto(address);
    await openSample(small, /plain basement/i);
    await takeDrag(small);

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
