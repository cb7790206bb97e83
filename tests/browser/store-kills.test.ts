import fc from 'fast-check';
import type { Page } from 'playwright-core';
import { afterAll, afterEach, describe, expect, inject, it } from 'vitest';
import { howMany, isLongRun } from '../helpers/how-many.ts';
import { OwnBrowser, openApp } from './own-browser.ts';

/** A change that is older than this at the kill must be in the store, ms. */
const MOST_LOST_MS = 500;
const own = new OwnBrowser();

/** What the page records about its own changes. */
interface Noted {
  changes: number[];
  held: number;
}

interface Kill {
  /** Time between two changes, ms. */
  readonly every: number;
  /** From the first change to the kill, ms. */
  readonly after: number;
}

const kills: readonly Kill[] = fc.sample(
  fc.noBias(fc.record({ every: fc.integer({ min: 50, max: 1000 }), after: fc.integer({ min: 600, max: 4000 }) })),
  { numRuns: howMany(1, 50), seed: 20_261_129 },
);

/**
 * Changes the title repeatedly. `window.changes` has the time of each change by the clock of the page, `window.held` the last change that
 * was found in the store.
 */
const changeOverAndOver = (page: Page, every: number) =>
  page.evaluate((ms) => {
    const noted = window as unknown as Noted;
    noted.changes = [];
    noted.held = 0;
    const change = () => {
      noted.changes.push(performance.now());
      const title = `Change ${noted.changes.length}`;
      const named = <T extends object>(part: T) => ({ ...part, name: title });
      window.__stillspot?.store.getState().run((plan) => ({ ...plan, title, levels: plan.levels.map(named) }));
    };
    change();
    setInterval(change, ms);
    const opening = indexedDB.open('stillspot-shelf');
    opening.onsuccess = () => {
      const look = () => {
        const asked = opening.result.transaction('cards').objectStore('cards').getAll();
        asked.onsuccess = () => {
          const title: string = asked.result[0]?.title ?? '';
          noted.held = Number(/^Change (\d+)$/.exec(title)?.[1] ?? 0);
          setTimeout(look, 20);
        };
      };
      look();
    };
  }, every);

const noted = (page: Page) =>
  page.evaluate(() => {
    const { changes, held } = window as unknown as Noted;
    return { changes, held, now: performance.now() };
  });

afterEach(() => own.kill());
afterAll(() => own.remove());

describe('a browser that is killed while the plan is changed', () => {
  it.each(kills)('every $every ms, after $after ms: what the store held is there, whole', async ({ every, after }) => {
    const page = await openApp(await own.start(), inject('siteUrl'));
    await changeOverAndOver(page, every);
    await page.waitForTimeout(after);
    await expect.poll(async () => (await noted(page)).held).toBeGreaterThan(0);
    const { changes, held, now } = await noted(page);
    await own.kill();
    const again = await openApp(await own.start(), inject('siteUrl'));
    const names = () =>
      again.evaluate(() => {
        const { plan } = window.__stillspot?.store.getState() ?? {};
        return [plan?.title ?? '', ...(plan?.levels.map(({ name }) => name) ?? [])];
      });
    await expect.poll(async () => (await names())[0]).toMatch(/^Change \d+$/);
    // Title and levels are from one change.
    const [title = '', ...levels] = await names();
    expect(levels).toEqual([title]);
    const kept = Number(title.split(' ')[1]);
    expect(kept).toBeGreaterThanOrEqual(held);
    // Times are compared only in the long run, which has the machine to itself: no change older than half a second is missing.
    if (isLongRun) expect(kept).toBeGreaterThanOrEqual(changes.filter((at) => at <= now - MOST_LOST_MS).length);
  });
});
