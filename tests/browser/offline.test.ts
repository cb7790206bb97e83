import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { type PreviewServer, preview } from 'vite';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { isLongRun, someOf } from '../helpers/how-many.ts';
import { buildTo } from './build-site.ts';
import { download, openPage, pngSize } from './harness.ts';
import { openStage, pickSample } from './samples.ts';

/** The files on the server, in a sub-folder as on many web servers; a test replaces them with another version while the page is open. */
let folder: string;
/** The same app built a second time: every file except the page has another name. */
let second: string;
let server: PreviewServer;
let site: string;
const app = () => join(folder, 'tools', 'stillspot');

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'stillspot-offline-'));
  second = mkdtempSync(join(tmpdir(), 'stillspot-second-'));
  buildTo(second, ['--assetsDir', SECOND]);
  deploy(inject('siteFolder'));
  server = await serve(0);
  site = `${server.resolvedUrls?.local[0]}tools/stillspot/`;
});
afterAll(async () => {
  await server.close();
  for (const each of [folder, second]) rmSync(each, { recursive: true, force: true });
});

const FIRST = 'assets';
const SECOND = 'parts';

/** Replaces the files; the old ones are removed, as on a real server. */
function deploy(from: string): void {
  rmSync(app(), { recursive: true, force: true });
  cpSync(from, app(), { recursive: true });
}

const serve = (port: number) =>
  preview({
    configFile: false,
    logLevel: 'silent',
    appType: 'mpa',
    build: { outDir: folder },
    preview: { port, host: 'localhost', strictPort: port > 0 },
  });

/** Waits until everything is cached and the worker controls the page. */
const kept = (page: Page) => page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated');

/** Checks for a new version, as the page does every hour; returns the state of its worker. */
const lookForNew = (page: Page) =>
  page.evaluate(async () => {
    const { installing } = await (await navigator.serviceWorker.ready).update();
    if (!installing) return 'none';
    await new Promise<void>((done) => {
      installing.onstatechange = () => /installed|redundant/.test(installing.state) && done();
    });
    return installing.state;
  });

const READY = 'A newer Stillspot is ready. Start it when you are ready; your plan is kept.';
/** Returns the version that the page runs: the folder of its script. */
const runs = (page: Page) =>
  page.evaluate(() => document.querySelector('script[src]')?.getAttribute('src')?.split('/')[1] ?? '');
const titleOf = (page: Page) => page.getByLabel('Title of the plan').inputValue();

async function titled(page: Page, title: string): Promise<void> {
  await page.getByLabel('Title of the plan').fill(title);
  await page.getByLabel('Title of the plan').press('Enter');
  await page.getByText(/^saved /).waitFor();
}

async function picture(page: Page): Promise<number> {
  const { bytes } = await download(page, () => page.getByRole('button', { name: 'Picture', exact: true }).click());
  return pngSize(bytes).width;
}

describe('without a network', () => {
  it('the app opens after one visit, with its samples, its workers and its pictures', async () => {
    const { page, context, expectNoTroubles } = await openPage({ site, serviceWorkers: 'allow' });
    await kept(page);
    await titled(page, 'Met at home');
    // Stricter than a browser in offline mode: there is no server.
    const { port } = new URL(site);
    await server.close();
    await context.setOffline(true);
    try {
      await page.goto(`${site}?again`);
      await expect.poll(() => titleOf(page)).toBe('Met at home');
      await pickSample(page, /^Plain basement/);
      await page
        .getByRole('list', { name: 'Best spots, the most to spare first' })
        .getByRole('button')
        .first()
        .waitFor();
      expect(page.workers().map((worker) => worker.url())).toContainEqual(expect.stringContaining('seek-worker'));
      // The second computation has its own worker, which starts when the pointer rests.
      await page.getByText('Computed twice, in two ways.').waitFor();
      expect(await picture(page)).toBeGreaterThan(1000);
      // The list of places is requested here for the first time.
      await openStage(page, 'Property');
      await page.getByRole('combobox', { name: 'ZIP code or town in the United States' }).fill('15213');
      await page.getByRole('option', { name: '15213 Pittsburgh, PA' }).waitFor();
      expectNoTroubles();
    } finally {
      server = await serve(Number(port));
    }
    await context.close();
  });
});

