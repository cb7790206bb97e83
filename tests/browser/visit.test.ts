import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accessibilityFindings, type OpenPage } from './harness.ts';
import { openPair, openStage } from './samples.ts';

const plan = (page: Page) => page.evaluate(() => window.__stillspot?.store.getState().plan);
const said = (page: Page) => page.locator('.stage-page .message > p:first-child').textContent();
const press = (page: Page, name: string) => page.getByRole('button', { name, exact: true }).tap();

describe('the two visits, on a phone by one hand, without a network', () => {
  let open: OpenPage;
  let page: Page;
  beforeAll(async () => {
    open = await openPair({ viewport: { width: 390, height: 844 }, touch: true, serviceWorkers: 'allow' });
    page = open.page;
    await press(page, 'Visit');
    await page.getByRole('heading', { level: 2, name: 'Visit' }).waitFor();
    await page.waitForFunction(() => navigator.serviceWorker.controller?.state === 'activated');
    await open.context.setOffline(true);
  });
  afterAll(() => open.context.close());

  it('who and when of placement are one step each, announced, and undone', async () => {
    await page.getByLabel('Placed by').fill('R. Alder');
    await page.getByLabel('Placed by').press('Enter');
    await press(page, 'Placed now');
    await expect.poll(async () => (await plan(page))?.visit.start ?? null).not.toBeNull();
    await expect.poll(() => said(page)).toMatch(/^Placed: \w+day, .* Undo reverts it\.$/);
    expect((await plan(page))?.log?.map(({ placedBy }) => placedBy)).toEqual(['R. Alder', 'R. Alder']);
    // Set out, it goes on with the pick-up; the first visit is one press away.
    await page.getByText('Still as it was?').waitFor();
    await press(page, 'Undo');
    await expect.poll(async () => (await plan(page))?.visit.start ?? null).toBeNull();
    await press(page, 'Placement');
    await press(page, 'Placed now');
    await expect.poll(async () => (await plan(page))?.visit.start ?? null).not.toBeNull();
  });

  it('a time that is recorded is shown, and replaced only on a yes', async () => {
    const early = '2026-03-07T18:00:00-05:00';
    await page.evaluate((start) => {
      window.__stillspot?.store.getState().run((now) => ({ ...now, visit: { ...now.visit, start } }));
    }, early);
    await press(page, 'Placed now');
    await page.getByText(/Saturday, March 7, 6:00 pm is recorded\. Write .* in its place\?/).waitFor();
    expect((await plan(page))?.visit.start).toBe(early);
    await press(page, 'Placed: keep what is recorded');
    expect((await plan(page))?.visit.start).toBe(early);
    await press(page, 'Placed now');
    await press(page, 'Placed: write now in its place');
    await expect.poll(async () => (await plan(page))?.visit.start).not.toBe(early);
  });

  it('serial numbers and answers are those of Log and House', async () => {
    await page.getByLabel('A1', { exact: true }).fill('C-1001');
    await page.getByLabel('A1', { exact: true }).press('Enter');
    await page
      .getByRole('group', { name: 'Windows closed on every level' })
      .getByRole('button', { name: 'Met', exact: true })
      .tap();
    await expect
      .poll(async () => (await plan(page))?.conditions.map(({ item, state, by }) => [item, state, by]))
      .toEqual([['windows-closed', 'kept', 'R. Alder']]);
    expect((await plan(page))?.conditions[0]?.at).not.toBeNull();
    await openStage(page, 'Log');
    await expect.poll(() => page.locator('#stage-log').getByLabel('A1', { exact: true }).inputValue()).toBe('C-1001');
    await press(page, 'Visit');
  });

  it('the pick-up: as it was, fetched, sealed, mailed', async () => {
    // Two days before, or the exposure would end in the minute in which it begins.
    const start = new Date(Date.now() - 172_800_000).toISOString();
    await page.evaluate((at) => {
      window.__stillspot?.store.getState().run((now) => ({ ...now, visit: { ...now.visit, start: at } }));
    }, start);
    await press(page, 'Pick-up');
    await page
      .getByRole('group', { name: 'A1', exact: true })
      .getByRole('button', { name: 'As it was', exact: true })
      .tap();
    await page.getByRole('group', { name: 'A2', exact: true }).getByRole('button', { name: 'Not as it was' }).tap();
    await press(page, 'Picked up now');
    await press(page, 'Sealed now');
    await press(page, 'Mailed now');
    await expect.poll(async () => (await plan(page))?.visit.posted ?? null).not.toBeNull();
    const { log, visit } = (await plan(page)) ?? {};
    expect(visit?.end).not.toBeNull();
    expect(log?.map(({ tampering, sealed, fetchedBy }) => [tampering, sealed !== null, fetchedBy])).toEqual([
      ['none', true, 'R. Alder'],
      ['seen', true, 'R. Alder'],
    ]);
  });

  it('texts have 16 px at least, targets 44, and axe finds nothing', async () => {
    for (const visit of ['Placement', 'Pick-up']) {
      await press(page, visit);
      const found = await page.evaluate(() => {
        const all = [...document.querySelectorAll<HTMLElement>('.visit-page *')].filter((each) =>
          each.checkVisibility(),
        );
        const name = (each: HTMLElement) => `${each.className}: ${each.textContent?.slice(0, 40)}`;
        const targets = all.filter((each) => each.matches('button, input:not(.unseen), summary, select'));
        const texts = all.filter((each) => [...each.childNodes].some(({ nodeType }) => nodeType === Node.TEXT_NODE));
        return {
          small: texts.filter((each) => Number.parseFloat(getComputedStyle(each).fontSize) < 16).map(name),
          low: targets.filter((each) => each.getBoundingClientRect().height < 44).map(name),
        };
      });
      expect(found).toEqual({ small: [], low: [] });
      expect(await accessibilityFindings(page)).toEqual([]);
    }
    open.expectNoTroubles();
  });
});
