import type { Page } from 'playwright-core';
import { describe, expect, inject, it } from 'vitest';
import { type OpenPage, openPage, startBrowser } from './harness.ts';
import { type Lease, PagePool } from './page-pool.ts';
import { openPair } from './samples.ts';

/** Returns everything that the page's origin has stored, and the length of its history. */
const storedIn = (page: Page) =>
  page.evaluate(async () => ({
    name: window.name,
    cookies: document.cookie,
    local: localStorage.length,
    session: sessionStorage.length,
    caches: await caches.keys(),
    history: history.length,
  }));

async function leaveThings({ page }: OpenPage): Promise<void> {
  await page.evaluate(async () => {
    window.name = 'left';
    await cookieStore.set('left', '1');
    localStorage.setItem('left', '1');
    sessionStorage.setItem('left', '1');
    await (await caches.open('left')).put('/left', new Response('1'));
  });
}

describe('a page that is lent again', () => {
  it('shows and has stored nothing of the one before', async () => {
    const fresh = await openPair({ viewport: { width: 800, height: 600 } });
    await leaveThings(fresh);
    await fresh.context.close();
    const again = await openPage();
    expect(again.context).toBe(fresh.context);
    await again.page.getByRole('heading', { name: 'Start with the room that you are in.' }).waitFor();
    expect(await storedIn(again.page)).toEqual({ name: '', cookies: '', local: 0, session: 0, caches: [], history: 2 });
    expect(await again.page.evaluate(() => [window.innerWidth, window.innerHeight])).toEqual([1440, 900]);
    await again.page.getByRole('banner').getByRole('button', { name: 'Plans' }).click();
    await again.page.getByRole('button', { name: /^Plain basement/ }).waitFor();
    expect(again.troubles).toEqual([]);
    await again.context.close();
  });

  const TRACES: Readonly<Record<string, (lease: Lease) => unknown>> = {
    'a script for each page': ({ context }) => context.addInitScript(() => undefined),
    'a request caught': ({ page }) => page.route('**/never', () => undefined),
    'a clock of its own': ({ page }) => page.clock.install(),
    'no network': ({ context }) => context.setOffline(true),
    'a second page': ({ context }) => context.newPage(),
    'a listener': ({ page }) => page.on('dialog', () => undefined),
    'a button that is down': ({ page }) => page.mouse.down(),
    'a key that is down': ({ page }) => page.keyboard.down('Shift'),
    'a session of the protocol': ({ context, page }) => context.newCDPSession(page),
    'a crash': ({ page }) =>
      Promise.all([page.waitForEvent('crash'), page.goto('chrome://crash').catch(() => undefined)]),
  };

  it('is not one with traces of what was done: that is closed', async () => {
    const browser = await startBrowser();
    const nothing = async () => undefined;
    const pool = new PagePool(browser, inject('emptyUrl'), { context: nothing, page: nothing });
    for (const [name, leave] of Object.entries(TRACES)) {
      const lease = await pool.lease({ viewport: { width: 300, height: 200 } }, false);
      await leave(lease);
      await lease.context.close();
      expect(lease.page.isClosed(), name).toBe(true);
    }
    const clean = await pool.lease({ viewport: { width: 300, height: 200 } }, false);
    await clean.context.close();
    expect(clean.page.isClosed()).toBe(false);
    await browser.close();
  });
});
