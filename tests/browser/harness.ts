import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { AxeResults } from 'axe-core';
import {
  type Browser,
  type BrowserContext,
  type BrowserContextOptions,
  type CDPSession,
  chromium,
  type Download,
  type Page,
} from 'playwright-core';
import { expect, inject } from 'vitest';
import { BROWSER_ARGS, findHeadlessBrowser } from '../run/find-browser.mjs';
import { PagePool } from './page-pool.ts';

const require = createRequire(import.meta.url);
const AXE = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');

/** How many times slower than this machine every page runs: STILLSPOT_SLOW=5 is an old tablet. 1 when it is not set. */
const SLOW = Number(process.env.STILLSPOT_SLOW ?? 1);

/** CSS pixels of the page's viewport, x right, y down. */
export interface PagePoint {
  readonly x: number;
  readonly y: number;
}

export interface PageOptions {
  /** CSS pixels. */
  readonly viewport?: { readonly width: number; readonly height: number };
  /** A tablet: touch events instead of a mouse. */
  readonly touch?: boolean;
  readonly deviceScaleFactor?: number;
  /** What the system of the visitor asks for. */
  readonly media?: Pick<BrowserContextOptions, 'colorScheme' | 'contrast' | 'forcedColors' | 'reducedMotion'>;
  readonly serviceWorkers?: 'allow' | 'block';
  /** Another address than that of the built app. */
  readonly site?: string;
  /** Path below the app's address, say "?sample=2". */
  readonly path?: string;
}

export interface OpenPage {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Everything the page printed as an error or threw, oldest first. */
  readonly troubles: readonly string[];
  /** Fails the test when the page printed an error or threw one. */
  expectNoTroubles(): void;
}

/** A browser of this process, which ends with it: through one for all of them every message would be written and read twice. */
export const startBrowser = (): Promise<Browser> =>
  chromium.launch({ executablePath: findHeadlessBrowser(), args: BROWSER_ARGS });

let pool: PagePool | undefined;

async function sharedPool(): Promise<PagePool> {
  pool ??= new PagePool(await startBrowser(), inject('emptyUrl'), { context: withoutIdleMoments, page: slowDown });
  return pool;
}

/** The contexts that were opened since the test began; null between tests. */
let openedInTest: BrowserContext[] | null = null;

/** From here on a page that is opened belongs to the test: `endTest` gives it back. Not those of `beforeAll`. `each-file.ts` calls both. */
export function beginTest(): void {
  openedInTest = [];
}

export async function endTest(): Promise<void> {
  const opened = openedInTest ?? [];
  openedInTest = null;
  await Promise.all(opened.map((context) => context.close()));
}

/** Gives back the pages of this file. `each-file.ts` sees to it after each file. */
export async function closePages(): Promise<void> {
  await pool?.takeBack();
}

/**
 * Opens the built app in a context of its own: nothing is stored from an earlier one (`page-pool.ts`). It costs up to 2 s, so one per file is
 * enough where the tests can start from "new plan". Given back after the test that opened it (opened in `beforeAll`: after the file's last test), or by `context.close`.
 */
export async function openPage(options: PageOptions = {}): Promise<OpenPage> {
  const touch = options.touch ?? false;
  const wanted = {
    viewport: options.viewport ?? { width: 1440, height: 900 },
    deviceScaleFactor: options.deviceScaleFactor ?? 1,
    hasTouch: touch,
    isMobile: touch,
    acceptDownloads: true,
    ...options.media,
    // Each test sees the app as it is served; offline.test.ts tries what the worker keeps.
    serviceWorkers: options.serviceWorkers ?? 'block',
  } as const;
  const isAlone = options.site !== undefined || wanted.serviceWorkers === 'allow';
  const { page, context, troubles } = await (await sharedPool()).lease(wanted, isAlone);
  openedInTest?.push(context);
  // Less than a test has in all: what is waited for in vain is then named.
  context.setDefaultTimeout(180_000 * SLOW);
  withoutAnnouncer(page);
  await page.goto((options.site ?? inject('siteUrl')) + (options.path ?? ''));
  // Before its first picture the app has not laid out the plan of last time, and keeps nothing: nobody could act yet.
  await page.locator('#root > *').first().waitFor();
  return { page, context, troubles, expectNoTroubles: () => expect(troubles).toEqual([]) };
}

/** A text is looked for where it is seen: the announcer says it a second time, a moment later. It is asked for as `#announcer`. */
function withoutAnnouncer(page: Page & { isWithoutAnnouncer?: true }): void {
  if (page.isWithoutAnnouncer) return; // a page may be lent again
  const getByText = page.getByText.bind(page);
  page.getByText = (text, options) => getByText(text, options).and(page.locator(':not(#announcer)'));
  page.isWithoutAnnouncer = true;
}

/**
 * A page of the pool loads a part of the app when it is shown, as where somebody is quicker than the idle moments after the start: to load all
 * of them costs as much as to open the page. A page that is alone has idle moments.
 */
async function withoutIdleMoments(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    window.requestIdleCallback = () => 0;
  });
}

/** Takes the page's processor away for a part of the time, as long as the page is open. */
async function slowDown(page: Page): Promise<void> {
  if (SLOW <= 1) return;
  // Never detached: that would end the slowness.
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOW });
}

/** Comes back when no part of the page is still on its way: what is looked for in vain, or listed, is then all there. */
export const partsThere = (page: Page): Promise<void> =>
  page.locator('.later:not(.later--missing)').first().waitFor({ state: 'detached' });

/**
 * Comes back when the page has done what it had put off and has drawn two pictures since: the second holds all that the first one asked for.
 * No time is waited for, only the page's own turns.
 */
