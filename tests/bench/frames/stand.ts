import { existsSync, mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, type CDPSession, chromium, type Page } from 'playwright-core';
import { preview } from 'vite';
import type { Plan } from '../../../geometry/plan/model.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { buildTo } from '../../browser/build-site.ts';
import { BROWSER_ARGS, findBrowser } from '../../run/find-browser.mjs';
import { benchPlan } from '../plans.ts';

/** Size of the page, px. */
export const SCREEN = { width: 1440, height: 900 } as const;

export type Sample = 'large' | 'huge';

/** Descriptions of the samples. */
export const SAMPLE_WORDS: Readonly<Record<Sample, string>> = {
  large: 'samples/05-boarding-house.plan.json: 30 rooms, 400 doors, windows, fixtures and objects, 9 detectors',
  huge: 'invented for the benchmarks: 300 rooms, 5,000 doors, windows, fixtures and objects',
};

export function samplePlan(sample: Sample): Plan {
  if (sample === 'huge') return benchPlan('huge');
  const read = parsePlan(readFileSync('samples/05-boarding-house.plan.json', 'utf8'));
  if (!read.ok) throw new Error('the boarding house cannot be read');
  return read.plan;
}

/** A browser, and the app as users get it, except for the hook that the gestures need. */
export interface Stand {
  readonly browser: Browser;
  /** Address of this version, and of the earlier version if one was given. */
  readonly now: string;
  readonly before: string | null;
  stop(): Promise<void>;
}

/** @param before folder that an earlier version was built to. Throws if it holds no build with the hook. */
export async function openStand(before: string | null): Promise<Stand> {
  if (before !== null && !existsSync(join(before, 'assets')))
    throw new Error(
      `${before} holds no built version. Build the earlier version there: npx vite build --mode test-hook --outDir FOLDER`,
    );
  const site = mkdtempSync(join(tmpdir(), 'stillspot-frames-'));
  buildTo(site);
  const servers = await Promise.all([site, ...(before ? [before] : [])].map(served));
  const browser = await chromium.launch({ executablePath: findBrowser(), args: BROWSER_ARGS });
  const [now = '', earlier = null] = servers.map(({ url }) => url);
  return {
    browser,
    now,
    before: earlier,
    stop: async () => {
      await browser.close();
      for (const { close } of servers) await close();
      rmSync(site, { recursive: true, force: true });
    },
  };
}

/** Builds and serves this version. `stop` ends the server and removes the build. */
export async function serveBuilt(): Promise<{ readonly url: string; stop(): Promise<void> }> {
  const site = mkdtempSync(join(tmpdir(), 'stillspot-start-'));
  buildTo(site);
  const { url, close } = await served(site);
  const stop = async () => {
    await close();
    rmSync(site, { recursive: true, force: true });
  };
  return { url, stop };
}

async function served(folder: string): Promise<{ readonly url: string; readonly close: () => Promise<void> }> {
  const server = await preview({
    configFile: false,
    logLevel: 'warn',
    build: { outDir: folder },
    preview: { port: 0, host: 'localhost' },
  });
  const url = server.resolvedUrls?.local[0];
  if (!url) throw new Error('The preview server gave no address.');
  return { url, close: () => server.close() };
}

export interface OpenSheet {
  readonly page: Page;
  readonly cdp: CDPSession;
  close(): Promise<void>;
}

/** Opens the plan in a new page, with all of it in view and drawn. */
export async function openSheet(browser: Browser, url: string, plan: Plan): Promise<OpenSheet> {
  const context = await browser.newContext({ viewport: SCREEN });
  const page = await context.newPage();
  await page.goto(url);
  await page.waitForFunction(() => (window.__stillspot?.store.getState().stageSize.width ?? 0) > 0);
  await page.evaluate((opened) => window.__stillspot?.store.getState().openPlan(opened), plan);
  await page.waitForTimeout(SETTLE_MS);
  return { page, cdp: await context.newCDPSession(page), close: () => context.close() };
}

/** Time until all work after opening a plan is done, ms. */
const SETTLE_MS = 1500;
