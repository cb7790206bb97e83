import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Plan } from '../../geometry/plan/model.ts';
import { someOf } from '../helpers/how-many.ts';
import { sample } from './hands.ts';
import { accessibilityFindings, download, type OpenPage, openPage } from './harness.ts';
import { saved } from './samples.ts';
import { tabTo } from './tab-to.ts';

const FINCH = 'Finch Lane, basement';
const plans = (page: Page) => page.getByRole('banner').getByRole('button', { name: 'Plans' });
const library = (page: Page) => page.getByRole('dialog', { name: 'Plans' });
const cards = (page: Page) => library(page).locator('[data-plan]');
const titles = async (page: Page) => (await cards(page).locator('.plan-card__title').allTextContents()).sort();
const said = (page: Page, words: string | RegExp) => library(page).getByText(words).first().waitFor();
const button = (page: Page, name: string | RegExp) =>
  library(page).getByRole('button', typeof name === 'string' ? { name, exact: true } : { name });
const onSheet = (page: Page) => page.evaluate(() => window.__stillspot?.store.getState().plan);
const file = (name: string, value: unknown) => ({
  name,
  mimeType: 'application/json',
  buffer: Buffer.from(JSON.stringify(value)),
});

/** Returns a file of all plans, as another browser would have saved it. */
function shelfFile(all: readonly Plan[]): object {
  const times = { createdAt: 1_700_000_000_000, changedAt: 1_700_000_000_000, binnedAt: null };
  const filed = all.map((plan, index) => ({ id: `from-elsewhere-${index}`, ...times, versions: [], plan }));
  return { format: 'stillspot-shelf', version: 1, savedAt: 1_700_000_000_000, plans: filed, pictures: {} };
}

async function importPlans(page: Page, given: ReturnType<typeof file>): Promise<void> {
  const [chooser] = await Promise.all([page.waitForEvent('filechooser'), button(page, 'Import such a file').click()]);
  await chooser.setFiles(given);
}

