import type { BrowserContext, Page } from 'playwright-core';
import { describe, expect, inject, it, onTestFinished } from 'vitest';
import { howMany, isLongRun } from '../helpers/how-many.ts';
import { openPage } from './harness.ts';
import { OwnBrowser, openApp } from './own-browser.ts';
import { saved } from './samples.ts';

const STORE = 'stillspot-shelf';
const planTitle = (page: Page) => page.evaluate(() => window.__stillspot?.store.getState().plan.title ?? '');
const retitle = (page: Page, text: string) =>
  page.evaluate((title) => window.__stillspot?.store.getState().run((plan) => ({ ...plan, title })), text);
/** The fault as shown in the status of the header. */
const couldNotSave = (page: Page) => page.getByText(/could not save:/).first();

async function openTitled(title: string) {
  const { page, context } = await openPage();
  // The hook loads with the sheet, after the first frame.
  await page.waitForFunction(() => window.__stillspot);
  await retitle(page, title);
  await saved(page);
  return { page, context };
}

/** Returns the stored title, read again after a reload. */
async function afterReload(page: Page): Promise<string> {
  await page.reload();
  await page.waitForFunction(() => window.__stillspot?.store.getState().plan.title);
  return planTitle(page);
}

type Way = 'it throws' | 'its request fails' | 'its transaction is aborted';

/** Makes every write of a plan's text fail in one way while `window.isFailing`. */
const letWritesFail = (page: Page, way: Way) =>
  page.evaluate((how) => {
    const state = window as unknown as { isFailing: boolean };
    state.isFailing = true;
    const put = IDBObjectStore.prototype.put;
    IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...args: Parameters<typeof put>) {
      if (!state.isFailing || this.name !== 'texts') return put.apply(this, args);
      if (how === 'it throws') throw new DOMException('no room', 'QuotaExceededError');
      if (how === 'its request fails') return this.add(...args); // the plan exists already
      const request = put.apply(this, args);
      request.addEventListener('success', () => this.transaction.abort());
      return request;
    };
  }, way);

describe('a write that fails', () => {
  it.each<Way>(['it throws', 'its request fails', 'its transaction is aborted'])(
    'because %s is told, loses nothing that was saved, and the next one is tried',
    async (way) => {
      const { page } = await openTitled('Saved before');
      await letWritesFail(page, way);
      await retitle(page, 'While it fails');
      await couldNotSave(page).waitFor();
      await page.getByRole('button', { name: 'Save as a file' }).first().waitFor();
      expect(await planTitle(page)).toBe('While it fails');
      await page.evaluate(() => {
        (window as unknown as { isFailing: boolean }).isFailing = false;
      });
      await retitle(page, 'After it');
      await saved(page);
      await expect.poll(() => couldNotSave(page).count()).toBe(0);
      expect(await afterReload(page)).toBe('After it');
    },
  );
});

describe('the room that the browser gives', () => {
  it.runIf(isLongRun)(
    'is used up: told with the way out, what was saved stays, and saving goes on once there is room',
    async () => {
      const own = new OwnBrowser();
      onTestFinished(() => own.remove());
      const page = await own.start();
      // Before the app writes for the first time, because the browser checks the remaining space only now and then.
      await page.goto(inject('emptyUrl'));
      const context = page.context();
      const session = await context.newCDPSession(page);
      const { origin } = new URL(page.url());
      await session.send('Storage.overrideQuotaForOrigin', { origin, quotaSize: 2_000_000 });
      await openApp(page, inject('siteUrl'));
      await retitle(page, 'Saved before');
      await saved(page);
      await page.evaluate(() => {
        let random = 1;
        const digit = () => {
          random = (random * 48_271) % 2_147_483_647; // Lehmer's generator: the text cannot be compressed
          return (random % 36).toString(36);
        };
        const note = Array.from({ length: 9000 }, digit).join('');
        const conditions = Array.from({ length: 1500 }, (_, i) => ({
          item: `own-${i}`,
          state: 'unknown' as const,
          at: null,
          note: `${i} ${note}`,
        }));
        window.__stillspot?.store.getState().run((plan) => ({ ...plan, title: 'No room', conditions }));
      });
      await page.getByText(/could not save: The storage of this browser is full/).waitFor();
      const other = await context.newPage();
      await other.goto(page.url());
      await expect.poll(() => planTitle(other)).toBe('Saved before');
      await other.close();
      await session.send('Storage.overrideQuotaForOrigin', { origin });
      await retitle(page, 'Room again');
      await saved(page);
      expect(await afterReload(page)).toBe('Room again');
    },
  );

  it('is taken away with all that was in it: the open plan is stored again with its next change', async () => {
    const { page, context } = await openTitled('Saved before');
    const session = await context.newCDPSession(page);
    const { origin } = new URL(page.url());
    await session.send('Storage.clearDataForOrigin', { origin, storageTypes: 'all' });
    await retitle(page, 'After the eviction');
    await saved(page);
    expect(await afterReload(page)).toBe('After the eviction');
  });
});

/** Deletes the store from another page, or opens it there as a newer version would. */
async function takeAway(context: BrowserContext, how: 'delete' | 'upgrade'): Promise<void> {
  const other = await context.newPage();
  await other.goto(inject('emptyUrl'));
  await other.evaluate(
    ({ name, isDeleted }) =>
      new Promise<void>((done, failed) => {
        const request = isDeleted ? indexedDB.deleteDatabase(name) : indexedDB.open(name, 99);
        request.onsuccess = () => done();
        request.onerror = () => failed(request.error);
      }),
    { name: STORE, isDeleted: how === 'delete' },
  );
}

describe('a store that another page takes away', () => {
  it('by deleting it: the open plan is stored again with its next change', async () => {
    const { page, context } = await openTitled('Saved before');
    await takeAway(context, 'delete');
    await retitle(page, 'After it was deleted');
    await saved(page);
    expect(await afterReload(page)).toBe('After it was deleted');
  });

  it('by a newer version: told with the way out, and the plan stays', async () => {
    const { page, context } = await openTitled('Saved before');
    await takeAway(context, 'upgrade');
    await retitle(page, 'Not to be stored');
    await page.getByText(/could not save: A newer Stillspot has been used in this browser/).waitFor();
    expect(await planTitle(page)).toBe('Not to be stored');
  });
});

describe('two tabs of one plan', () => {
  it('race: one of them wins, the other one is told, and no change is half there', async () => {
    const { page: first, context } = await openTitled('Race 0');
    const second = await context.newPage();
    await second.goto(first.url());
    await expect.poll(() => planTitle(second)).toBe('Race 0');
    for (let race = 1; race <= howMany(3, 50); race++) {
      await Promise.all([retitle(first, `Race ${race}, first`), retitle(second, `Race ${race}, second`)]);
      const held = (page: Page) => page.getByText(/Another tab changed this plan at/);
      const isHeld = async () => Promise.all([first, second].map(async (page) => (await held(page).count()) > 0));
      await expect.poll(async () => (await isHeld()).filter(Boolean).length).toBe(1);
      const [firstLost] = await isHeld();
      const [winner, loser] = firstLost ? [second, first] : [first, second];
      await saved(winner);
      const third = await context.newPage();
      await third.goto(first.url());
      await expect.poll(() => planTitle(third)).toBe(await planTitle(winner));
      await third.close();
      await loser.getByRole('button', { name: 'Show the other plan' }).click();
      await expect.poll(() => planTitle(loser)).toBe(await planTitle(winner));
      await expect.poll(async () => (await isHeld()).filter(Boolean).length).toBe(0);
    }
  });
});
