import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { editorOf } from './editor.ts';
import { download, openPage } from './harness.ts';
import { openSample, openStage, pickSample, saved } from './samples.ts';

const plan = (page: Page) => page.evaluate(() => window.__stillspot?.store.getState().plan);
async function openSaved(page: Page): Promise<void> {
  await openSample(page, 'Plain basement');
  await saved(page);
}
async function retitle(page: Page, text: string): Promise<void> {
  await page.getByRole('banner').getByLabel('Title of the plan').fill(text);
  await page.keyboard.press('Enter');
}

describe('the copy in the browser', () => {
  it('brings plan, level and selection back after a reload', async () => {
    const { page, expectNoTroubles } = await openPage();
    await openSaved(page);
    await page.evaluate(() => window.__stillspot?.store.getState().select(['t1']));
    await retitle(page, 'After the reload');
    await saved(page);
    const before = await plan(page);
    await page.reload();
    await page.getByRole('heading', { name: 'Desk' }).waitFor();
    await expect.poll(() => plan(page)).toEqual(before);
    await expect.poll(() => page.evaluate(() => window.__stillspot?.store.getState().selection)).toEqual(['t1']);
    expectNoTroubles();
  });

  it('holds what was drawn a moment before the page was left', async () => {
    const { page } = await openPage();
    await openSaved(page);
    await retitle(page, 'Left at once');
    await page.reload(); // no wait: leaving the page saves pending changes
    await expect.poll(async () => (await plan(page))?.title).toBe('Left at once');
  });

  it('holds what stands in a field that was not left: at a reload, and at a rest', async () => {
    const { page } = await openPage();
    await openSaved(page);
    const title = page.getByRole('banner').getByLabel('Title of the plan');
    await title.fill('Typed, not left');
    await page.reload();
    await expect.poll(async () => (await plan(page))?.title).toBe('Typed, not left');
    await title.fill('Typed, and rested');
    await expect.poll(async () => (await plan(page))?.title).toBe('Typed, and rested');
    expect(await title.evaluate((field) => field === document.activeElement)).toBe(true);
    await openStage(page, 'Time');
    const fetched = page.getByLabel('Picked up', { exact: true });
    await fetched.fill('2026-03-09T18:05');
    await page.reload();
    await expect.poll(async () => (await plan(page))?.visit.end).toMatch(/^2026-03-09T18:05:00/);
    await openStage(page, 'Time');
    await fetched.fill('2026-03-09T18:15');
    await expect.poll(async () => (await plan(page))?.visit.end).toMatch(/^2026-03-09T18:15:00/);
    expect(await fetched.evaluate((field) => field === document.activeElement)).toBe(true);
  });

  it('brings the plan back after the tab has crashed', async () => {
    const { page, context } = await openPage();
    await openSaved(page);
    await retitle(page, 'Before the crash');
    await saved(page);
    const address = page.url();
    const session = await context.newCDPSession(page);
    void session.send('Page.crash').catch(() => undefined); // the reply never comes
    await page.waitForEvent('crash');
    const next = await context.newPage();
    await next.goto(address);
    await expect.poll(async () => (await plan(next))?.title).toBe('Before the crash');
  });

  it('killed in the middle of a drag, keeps all that was set down before it, and the drag counts for nothing', async () => {
    const { page, context } = await openPage();
    await openSaved(page);
    const editor = await editorOf(page);
    await page.evaluate(() => window.__stillspot?.store.getState().select(['t1']));
    await page.locator('.plan-canvas').focus();
    await page.keyboard.press('ArrowRight'); // moved by an inch
    const before = (await plan(page))?.levels;
    await saved(page);
    const at = await editor.at(await editor.detectorAt());
    await page.mouse.move(at.x, at.y);
    await page.mouse.down();
    await page.mouse.move(at.x + 90, at.y + 40, { steps: 6 });
    // The desk is being dragged, because it is selected.
    await expect.poll(() => page.evaluate(() => window.__stillspot?.store.getState().previewPlan !== null)).toBe(true);
    const address = page.url();
    const session = await context.newCDPSession(page);
    void session.send('Page.crash').catch(() => undefined); // the reply never comes
    await page.waitForEvent('crash');
    const next = await context.newPage();
    await next.goto(address);
    await expect.poll(async () => (await plan(next))?.levels).toEqual(before);
    await expect.poll(() => next.evaluate(() => window.__stillspot?.store.getState().previewPlan)).toBeNull();
  });

  it('keeps aside what cannot be read, and says so', async () => {
    const { page } = await openPage();
    await openSaved(page);
    await page.evaluate(async () => {
      const db = await new Promise<IDBDatabase>((done) => {
        const request = indexedDB.open('stillspot-shelf');
        request.onsuccess = () => done(request.result);
      });
      const store = db.transaction('texts', 'readwrite').objectStore('texts');
      await new Promise((done) => {
        const read = store.getAll();
        read.onsuccess = () => {
          const text = { pieces: ['{ "format": "stillspot-plan", "half": '], long: [] };
          store.put({ ...read.result[0], text }).onsuccess = done;
        };
      });
      db.close();
    });
    await page.reload();
    await page.getByText('That plan could not be read. It is in Plans and can be saved as a file.').waitFor();
    await pickSample(page, /^Finch Lane, basement.*Could not be read/);
    await page.getByText('This could not be read as a plan.').waitFor();
    const { bytes } = await download(page, () => page.getByRole('button', { name: 'Save as a file' }).click());
    expect(bytes.toString('utf8')).toBe('{ "format": "stillspot-plan", "half": ');
  });
});

