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
    // Serial numbers, photos and the house are still open: the page stays at the placement.
    await expect.poll(() => page.getByRole('button', { name: 'Placement' }).getAttribute('aria-pressed')).toBe('true');
    await expect.poll(() => page.getByText('Still as it was?').count()).toBe(0);
    await press(page, 'Undo');
    await expect.poll(async () => (await plan(page))?.visit.start ?? null).toBeNull();
    await press(page, 'Placed now');
    await expect.poll(async () => (await plan(page))?.visit.start ?? null).not.toBeNull();
  });

  it('the placement asks since when the house is closed: the field of Time', async () => {
    const field = page.locator('.visit-page').getByLabel('Closed-building conditions since', { exact: true });
    await field.fill('2026-03-06T18:00');
    await field.press('Enter');
    await expect.poll(async () => (await plan(page))?.visit.closedSince).toBe('2026-03-06T18:00:00-05:00');
  });

  it('a placement that is only planned opens on the placement, and is replaced as planned', async () => {
    await page.evaluate(() => {
      const start = '2099-01-01T08:00:00-05:00';
      window.__stillspot?.store.getState().run((now) => ({ ...now, visit: { ...now.visit, start }, log: [] }));
    });
    await page.getByText('Placement planned: Thursday, January 1, 2099, 8:00 am', { exact: true }).waitFor();
    await press(page, 'Placed now');
    await page.getByText(/Thursday, January 1, 2099, 8:00 am is planned\. Write .* in its place\?/).waitFor();
    await press(page, 'Placed: write now in its place');
    await expect.poll(async () => (await plan(page))?.visit.start?.startsWith('2099')).toBe(false);
  });

  it('a pick-up minutes after the placement is refused or asked about, with the hours; nothing of it stays', async () => {
    await press(page, 'Pick-up');
    await page.getByText('That there is no evidence of tampering is recorded after the pick-up').waitFor();
    await page.getByText('Record the pick-up first').waitFor();
    expect(await page.getByRole('button', { name: 'As it was', exact: true }).first().isEnabled()).toBe(false);
    expect(await page.getByRole('button', { name: 'Not as it was' }).first().isEnabled()).toBe(true);
    const ago = (minutes: number) =>
      page.evaluate((ms) => {
        const start = new Date(Math.floor(Date.now() / 60_000) * 60_000 + 60_000 - ms).toISOString();
        window.__stillspot?.store.getState().run((now) => ({ ...now, visit: { ...now.visit, start } }));
      }, minutes * 60_000);
    await ago(0);
    await press(page, 'Picked up now');
    await page.getByText(/^The detectors are recorded as placed at .*: a pick-up is later than that\./).waitFor();
    await ago(13);
    await expect.poll(() => page.getByText('a pick-up is later than that').count()).toBe(0);
    await press(page, 'Picked up now');
    await page
      .getByText(
        /^The detectors have been in place for 1\d min, and the least exposure is 48 h: picked up now, the test is invalid\. Record it anyway\?$/,
      )
      .waitFor();
    expect((await plan(page))?.visit.end ?? null).toBeNull();
    await press(page, 'Picked up: not yet');
    expect((await plan(page))?.visit.end ?? null).toBeNull();
    await press(page, 'Placement');
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
    // More than two days before: no question is shown.
    const start = new Date(Date.now() - 180_000_000).toISOString();
    await page.evaluate((at) => {
      window.__stillspot?.store.getState().run((now) => ({ ...now, visit: { ...now.visit, start: at } }));
    }, start);
    await press(page, 'Pick-up');
    await press(page, 'Picked up now');
    await page
      .getByRole('group', { name: 'A1', exact: true })
      .getByRole('button', { name: 'As it was', exact: true })
      .tap();
    await page.getByRole('group', { name: 'A2', exact: true }).getByRole('button', { name: 'Not as it was' }).tap();
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