describe('a new version', () => {
  it.runIf(isLongRun)('is not kept while the server has only half of it', async () => {
    const { page, context } = await openPage({ site, serviceWorkers: 'allow' });
    await kept(page);
    // The worker of the second version lists files that are all missing; then all except the page are there.
    cpSync(join(second, 'service-worker.js'), join(app(), 'service-worker.js'));
    expect(await lookForNew(page)).toBe('redundant');
    cpSync(join(second, SECOND), join(app(), SECOND), { recursive: true });
    expect(await lookForNew(page)).toBe('redundant');
    await page.reload();
    await expect.poll(() => runs(page)).toBe(FIRST);
    await expect.poll(() => page.getByText(READY).count()).toBe(0);
    deploy(inject('siteFolder'));
    await context.close();
  });

  /** Returns a script of the second version on the server. */
  const script = () => {
    const name = readdirSync(join(app(), SECOND)).find((each) => each.startsWith('start-') && each.endsWith('.js'));
    return join(app(), SECOND, name ?? '');
  };
  const HALVES: readonly (readonly [string, () => void])[] = [
    [
      'a script that is missing and for which the server sends the start page',
      () => cpSync(join(app(), 'index.html'), script()),
    ],
    [
      'a script of which half has arrived',
      () => writeFileSync(script(), readFileSync(script(), 'utf8').slice(0, 5000)),
    ],
    [
      'a script of another version under the same name',
      () => writeFileSync(script(), `${readFileSync(script(), 'utf8')};`),
    ],
    ['a script that is missing', () => rmSync(script())],
    [
      'the page of the first version',
      () => cpSync(join(inject('siteFolder'), 'index.html'), join(app(), 'index.html')),
    ],
  ];
  it('is not kept with half of any kind, and is once it is whole', async () => {
    deploy(inject('siteFolder'));
    const { page, context } = await openPage({ site, serviceWorkers: 'allow' });
    await kept(page);
    await titled(page, 'Kept all along');
    for (const [half, breakIt] of someOf(HALVES, 1)) {
      deploy(second);
      breakIt();
      expect(await lookForNew(page), half).toBe('redundant');
    }
    deploy(second);
    expect(await lookForNew(page)).toBe('installed');
    await page.getByText(READY).waitFor();
    await page.getByRole('button', { name: 'Start it' }).click();
    await expect.poll(() => runs(page).catch(() => '')).toBe(SECOND);
    await expect.poll(() => titleOf(page)).toBe('Kept all along');
    deploy(inject('siteFolder'));
    await context.close();
  });

  it.runIf(isLongRun)('takes no file over from a version that was kept wrong', async () => {
    const { page, context } = await openPage({ site, serviceWorkers: 'allow' });
    await kept(page);
    const [first = ''] = await page.evaluate(async () => {
      const [name = ''] = await caches.keys();
      const cache = await caches.open(name);
      const [wrong] = (await cache.keys()).filter(({ url }) => /start-.*\.js$/.test(url));
      if (wrong) await cache.put(wrong, new Response('<!doctype html>', { headers: { 'content-type': 'text/html' } }));
      return [name, wrong?.url];
    });
    const worker = join(app(), 'service-worker.js');
    writeFileSync(worker, readFileSync(worker, 'utf8').replace(/VERSION = "[^"]+"/, 'VERSION = "next"'));
    expect(await lookForNew(page)).toBe('installed');
    const texts = await page.evaluate(async () => {
      const cache = await caches.open('stillspot-next');
      const scripts = (await cache.keys()).filter(({ url }) => /start-.*\.js$/.test(url));
      return Promise.all(scripts.map(async (each) => (await (await cache.match(each))?.text()) ?? ''));
    });
    expect(first).not.toBe('stillspot-next');
    expect(texts.length).toBeGreaterThan(0);
    for (const text of texts) expect(text).not.toContain('<!doctype');
    deploy(inject('siteFolder'));
    await context.close();
  });

  it('announces itself, starts when it is told to, and leaves the plan and the walls under way as they were', async () => {
    const { page, context } = await openPage({ site, serviceWorkers: 'allow' });
    await kept(page);
    await page.evaluate(() => {
      const state = window.__stillspot?.store.getState();
      state?.setTool({ kind: 'wall' });
      state?.setChain({
        corners: [
          [0, 0],
          [3000, 0],
        ],
        takenBack: [],
      });
    });
    await titled(page, 'Open work');
    const other = await context.newPage();
    await other.goto(site);
    await other.getByLabel('Title of the plan').waitFor();
    deploy(second);
    expect(await lookForNew(page)).toBe('installed');
    await page.getByText(READY).waitFor();
    await page.reload();
    await page.getByText(READY).waitFor();
    await expect.poll(() => runs(page)).toBe(FIRST); // reloading does not start the new version
    // Pressed immediately, while the page still loads its parts through the old worker.
    await page.getByRole('button', { name: 'Start it' }).click();
    // If it does not start, the message says why.
    const runsOrWhyNot = async () =>
      (await runs(page)) === SECOND ? SECOND : page.locator('[data-message]').allTextContents();
    await expect.poll(() => runsOrWhyNot().catch(() => '')).toBe(SECOND);
    await expect.poll(() => titleOf(page)).toBe('Open work');
    await expect.poll(() => page.evaluate(() => window.__stillspot?.store.getState().chain.corners.length)).toBe(2);

    // The other tab keeps running the old version, with parts that it has not loaded yet and that the server no longer has.
    await other.getByRole('main').getByText('A newer Stillspot was started in another tab.').waitFor();
    await expect.poll(() => other.getByText('Another tab changed this plan').count()).toBe(0);
    await expect.poll(() => runs(other)).toBe(FIRST);
    expect(await picture(other)).toBeGreaterThan(1000);
    await context.close();
  });

  it.runIf(isLongRun)('waits while the plan cannot be saved', async () => {
    const { page, context } = await openPage({ site, serviceWorkers: 'allow' });
    await kept(page);
    deploy(inject('siteFolder'));
    expect(await lookForNew(page)).toBe('installed');
    await page.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('full', 'QuotaExceededError');
      };
    });
    await page.getByLabel('Title of the plan').fill('No room for this');
    await page.getByRole('button', { name: 'Start it' }).click();
    await page.getByText('The plan cannot be saved in this browser, so the old Stillspot goes on.').waitFor();
    await expect.poll(() => runs(page)).toBe(SECOND);
    await expect.poll(() => titleOf(page)).toBe('No room for this');
    await context.close();
  });
});

