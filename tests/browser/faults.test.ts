import type { BrowserContext, Page } from 'playwright-core';
import { beforeEach, describe, expect, inject, it } from 'vitest';
import { someOf } from '../helpers/how-many.ts';
import { editorOf } from './editor.ts';
import { accessibilityFindings, download, openPage, pixelAt } from './harness.ts';
import { openSample, openStage, saved } from './samples.ts';

const NOT_STARTED = /^Stillspot has not started\./;
const OUT_OF_DATE = /the plan on screen may be out of date/;
/** Limit for waits: nothing here takes longer than the store, whose limit is 4 s. */
const SOON_MS = 30_000;
/** Runs in one task of the page, because the page also tries again by itself and then removes its button. */
const mendAndDrawAgain = (page: Page) =>
  page.getByRole('button', { name: 'Draw it again' }).evaluate((button: HTMLElement) => {
    (window as unknown as { mend: () => void }).mend();
    button.click();
  });
const title = (page: Page) => page.getByLabel('Title of the plan');

describe('a start that cannot be made', () => {
  let page: Page;
  let context: BrowserContext;
  beforeEach(async () => {
    ({ page, context } = await openPage());
    page.setDefaultTimeout(SOON_MS);
  });

  /** Loads the page again and returns when its first bytes have arrived. */
  const load = () => page.goto(inject('siteUrl'), { waitUntil: 'commit' });

  it('says without JavaScript that it is needed', async () => {
    const without = await context.browser()?.newContext({ javaScriptEnabled: false });
    const bare = await without?.newPage();
    await bare?.goto(inject('siteUrl'));
    await bare?.getByText('Stillspot works in the browser and needs JavaScript.').waitFor();
    await without?.close();
  });

  it.each(someOf(['start', 'react', 'rolldown-runtime'], 1))(
    'says that the part "%s" is missing, and offers ways out',
    async (part) => {
      await context.route(`**/assets/${part}-*.js`, (route) => route.fulfill({ status: 404, body: 'not found' }));
      await load();
      await page.getByText(NOT_STARTED).waitFor();
      expect(await accessibilityFindings(page)).toEqual([]);
      await context.unroute(`**/assets/${part}-*.js`);
      await page.getByRole('button', { name: 'Load again' }).click();
      await title(page).waitFor();
    },
  );

  it('says so where the server answers with the start page for a script', async () => {
    await context.route('**/assets/start-*.js', (route) =>
      route.fulfill({ body: '<!doctype html><title>Stillspot</title>', contentType: 'text/html' }),
    );
    await load();
    await page.getByText(NOT_STARTED).waitFor();
    await context.unroute('**/assets/start-*.js');
    await page.getByRole('button', { name: 'Fetch Stillspot anew' }).click();
    await title(page).waitFor();
  });

  it('because it throws is an error of the page: the ways out show at once', async () => {
    const broken = await context.newPage();
    await broken.addInitScript(() => {
      const heard: string[] = [];
      addEventListener('error', ({ message }) => heard.push(message));
      const launchQueue = {
        setConsumer: () => {
          throw new Error('no launch');
        },
      };
      Object.defineProperty(window, 'launchQueue', { value: launchQueue });
      Object.assign(window, { heard });
    });
    await broken.goto(inject('siteUrl'));
    const heard = () => broken.evaluate(() => (window as unknown as { heard: readonly string[] }).heard.join());
    await expect.poll(heard).toContain('no launch');
    await broken.getByText(NOT_STARTED).waitFor();
    await broken.close();
  });

  it('shows words while a script hangs', async () => {
    await context.route('**/assets/start-*.js', () => undefined);
    await load();
    await page.getByText('Starting…').waitFor();
  });

  it('shows words while the style sheet hangs, then ways out', async () => {
    let hangs = true;
    // The route is not removed, because a pending request would then continue.
    await context.route('**/assets/*.css', (route) => (hangs ? undefined : route.continue()));
    await load();
    await page.getByText('Starting…').waitFor();
    await page.getByText(NOT_STARTED).waitFor();
    hangs = false;
    await page.getByRole('button', { name: 'Load again' }).click();
    await title(page).waitFor();
  });

  it('shows words and ways out where the style sheet fails: without it the plan lies over what is to be pressed', async () => {
    let fails = true;
    await context.route('**/assets/*.css', (route) =>
      fails ? route.fulfill({ status: 404, body: 'not found' }) : route.continue(),
    );
    await load();
    await page.getByText(NOT_STARTED).waitFor();
    expect(await title(page).count()).toBe(0);
    fails = false;
    await page.getByRole('button', { name: 'Load again' }).click();
    await title(page).waitFor();
    await expect.poll(() => page.getByText(NOT_STARTED).count()).toBe(0);
  });

  it('starts without fonts that hang', async () => {
    await context.route('**/*.woff2', () => undefined);
    await load();
    await title(page).waitFor();
  });

  it('starts without a store that hangs, and says that plans are kept', async () => {
    // Deleting waits for a connection that stays open, and opening waits for the deletion: the same as while another tab has an older version.
    const other = await context.newPage();
    await other.goto(inject('emptyUrl'));
    await other.evaluate(
      () =>
        new Promise<void>((done) => {
          const opening = indexedDB.open('stillspot-shelf');
          opening.onsuccess = () => {
            Object.assign(window, { held: opening.result });
            indexedDB.deleteDatabase('stillspot-shelf').onblocked = () => done();
          };
        }),
    );
    await load();
    await title(page).waitFor();
    await page.getByText('The storage of this browser does not answer').waitFor();
  });
});