describe('a store that takes nothing', () => {
  it('is told in words with the way out, and the plan stays on the sheet', async () => {
    const { page, context } = await openPage();
    await context.addInitScript(() => {
      IDBObjectStore.prototype.put = () => {
        throw new DOMException('no room', 'QuotaExceededError');
      };
    });
    await page.reload();
    await retitle(page, 'No room');
    const sign = page.getByText(/could not save: The storage of this browser is full/);
    await sign.waitFor();
    await page.getByRole('button', { name: 'Save as a file' }).waitFor();
    await expect.poll(async () => (await plan(page))?.title).toBe('No room');
  });

  it('opens the page where a store may not be opened at all', async () => {
    const { page, context } = await openPage();
    await context.addInitScript(() => {
      IDBFactory.prototype.open = () => {
        throw new DOMException('not here', 'SecurityError');
      };
    });
    await page.reload();
    await page.getByText(/could not save: This browser stores nothing for this page/).waitFor();
    await page.getByRole('heading', { name: 'Start with the room that you are in.' }).waitFor();
  });
});

describe('two tabs', () => {
  it('never write over each other without asking', async () => {
    const { page: first, context } = await openPage();
    await openSaved(first);
    const second = await context.newPage();
    await second.goto(first.url());
    await expect.poll(async () => (await plan(second))?.title).toBe('Finch Lane, basement');

    await retitle(second, 'From the second tab');
    await saved(second);
    await first.getByText(/Another tab changed this plan at/).waitFor();
    await first.clock.install();
    await retitle(first, 'From the first tab');
    await first.clock.runFor(5000); // longer than the delay before a copy is saved
    await expect.poll(async () => (await plan(first))?.title).toBe('From the first tab');

    const third = await context.newPage();
    await third.goto(first.url());
    await expect.poll(async () => (await plan(third))?.title).toBe('From the second tab');
    await third.close();
    await first.bringToFront();

    await first.getByRole('button', { name: 'Show the other plan' }).click();
    await expect.poll(async () => (await plan(first))?.title).toBe('From the second tab');
    await first.getByRole('banner').getByRole('button', { name: 'Plans' }).click();
    await first.getByRole('button', { name: 'More about From the second tab' }).click();
    await first.getByRole('button', { name: 'Earlier versions' }).click();
    await first.getByRole('button', { name: /from another tab/ }).click();
    await first.getByText('title changed').waitFor();
    await first.getByRole('button', { name: 'Restore this version' }).click();
    await expect.poll(async () => (await plan(first))?.title).toBe('From the first tab');
    await first.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(async () => (await plan(first))?.title).toBe('From the second tab');
  });
});
