import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type BrowserContext, type CDPSession, chromium, type Page } from 'playwright-core';
import { BROWSER_ARGS, findBrowser } from '../../run/find-browser.mjs';
import { SCREEN, samplePlan } from '../frames/stand.ts';

/** One visit. Times in ms since the start of the navigation; bytes as transferred, compressed. */
export interface VisitFigures {
  /** First paint, as the browser reports it. */
  readonly firstPaint: number;
  /** Time until the sheet is drawn, shown, and takes a press. */
  readonly usable: number;
  /** Bytes of page, scripts and style sheets until then. */
  readonly codeBytes: number;
  readonly fontBytes: number;
}

/** A slow mobile connection: 1.6 Mbit/s, 150 ms round trip (common practice, no published source). Throughput in bytes per second. */
export const SLOW_LINE = { downloadThroughput: 200_000, uploadThroughput: 93_750, latency: 150 } as const;

/** A first visit: no cache, no plan, no worker. */
export function firstVisit(url: string, line?: typeof SLOW_LINE): Promise<VisitFigures> {
  return inProfile(async (open) => {
    const { context, page } = await open();
    const figures = await visit(page, url, line);
    await expectPress(page);
    await context.close();
    return figures;
  });
}

/** A visit after a restart of the browser, which has the app and the large level from the visit before. */
export function visitAgain(url: string): Promise<VisitFigures> {
  return inProfile(async (open) => {
    const first = await open();
    await first.page.goto(url);
    await first.page.waitForFunction(() => window.__stillspot && navigator.serviceWorker.controller !== null);
    await first.page.evaluate((plan) => window.__stillspot?.store.getState().openPlan(plan), samplePlan('large'));
    await first.page.getByText(/^saved /).waitFor();
    const address = first.page.url();
    await first.context.close();
    const { context, page } = await open();
    const figures = await visit(page, address);
    await context.close();
    return figures;
  });
}

type Open = () => Promise<{ readonly context: BrowserContext; readonly page: Page }>;

async function inProfile<T>(work: (open: Open) => Promise<T>): Promise<T> {
  const profile = mkdtempSync(join(tmpdir(), 'stillspot-profile-'));
  try {
    return await work(async () => {
      const context = await chromium.launchPersistentContext(profile, {
        executablePath: findBrowser(),
        args: BROWSER_ARGS,
        viewport: SCREEN,
      });
      return { context, page: context.pages()[0] ?? (await context.newPage()) };
    });
  } finally {
    rmSync(profile, { recursive: true, force: true, maxRetries: 5 });
  }
}

const MARK = 'takes a press';

async function visit(page: Page, url: string, line?: typeof SLOW_LINE): Promise<VisitFigures> {
  const cdp = await page.context().newCDPSession(page);
  const bytes = await countBytes(cdp);
  if (line) await cdp.send('Network.emulateNetworkConditions', { offline: false, ...line });
  await page.addInitScript(markWhenUsable, MARK);
  await page.goto(url, { waitUntil: 'commit' });
  await page.waitForFunction((mark) => performance.getEntriesByName(mark).length > 0, MARK);
  const { codeBytes, fontBytes } = bytes();
  const [firstPaint = Number.NaN, usable = Number.NaN] = await page.evaluate(
    (names) => names.map((name) => performance.getEntriesByName(name)[0]?.startTime),
    ['first-contentful-paint', MARK],
  );
  await cdp.detach();
  return { firstPaint, usable, codeBytes, fontBytes };
}

/** Runs in the page before its scripts. The sheet takes input as soon as it has its hook; its drawing is shown a frame later. */
function markWhenUsable(mark: string): void {
  const look = () => {
    const app = window.__stillspot;
    const drawn = app && app.store.getState().stageSize.width > 0 && Object.keys(app.paintCounts().paints).length > 0;
    if (drawn) requestAnimationFrame(() => setTimeout(() => performance.mark(mark), 0));
    else requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
}

async function countBytes(cdp: CDPSession): Promise<() => Pick<VisitFigures, 'codeBytes' | 'fontBytes'>> {
  const kinds = new Map<string, string>();
  const sums: Record<string, number> = {};
  cdp.on('Network.responseReceived', ({ requestId, type }) => kinds.set(requestId, type));
  cdp.on('Network.loadingFinished', ({ requestId, encodedDataLength }) => {
    const kind = kinds.get(requestId) ?? 'Other';
    sums[kind] = (sums[kind] ?? 0) + encodedDataLength;
  });
  await cdp.send('Network.enable');
  const sum = (...types: string[]) => types.reduce((total, type) => total + (sums[type] ?? 0), 0);
  return () => ({ codeBytes: sum('Document', 'Script', 'Stylesheet'), fontBytes: sum('Font') });
}

/** Checks that the app is usable: a real press begins a wall. */
async function expectPress(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Wall after wall' }).click();
  const sheet = await page.locator('.plan-canvas').boundingBox();
  if (!sheet) throw new Error('the page has no sheet');
  await page.mouse.click(sheet.x + sheet.width / 2, sheet.y + sheet.height / 2);
  await page.waitForFunction(() => window.__stillspot?.store.getState().chain.corners.length === 1);
}
