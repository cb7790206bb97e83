/** Measures the app at its limits, in Chromium: the largest plan from a file, pictures that are far larger than their file. */
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { loadavg, tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { writePlan } from '../../../geometry/planfile/write.ts';
import { markdownTable } from '../figures.ts';
import { openStand, SCREEN } from '../frames/stand.ts';
import { benchPlan } from '../plans.ts';
import { bombPlan, PLAIN_PLAN } from './bomb-plan.ts';
import { peakOf } from './peak.ts';

/** Wall time, and processor time of the page's main thread, which other work on the machine affects less, ms. */
interface Took {
  readonly wall: number;
  readonly work: number;
}

export async function runLimits(): Promise<void> {
  const { browser, now, stop } = await openStand(null);
  const folder = mkdtempSync(join(tmpdir(), 'stillspot-limits-'));
  const rows: string[][] = [];
  const note = (what: string, ...cells: readonly string[]) => {
    rows.push([what, ...cells, (loadavg()[0] ?? 0).toFixed(1)]);
    console.error(rows.at(-1)?.join(' | '));
  };
  const noteTime = (what: string, { wall, work }: Took) => note(what, seconds(wall), seconds(work));
  try {
    const huge = join(folder, 'huge.plan.json');
    writeFileSync(huge, writePlan(benchPlan('huge')));
    for (let round = 0; round < 3; round++)
      noteTime('5,000 features from a file, usable', await openLarge(browser, now, huge));
    for (const [what, plan] of [
      ['a plan without pictures', PLAIN_PLAN],
      ['one picture of 400 megapixels, and photos as large', bombPlan(20_000, 20_000)],
      ['pictures just below the limit of 40 megapixels', bombPlan(6300, 6300)],
    ] as const) {
      const text = writePlan(plan);
      const most = await peakOf(browser, () => lookAt(browser, now, text));
      note(`${what}: file of ${megabytes(text.length)}`, `at most ${megabytes(most)}`, '');
    }
  } finally {
    rmSync(folder, { recursive: true });
    await stop();
  }
  console.log(markdownTable(['what', 'wall clock', 'work of the page', 'load'], rows));
}

const seconds = (ms: number) => `${(ms / 1000).toFixed(2)} s`;
const megabytes = (bytes: number) => `${(bytes / 1e6).toFixed(2)} MB`;

const fileOf = (name: string, text: string) => ({ name, mimeType: 'application/json', buffer: Buffer.from(text) });

async function openApp(browser: Browser, url: string): Promise<Page> {
  const context = await browser.newContext({ viewport: SCREEN });
  const page = await context.newPage();
  await page.goto(url);
  await page.waitForFunction(() => (window.__stillspot?.store.getState().stageSize.width ?? 0) > 0);
  return page;
}

/** Times some work until the page answers. */
async function timed(page: Page, work: () => Promise<unknown>): Promise<Took> {
  const cdp = await page.context().newCDPSession(page);
  await cdp.send('Performance.enable', { timeDomain: 'threadTicks' });
  const spent = async () => {
    const { metrics } = await cdp.send('Performance.getMetrics');
    return (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? Number.NaN) * 1000;
  };
  const before = await spent();
  const start = performance.now();
  await work();
  const wall = performance.now() - start;
  const took = { wall, work: (await spent()) - before };
  await cdp.detach();
  return took;
}

/** Times opening a plan, until the sheet shows it and takes a key. By path, so that the bytes are not sent over the test's connection. */
async function openLarge(browser: Browser, url: string, path: string): Promise<Took> {
  const page = await openApp(browser, url);
  const took = await timed(page, async () => {
    await page.getByLabel('Plan file to open').setInputFiles(path);
    await page.waitForFunction(() => (window.__stillspot?.store.getState().plan.levels[0]?.fixtures.length ?? 0) > 100);
    await page.evaluate(() => window.__stillspot?.painted());
    await page.evaluate(() => new Promise((shown) => requestAnimationFrame(() => setTimeout(shown, 0))));
  });
  await page.context().close();
  return took;
}

/** Opens a plan from a file and looks at its sheet, at the log with its photos, and at the results. */
async function lookAt(browser: Browser, url: string, text: string): Promise<void> {
  const page = await openApp(browser, url);
  await page.getByLabel('Plan file to open').setInputFiles(fileOf('pictures.plan.json', text));
  await page.waitForFunction(() => window.__stillspot?.store.getState().plan.title === 'Pictures');
  await page.waitForTimeout(1500);
  const stages = page.getByRole('navigation', { name: 'Stages of the test' });
  for (const stage of ['Log', 'Results']) {
    await stages.getByRole('button', { name: stage, exact: true }).click();
    await page.waitForTimeout(2500);
  }
  await page.context().close();
}
