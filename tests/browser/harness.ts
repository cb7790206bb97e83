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
import { findHeadlessBrowser, TEST_ARGS, testArgsLeftOut } from '../run/find-browser.mjs';
import { PagePool } from './page-pool.ts';

const require = createRequire(import.meta.url);
const AXE = readFileSync(require.resolve('axe-core/axe.min.js'), 'utf8');

/** Slowdown factor of every page: STILLSPOT_SLOW=5 corresponds to an old tablet. 1 when it is not set. */
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
  /** Preferences of the visitor's system. */
  readonly media?: Pick<BrowserContextOptions, 'colorScheme' | 'contrast' | 'forcedColors' | 'reducedMotion'>;
  readonly serviceWorkers?: 'allow' | 'block';
  /** An address to use instead of that of the built app. */
  readonly site?: string;
  /** Path below the app's address, for example "?sample=2". */
  readonly path?: string;
}

export interface OpenPage {
  readonly page: Page;
  readonly context: BrowserContext;
  /** Everything that the page logged as an error or threw, oldest first. */
  readonly troubles: readonly string[];
  /** Fails the test if the page logged or threw an error. */
  expectNoTroubles(): void;
}

/** Starts a browser for this process, which ends with it: with one browser for all processes every message would be written and read twice. */
export const startBrowser = (): Promise<Browser> =>
  chromium.launch({ executablePath: findHeadlessBrowser(), args: TEST_ARGS, ignoreDefaultArgs: testArgsLeftOut() });

let pool: PagePool | undefined;

async function sharedPool(): Promise<PagePool> {
  pool ??= new PagePool(await startBrowser(), inject('emptyUrl'), { context: withoutIdleMoments, page: slowDown });
  return pool;
}

/** The contexts opened since the test began; null between tests. */
let openedInTest: BrowserContext[] | null = null;

/** Assigns pages opened from now on to the test, so that `endTest` returns them. Pages of `beforeAll` are not. `each-file.ts` calls both. */
export function beginTest(): void {
  openedInTest = [];
}

export async function endTest(): Promise<void> {
  const opened = openedInTest ?? [];
  openedInTest = null;
  await Promise.all(opened.map((context) => context.close()));
}

/** Returns the pages of this file to the pool. `each-file.ts` calls it after each file. */
export async function closePages(): Promise<void> {
  await pool?.takeBack();
}

/**
 * Opens the built app in its own context: nothing is stored from an earlier one (`page-pool.ts`). This takes up to 2 s, so one per file is
 * enough where the tests can start from "new plan". Returned to the pool after the test that opened it (if opened in `beforeAll`: after the
 * file's last test), or by `context.close`.
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
    // Each test uses the app as the server delivers it; offline.test.ts tests the service worker's cache.
    serviceWorkers: options.serviceWorkers ?? 'block',
  } as const;
  const isAlone = options.site !== undefined || wanted.serviceWorkers === 'allow';
  const { page, context, troubles } = await (await sharedPool()).lease(wanted, isAlone);
  openedInTest?.push(context);
  // Shorter than the limit of a whole test, so that a failure names what was waited for.
  context.setDefaultTimeout(180_000 * SLOW);
  withoutAnnouncer(page);
  await page.goto((options.site ?? inject('siteUrl')) + (options.path ?? ''));
  // Before its first frame, the app has not shown the previous plan and saves nothing: nobody could act yet.
  await page.locator('#root > *').first().waitFor();
  return { page, context, troubles, expectNoTroubles: () => expect(troubles).toEqual([]) };
}

/** Excludes the announcer from searches for text, because it repeats visible text a moment later. Tests find it as `#announcer`. */
function withoutAnnouncer(page: Page & { isWithoutAnnouncer?: true }): void {
  if (page.isWithoutAnnouncer) return; // a page may be lent again
  const getByText = page.getByText.bind(page);
  page.getByText = (text, options) => getByText(text, options).and(page.locator(':not(#announcer)'));
  page.isWithoutAnnouncer = true;
}

/**
 * A page of the pool loads a part of the app only when it is shown, as for a user who is faster than the idle time after the start: loading all
 * parts would take as long as opening the page. A page that is not shared has idle time.
 */