export async function settled(page: Page): Promise<void> {
  await partsThere(page);
  await page.evaluate(
    () =>
      new Promise<void>((done) => {
        setTimeout(() => requestAnimationFrame(() => requestAnimationFrame(() => done())));
      }),
  );
}

/** Comes back when the announcer and the keeper of the focus, which come after the start, are there. */
export const announcerReady = (page: Page): Promise<void> =>
  page.locator('#announcer[aria-atomic="true"]').waitFor({ state: 'attached' });

/** Drags with the mouse in small steps: a canvas drag starts only after 3 px, so one big step is no drag. */
export async function drag(page: Page, from: PagePoint, to: PagePoint, steps = 8): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps });
  await page.mouse.up();
}

/** The page's session of the browser's protocol, to send input only: its context can be lent again then. */
export const inputSession = async (page: Page): Promise<CDPSession> => (await sharedPool()).sessionOf(page);

/** How long a finger takes over a drag, and rests at its end, s. */
const FINGER_S = { moves: 0.3, rests: 0.2 } as const;

/**
 * Drags with one finger, through the browser's own input: the page needs `touch: true`. By its own account the finger rests before it lifts:
 * a browser takes one that does not for a throw, and drops a tap that follows.
 */
export async function touchDrag(page: Page, from: PagePoint, to: PagePoint, steps = 8): Promise<void> {
  const session = await inputSession(page);
  const end = Date.now() / 1000;
  const start = end - FINGER_S.rests - FINGER_S.moves;
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', touchPoints: PagePoint[], timestamp: number) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints, timestamp });
  await touch('touchStart', [from], start);
  for (let step = 1; step <= steps; step++) {
    const share = step / steps;
    const at = { x: from.x + (to.x - from.x) * share, y: from.y + (to.y - from.y) * share };
    await touch('touchMove', [at], start + share * FINGER_S.moves);
  }
  await touch('touchEnd', [], end);
}

/**
 * What `action` makes the page download: its proposed file name and its bytes. Where an act before it made several files, `wanted` says which
 * is meant: on a slow machine the last of the others may come only now.
 */
export async function download(
  page: Page,
  action: () => Promise<unknown>,
  wanted = /./,
): Promise<{ readonly name: string; readonly bytes: Buffer }> {
  const isWanted = (file: Download) => wanted.test(file.suggestedFilename());
  const [file]: [Download, unknown] = await Promise.all([page.waitForEvent('download', isWanted), action()]);
  const chunks: Buffer[] = [];
  for await (const chunk of await file.createReadStream()) chunks.push(chunk as Buffer);
  return { name: file.suggestedFilename(), bytes: Buffer.concat(chunks) };
}

/** Width and height of a PNG, in its own pixels. Throws when the bytes are no PNG. */
export function pngSize(bytes: Buffer): { readonly width: number; readonly height: number } {
  if (bytes.length < 24 || bytes.toString('latin1', 1, 4) !== 'PNG') throw new Error('These bytes are no PNG.');
  return { width: bytes.readUInt32BE(16), height: bytes.readUInt32BE(20) };
}

/** Accessibility findings of the whole page, one line each. axe sees nothing inside a canvas. */
export async function accessibilityFindings(page: Page): Promise<string[]> {
  await partsThere(page);
  // Once a page: it is half a megabyte to be read.
  if (!(await page.evaluate(() => 'axe' in window))) {
    // Not as a script of the page: its policy allows its own ones alone.
    await page.evaluate(AXE);
  }
  const tags = ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice'];
  // Only what is against a rule comes back: all that axe has looked at is half a megabyte as well.
  const violations = await page.evaluate(async (values): Promise<AxeResults['violations']> => {
    const { axe } = window as unknown as { axe: typeof import('axe-core') };
    const found = await axe.run(document, { runOnly: { type: 'tag', values }, resultTypes: ['violations'] });
    return found.violations;
  }, tags);
  return violations.map(({ id, help, nodes }) => `${id}: ${help} (${nodes[0]?.html ?? 'no element'})`);
}

/** Red, green, blue, alpha of one spot, 0 to 255 each. */
export type Pixel = readonly [number, number, number, number];

/**
 * Color of one CSS pixel of the page as it is shown, all canvas layers together. Take the middle of a fill: edges
 * are mixed with what lies beside them.
 */
export async function pixelAt(page: Page, at: PagePoint): Promise<Pixel> {
  const shot = await page.screenshot({ clip: { x: at.x, y: at.y, width: 1, height: 1 } });
  return imagePixel(page, shot, { x: 0, y: 0 });
}

/** Color of one pixel of a picture file (PNG, JPEG, WebP, SVG is not read). `at` counts the picture's own pixels. */
export async function imagePixel(page: Page, bytes: Buffer, at: PagePoint): Promise<Pixel> {
  return page.evaluate(
    async ({ base64, x, y }) => {
      const raw = Uint8Array.from(atob(base64), (char) => char.charCodeAt(0));
      const bitmap = await createImageBitmap(new Blob([raw]));
      if (x >= bitmap.width || y >= bitmap.height)
        throw new Error(`(${x}, ${y}) lies outside a picture of ${bitmap.width} by ${bitmap.height}.`);
      const context = new OffscreenCanvas(1, 1).getContext('2d');
      if (!context) throw new Error('This browser draws no canvas.');
      context.drawImage(bitmap, -x, -y);
      const [red = 0, green = 0, blue = 0, alpha = 0] = context.getImageData(0, 0, 1, 1).data;
      return [red, green, blue, alpha] as const;
    },
    { base64: bytes.toString('base64'), ...at },
  );
}