describe('by mouse', () => {
  let open: OpenPage;
  let page: Page;
  let everything: unknown;
  beforeAll(async () => {
    open = await openPage();
    page = open.page;
    await plans(page).click();
    await button(page, /^Plain basement/).click();
    await saved(page);
    await plans(page).click();
    await cards(page).first().waitFor();
  });
  afterAll(async () => {
    open.expectNoTroubles();
    await open.context.close();
  });

  it('stands free of findings, with a plan picked', async () => {
    await button(page, `More about ${FINCH}`).click();
    await library(page).locator('.plan-details .count').first().waitFor();
    expect(await accessibilityFindings(page)).toEqual([]);
  });

  it('finds by title, room and detector, and says when there is none', async () => {
    const field = library(page).getByRole('searchbox');
    await field.fill('finch');
    await said(page, '1 plan found.');
    await field.fill('utility');
    await said(page, 'Contains Utility room');
    await field.fill('a2');
    await said(page, 'Contains detector A2');
    await field.fill('lighthouse');
    await said(page, 'No plan has "lighthouse".');
    await expect.poll(() => cards(page).count()).toBe(0);
    await field.fill('');
    await expect.poll(() => titles(page)).toEqual([FINCH]);
  });

  it('renames, in the library and on the sheet', async () => {
    await button(page, 'Save as a file').click(); // stores a version that can be restored
    await said(page, /is in your downloads/);
    await library(page).getByLabel('Title', { exact: true }).fill('Second visit');
    await page.keyboard.press('Enter');
    await said(page, 'Renamed to Second visit.');
    await expect.poll(() => titles(page)).toEqual(['Second visit']);
    await expect.poll(async () => (await onSheet(page))?.title).toBe('Second visit');
  });

  it('shows an earlier version with what has changed, and brings it back', async () => {
    await button(page, 'Earlier versions').click();
    const version = button(page, /saved as a file/);
    const top = async () => Math.round((await version.boundingBox())?.y ?? 0);
    await version.waitFor();
    const before = await top();
    await version.click();
    await said(page, 'title changed');
    expect(await top(), 'what was pressed stays').toBe(before);
    expect(await accessibilityFindings(page)).toEqual([]);
    await button(page, 'Restore this version').click();
    await library(page).waitFor({ state: 'detached' });
    await expect.poll(() => onSheet(page)).toEqual(sample);
    await saved(page);
    await plans(page).click();
    await expect.poll(() => titles(page)).toEqual([FINCH]);
  });

  it('duplicates, and Undo takes the copy away', async () => {
    await button(page, `More about ${FINCH}`).click();
    await button(page, 'Duplicate').click();
    await said(page, `${FINCH}, copy is in Plans.`);
    await expect.poll(() => titles(page)).toEqual([FINCH, `${FINCH}, copy`]);
    await button(page, 'Undo').click();
    await expect.poll(() => titles(page)).toEqual([FINCH]);
  });

  it('puts the open plan in the bin, and Undo brings it back to library and sheet', async () => {
    await button(page, 'Delete').click();
    await said(page, `${FINCH} is deleted. It can be restored under Deleted plans.`);
    await expect.poll(() => cards(page).count()).toBe(0);
    await expect.poll(async () => (await onSheet(page))?.levels[0]?.walls).toEqual([]);
    await button(page, 'Undo').click();
    await said(page, `${FINCH} is restored.`);
    await expect.poll(() => titles(page)).toEqual([FINCH]);
    await expect.poll(() => onSheet(page)).toEqual(sample);
  });

  it('saves everything in one file', async () => {
    const { name, bytes } = await download(page, () => button(page, 'Export all plans to one file').click());
    everything = JSON.parse(bytes.toString('utf8'));
    expect(name).toMatch(/^stillspot-\d{4}-\d\d-\d\d\.plans\.json$/);
    const { plans: filed } = everything as { plans: { plan: Plan; versions: unknown[] }[] };
    expect(filed.map(({ plan }) => plan)).toEqual([sample]);
    expect(filed[0]?.versions.length).toBeGreaterThan(0);
  });

  it('takes such a file in, plan and versions, after everything is gone', async () => {
    await button(page, `More about ${FINCH}`).click();
    await button(page, 'Delete').click();
    await library(page).locator('summary', { hasText: 'Deleted plans: 1 plan' }).click();
    await button(page, 'Delete them all now').click();
    await button(page, 'Delete for good').click();
    await said(page, 'No plans yet.');
    await importPlans(page, file('all.plans.json', everything));
    await said(page, 'all.plans.json: 1 new.');
    await button(page, `More about ${FINCH}`).click();
    await button(page, 'Earlier versions').click();
    await button(page, /saved as a file/).waitFor();
    await button(page, 'Back to its details').click();
    await importPlans(page, file('again.plans.json', everything));
    await said(page, 'again.plans.json: 1 already in Plans.');
    await expect.poll(() => titles(page)).toEqual([FINCH]);
  });

  it('refuses a file with one broken plan whole', async () => {
    const torn = { ...sample, title: 'Torn', tapeTolerance: -5 };
    await importPlans(page, file('torn.plans.json', shelfFile([{ ...sample, title: 'Whole' }, torn])));
    const dialog = page.getByRole('dialog', { name: 'torn.plans.json not imported' });
    await dialog.waitFor();
    await expect
      .poll(() => dialog.locator('tbody td:first-child').allTextContents())
      .toEqual(['/plans/1/plan/tapeTolerance']);
    await dialog.getByRole('button', { name: 'Close' }).click();
    await expect.poll(() => titles(page)).toEqual([FINCH]);
  });

  it('tells where the storage is full while duplicating, and nothing half is left', async () => {
    await button(page, `More about ${FINCH}`).click();
    await page.evaluate(() => {
      const { put } = IDBObjectStore.prototype;
      Object.assign(window, { putAgain: put });
      IDBObjectStore.prototype.put = function (this: IDBObjectStore, ...given) {
        if (this.name !== 'cards') return put.apply(this, given);
        throw new DOMException('no room', 'QuotaExceededError');
      };
    });
    await button(page, 'Duplicate').click();
    await said(page, 'The storage of this browser is full. Save the plan as a file, then free some space.');
    await expect.poll(() => button(page, 'Undo').count()).toBe(0);
    await expect.poll(() => titles(page)).toEqual([FINCH]);
    await page.evaluate(() => {
      IDBObjectStore.prototype.put = (window as unknown as { putAgain: IDBObjectStore['put'] }).putAgain;
    });
    await button(page, 'Duplicate').click();
    await expect.poll(() => titles(page)).toEqual([FINCH, `${FINCH}, copy`]);
  });

  it('lists two hundred plans, all of them', async () => {
    const many = Array.from({ length: 200 }, (_, index) => ({ ...sample, title: `House ${1000 + index}` }));
    await importPlans(page, file('many.plans.json', shelfFile(many)));
    await said(page, 'many.plans.json: 200 new.');
    await button(page, 'Back to the plan').click();
    await library(page).waitFor({ state: 'detached' });
    await plans(page).click();
    await cards(page).nth(201).waitFor();
    await expect.poll(() => titles(page)).toEqual([FINCH, `${FINCH}, copy`, ...many.map(({ title }) => title)].sort());
  });
});