describe('a fault while the app runs', () => {
  async function basement(): Promise<{ page: Page; context: BrowserContext }> {
    const { page, context } = await openPage();
    page.setDefaultTimeout(SOON_MS);
    await openSample(page, 'Plain basement');
    await page.getByRole('heading', { name: 'Clear of what is drawn', exact: true }).waitFor();
    await saved(page);
    return { page, context };
  }

  const moveFirst = (page: Page) =>
    page.evaluate(() => {
      const { store } = window.__stillspot ?? {};
      store?.setState({ selection: ['d1'] });
    });

  it('of one picture leaves the others painted, says so, and paints it again when it can', async () => {
    const { page } = await basement();
    await page.evaluate(() => {
      const { prototype } = CanvasRenderingContext2D;
      const { fillText } = prototype;
      Object.assign(window, { mend: () => Object.assign(prototype, { fillText }) });
      prototype.fillText = () => {
        throw new Error('no text today');
      };
    });
    const walls = () => page.evaluate(() => window.__stillspot?.paintCounts().paints.walls ?? 0);
    const before = await walls();
    await moveFirst(page);
    await page.getByText(OUT_OF_DATE).waitFor();
    // The overlay also has text and may have reported it first.
    await expect.poll(walls).toBeGreaterThan(before);
    const { bytes } = await download(page, () => page.getByRole('button', { name: 'Save the plan as a file' }).click());
    expect(JSON.parse(bytes.toString('utf8'))).toMatchObject({ title: 'Finch Lane, basement' });
    await mendAndDrawAgain(page);
    await page.getByText(OUT_OF_DATE).waitFor({ state: 'detached' });
  });

  it('of the hatches leaves no floor white: nothing of the plan is painted until it can be', async () => {
    const { page } = await basement();
    const floor = await (await editorOf(page)).at([1500, 2000]);
    const white = await pixelAt(page, floor);
    await page.evaluate(() => {
      const { prototype } = CanvasRenderingContext2D;
      const { createPattern } = prototype;
      Object.assign(window, { mend: () => Object.assign(prototype, { createPattern }) });
      prototype.createPattern = () => {
        throw new Error('no hatch today');
      };
    });
    await page.evaluate(() => {
      const { store } = window.__stillspot ?? {};
      store?.setState(({ viewport }) => ({ viewport: { ...viewport, scale: 1.01 * viewport.scale } }));
    });
    await page.getByText(OUT_OF_DATE).waitFor();
    expect(await pixelAt(page, floor)).not.toEqual(white);
    await mendAndDrawAgain(page);
    await page.getByText(OUT_OF_DATE).waitFor({ state: 'detached' });
    await expect.poll(() => pixelAt(page, floor)).toEqual(white);
  });

  it('that nobody caught is shown, with the plan as a file', async () => {
    const { page } = await basement();
    await page.evaluate(() => setTimeout(() => Promise.reject(new Error('lost on the way'))));
    await page.getByText(/A fault of Stillspot: something did not work.*lost on the way/).waitFor();
    expect(await accessibilityFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Close', exact: true }).click();
    await page.getByText('lost on the way').waitFor({ state: 'detached' });
  });

  it('of a part that does not load stays in its place, and the rest works', async () => {
    const { page, context } = await openPage();
    await context.route(/questions-.*\.js$/, (route) => route.abort());
    await page.reload();
    await title(page).waitFor();
    await openStage(page, 'Draw');
    await page.getByText('A part of Stillspot did not load.').first().waitFor();
    await title(page).fill('Still here');
    await title(page).press('Enter');
    await saved(page);
    await context.unroute(/questions-.*\.js$/);
  });

  it('of what comes after the start is told: words beside the pointer are then missing', async () => {
    const { page, context } = await openPage();
    await context.route('**/after-start-*.js', (route) => route.abort());
    await page.reload();
    await page.locator('.message').getByText('A part of Stillspot did not load.').waitFor();
    await title(page).fill('Still here');
    await title(page).press('Enter');
    await saved(page);
    await context.unroute('**/after-start-*.js');
  });

  it('of what judges the whole test is told beside the stages, and one press loads it', async () => {
    const { page, context } = await basement();
    await saved(page);
    await context.route(/\/guidance-.*\.js$/, (route) => route.abort());
    await page.reload();
    const row = page.locator('.stage-row__test');
    await row.getByText('A part of Stillspot did not load.').waitFor();
    // No stage is called done, and no verdict is shown as that of a valid test.
    expect((await page.locator('.stage-bar__mark').allTextContents()).join('')).toBe('');
    expect(await page.locator('.verdict-panel').getAttribute('data-test')).toBe('unknown');
    expect(await accessibilityFindings(page)).toEqual([]);
    await context.unroute(/\/guidance-.*\.js$/);
    await row.getByRole('button', { name: 'Try again' }).click();
    await row.getByText('Still to do').waitFor();
  });
});
