import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { type PreviewServer, preview } from 'vite';
import { afterAll, beforeAll, describe, expect, inject, it } from 'vitest';
import { download, openPage, pngSize } from './harness.ts';

/** A copy of the built app that a test may change under the page's feet, in a sub-folder as on many a web server. */
let folder: string;
let server: PreviewServer;
let site: string;

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'stillspot-offline-'));
  cpSync(inject('siteFolder'), join(folder, 'tools', 'stillspot'), { recursive: true });
  server = await serve(0);
  site = `${server.resolvedUrls?.local[0]}tools/stillspot/`;
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

const serve = (port: number) =>
  preview({
    configFile: false,
    logLevel: 'silent',
    appType: 'mpa',
    build: { outDir: folder },
    preview: { port, host: 'localhost', strictPort: port > 0 },
  });

/** Until everything is kept: the worker is then active. */
async function kept(page: Page): Promise<void> {
  await page.evaluate(async () => {
    const { active } = await navigator.serviceWorker.ready;
    if (active?.state === 'activated') return;
    await new Promise<void>((done) => {
      active?.addEventListener('statechange', () => active.state === 'activated' && done());
    });
  });
}

/** The same app, built anew as the browser sees it: another list of files, another page. */
function newVersion(mark: string): void {
  const app = join(folder, 'tools', 'stillspot');
  const worker = join(app, 'service-worker.js');
  writeFileSync(worker, readFileSync(worker, 'utf8').replace(/const VERSION = "[^"]*"/, `const VERSION = "${mark}"`));
  const page = join(app, 'index.html');
  const html = readFileSync(page, 'utf8').replace(/<meta name="mark"[^>]*>/, '');
  writeFileSync(page, html.replace('</head>', `<meta name="mark" content="${mark}"></head>`));
}

const markOf = (page: Page) => page.locator('meta[name="mark"]').getAttribute('content');
const titleOf = (page: Page) => page.getByLabel('Title of the sheet').inputValue();

async function titled(page: Page, title: string): Promise<void> {
  await page.getByLabel('Title of the sheet').fill(title);
  await page.getByLabel('Title of the sheet').press('Enter');
  await page.getByText(/^saved /).waitFor();
}

describe('without a network', () => {
  it('the app opens after one visit, with its samples, its worker and its pictures', async () => {
    const { page, expectNoTroubles } = await openPage({ site, serviceWorkers: 'allow' });
    await kept(page);
    await titled(page, 'Kept at home');
    // Stricter than a browser told to be offline: there is nobody to answer.
    const { port } = new URL(site);
    await server.close();
    try {
      await page.goto(`${site}?again`);
      expect(await titleOf(page)).toBe('Kept at home');
      await page.getByRole('button', { name: 'Samples' }).click();
      await page
        .getByRole('button', { name: /Boarding|boarding/ })
        .first()
        .click();
      await expect.poll(() => titleOf(page)).not.toBe('Kept at home');
      const picture = await download(page, () => page.getByRole('button', { name: 'Picture' }).click());
      expect(pngSize(picture.bytes).width).toBeGreaterThan(1000);
      expectNoTroubles();
    } finally {
      server = await serve(Number(port));
    }
    await page.context().close();
  });
});

describe('a new version', () => {
  it('announces itself, starts when it is told to, and leaves the plan and the walls under way as they were', async () => {
    const { page, context } = await openPage({ site, serviceWorkers: 'allow' });
    await kept(page);
    await page.reload();
    await titled(page, 'Open work');
    await page.keyboard.press('Escape');
    const other = await context.newPage();
    await other.goto(site);
    await other.getByLabel('Title of the sheet').waitFor();
    newVersion('second');
    await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
    await page.getByText('A newer Stillspot is ready.').waitFor();
    await page.waitForTimeout(500);
    expect(await page.locator('meta[name="mark"]').count()).toBe(0); // still the old one

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
    await page.getByRole('button', { name: 'Start it' }).click();
    await expect.poll(() => markOf(page).catch(() => '')).toBe('second');
    expect(await titleOf(page)).toBe('Open work');
    await expect.poll(() => page.evaluate(() => window.__stillspot?.store.getState().chain.corners.length)).toBe(2);
    await other.getByText('A newer Stillspot was started in another tab.').waitFor();
    await context.close();
  });

  it('waits while the plan cannot be saved', async () => {
    const { page, context } = await openPage({ site, serviceWorkers: 'allow' });
    await kept(page);
    await page.reload();
    newVersion('third');
    await page.evaluate(async () => (await navigator.serviceWorker.ready).update());
    await page.getByText('A newer Stillspot is ready.').waitFor();
    await page.evaluate(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('full', 'QuotaExceededError');
      };
    });
    await page.getByRole('button', { name: 'Start it' }).click();
    await page.getByText('The plan could not be saved in this browser. Save it as a file first.').waitFor();
    expect(await markOf(page)).toBe('second');
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
});