describe('by keyboard only', () => {
  it('opens, looks up, duplicates, bins, takes that back and opens, and the focus is never lost', async () => {
    const { page, context, expectNoTroubles } = await openPage();
    await page.evaluate((plan) => window.__stillspot?.store.getState().openPlan(plan as Plan), sample);
    await saved(page);
    const press = (...keys: readonly string[]) =>
      keys.reduce((before, key) => before.then(() => page.keyboard.press(key)), Promise.resolve());
    const focused = (place: Locator) => place.evaluate((element) => element === document.activeElement);
    const somewhere = () =>
      page.evaluate(() => document.activeElement !== document.body && document.activeElement?.tagName !== 'DIALOG');

    await tabTo(page, plans(page));
    await press('Enter');
    await expect
      .poll(() =>
        library(page)
          .getByRole('searchbox')
          .evaluate((field) => field === document.activeElement),
      )
      .toBe(true);
    await page.keyboard.type('finch');
    await said(page, '1 plan found.');
    await tabTo(page, cards(page).first());
    await tabTo(page, button(page, `More about ${FINCH}`));
    await press('Enter');
    await tabTo(page, button(page, 'Duplicate'));
    await press('Enter');
    await said(page, `${FINCH}, copy is in Plans.`);
    await tabTo(page, button(page, 'Delete'));
    await press('Enter');
    await said(page, `${FINCH} is deleted. It can be restored under Deleted plans.`);
    await expect.poll(somewhere).toBe(true);
    await tabTo(page, button(page, 'Undo'));
    await press('Enter');
    await said(page, `${FINCH} is restored.`);
    await expect.poll(somewhere).toBe(true);
    // Tab stops at one card of the library, the one that was last focused; the arrow keys move on from there.
    await tabTo(page, library(page).locator('[data-plan][tabindex="0"]'));
    await press('Home');
    await expect.poll(() => focused(cards(page).first())).toBe(true);
    await press('ArrowRight');
    await expect.poll(() => focused(cards(page).last())).toBe(true);
    await press('Enter');
    await library(page).waitFor({ state: 'detached' });
    await expect.poll(async () => (await onSheet(page))?.title).toContain(FINCH);
    expectNoTroubles();
    await context.close();
  });
});

describe('by touch only', () => {
  it.each(someOf([390, 820], 1))(
    'shows every sample with its picture, %d px wide, once it comes into view',
    async (width) => {
      const { page, context, expectNoTroubles } = await openPage({ touch: true, viewport: { width, height: 844 } });
      await plans(page).tap();
      const rows = library(page).locator('.sample');
      await rows.first().waitFor();
      for (const row of await rows.all()) {
        await row.scrollIntoViewIfNeeded();
        const picture = row.locator('img');
        await picture.waitFor();
        await expect.poll(() => picture.evaluate((each: HTMLImageElement) => each.naturalWidth)).toBeGreaterThan(0);
        // The picture adds nothing to the text.
        expect(await picture.getAttribute('alt')).toBe('');
      }
      expect(await rows.count()).toBe(8);
      expect(await accessibilityFindings(page)).toEqual([]);
      expectNoTroubles();
      await context.close();
    },
  );

  it('opens a sample, duplicates it, and deletes the copy for good', async () => {
    const { page, context, expectNoTroubles } = await openPage({ touch: true, viewport: { width: 1024, height: 768 } });
    await plans(page).tap();
    await button(page, /^Plain basement/).tap();
    await saved(page);
    await plans(page).tap();
    await button(page, `More about ${FINCH}`).tap();
    await button(page, 'Duplicate').tap();
    await expect.poll(() => titles(page)).toEqual([FINCH, `${FINCH}, copy`]);
    await button(page, `More about ${FINCH}, copy`).tap();
    const small = await library(page)
      .locator('button:visible')
      .evaluateAll((all) =>
        all.filter((each) => each.getBoundingClientRect().height < 44).map((each) => each.textContent),
      );
    expect(small).toEqual([]);
    await button(page, 'Delete').tap();
    await expect.poll(() => titles(page)).toEqual([FINCH]);
    await library(page).locator('summary', { hasText: 'Deleted plans: 1 plan' }).tap();
    await button(page, 'Delete them all now').tap();
    await button(page, 'Delete for good').tap();
    await said(page, 'The deleted plans are gone for good.');
    await expect.poll(() => library(page).getByText('Deleted plans:').count()).toBe(0);
    await expect.poll(async () => (await onSheet(page))?.title).toBe(FINCH);
    expectNoTroubles();
    await context.close();
  });
});