describe('what the system needs to install the app', () => {
  it('is named by the page, and every icon has the size that it says', async () => {
    const { page, context } = await openPage({ site });
    const href = await page.locator('link[rel="manifest"]').getAttribute('href');
    const address = new URL(href ?? '', site);
    const manifest = (await (await page.request.get(address.href)).json()) as {
      start_url: string;
      display: string;
      icons: { src: string; sizes: string; type: string; purpose?: string }[];
    };
    expect(new URL(manifest.start_url, address).href).toBe(site);
    expect(manifest.display).toBe('standalone');
    expect(manifest.icons.map(({ purpose }) => purpose)).toContain('maskable');
    for (const { src, sizes, type } of manifest.icons.filter((icon) => icon.type === 'image/png')) {
      const response = await page.request.get(new URL(src, address).href);
      expect(response.headers()['content-type']).toBe(type);
      const { width, height } = pngSize(await response.body());
      expect(`${width}x${height}`).toBe(sizes);
    }
    await context.close();
  });

  it('lets the system hand over a plan file', async () => {
    const { page, context, expectNoTroubles } = await openPage({ site });
    await context.addInitScript(() => {
      // As in the File Handling draft, because a browser under test gets no file from its system.
      const setConsumer = (consumer: (launch: object) => void) => {
        const read = async () => new File([await (await fetch('given.plan.json')).text()], 'given.plan.json');
        consumer({ files: [{ getFile: read }] });
      };
      Object.defineProperty(window, 'launchQueue', { value: { setConsumer } });
    });
    const given = readFileSync('samples/04-metric-house.plan.json', 'utf8');
    await context.route('**/given.plan.json', (route) => route.fulfill({ body: given }));
    await page.reload();
    await expect.poll(() => titleOf(page)).toBe((JSON.parse(given) as { title: string }).title);
    expectNoTroubles();
    await context.close();
  });
});