async function withoutIdleMoments(context: BrowserContext): Promise<void> {
  await context.addInitScript(() => {
    window.requestIdleCallback = () => 0;
  });
}

/** Slows the page's processor while the page is open. */
async function slowDown(page: Page): Promise<void> {
  if (SLOW <= 1) return;
  // Never detached, because that would end the throttling.
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: SLOW });
}

/** Waits until no part of the page is still loading, so that everything to find or list is there. */
export const partsThere = (page: Page): Promise<void> =>
  page.locator('.later:not(.later--missing)').first().waitFor({ state: 'detached' });

/**
 * Waits until the page has done its deferred work and has drawn two frames since: the second contains everything that the first one requested.
 * Waits for no time, only for tasks of the page.
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

/** Waits until the announcer and the focus guard, which load after the start, are ready. */
export const announcerReady = (page: Page): Promise<void> =>
  page.locator('#announcer[aria-atomic="true"]').waitFor({ state: 'attached' });

/** Drags with the mouse in small steps: a canvas drag starts only after 3 px, and a single big step is no drag. */
export async function drag(page: Page, from: PagePoint, to: PagePoint, steps = 8): Promise<void> {
  await page.mouse.move(from.x, from.y);
  await page.mouse.down();
  await page.mouse.move(to.x, to.y, { steps });
  await page.mouse.up();
}

/** Returns the page's session of the browser's protocol, for sending input only: then its context can be lent again. */
export const inputSession = async (page: Page): Promise<CDPSession> => (await sharedPool()).sessionOf(page);

/** Duration of a finger's drag, and of its rest at the end, s. */
const FINGER_S = { moves: 0.3, rests: 0.2 } as const;

/**
 * Drags with one finger, by the browser's own input; the page needs `touch: true`. By its event times the finger rests before it lifts:
 * otherwise a browser takes the drag for a fling, and drops a tap that follows.
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
 * Returns the file that `action` makes the page download: its proposed name and its bytes. If an earlier action made several files, `wanted`
 * selects one: on a slow machine the last of the others may arrive only now.
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

/** Returns width and height of a PNG, in its own pixels. Throws when the bytes are not a PNG. */
export function pngSize(bytes: Buffer): { readonly width: number; readonly height: number } {
  if (bytes.length < 24 || bytes.toString('latin1', 1, 4) !== 'PNG') throw new Error('These bytes are no PNG.');
  return { width: bytes.readUInt32BE(16), height: bytes.readUInt32BE(20) };
}

/** Returns the accessibility findings of the whole page, one line each. axe sees nothing inside a canvas. */
export async function accessibilityFindings(page: Page): Promise<string[]> {
  await partsThere(page);
  // Loaded once per page, because it is half a megabyte.
  if (!(await page.evaluate(() => 'axe' in window))) {
    // Not as a script of the page, because its policy allows only its own scripts.
    await page.evaluate(AXE);
  }
  const tags = ['wcag2a', 'wcag2aa', 'wcag21aa', 'wcag22aa', 'best-practice'];
  // Only violations are returned: the complete result of axe is half a megabyte as well.
  const violations = await page.evaluate(async (values): Promise<AxeResults['violations']> => {
    const { axe } = window as unknown as { axe: typeof import('axe-core') };
    const found = await axe.run(document, { runOnly: { type: 'tag', values }, resultTypes: ['violations'] });
    return found.violations;
  }, tags);
  return violations.map(({ id, help, nodes }) => `${id}: ${help} (${nodes[0]?.html ?? 'no element'})`);
}

/** Red, green, blue and alpha of one pixel, 0 to 255 each. */
export type Pixel = readonly [number, number, number, number];

/**
 * Returns the color of one CSS pixel of the page as shown, all canvas layers together. Use the middle of a fill: edges
 * are blended with their surroundings.
 */
export async function pixelAt(page: Page, at: PagePoint): Promise<Pixel> {
  const shot = await page.screenshot({ clip: { x: at.x, y: at.y, width: 1, height: 1 } });
  return imagePixel(page, shot, { x: 0, y: 0 });
}

/** Returns the color of one pixel of a picture file (PNG, JPEG, WebP; not SVG). `at` is in the picture's own pixels. */
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
