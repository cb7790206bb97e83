import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { someOf } from '../helpers/how-many.ts';
import { sample } from './hands.ts';
import { accessibilityFindings, openPage, type PageOptions, settled } from './harness.ts';
import { openStage, saved } from './samples.ts';

/** Opens the plain basement without a location, at the stage "Property". */
async function property(options: PageOptions = {}) {
  const opened = await openPage(options);
  await opened.page.evaluate((plan) => window.__stillspot?.store.getState().openPlan(plan), {
    ...sample,
    site: { ...sample.site, latitude: null, longitude: null, timeZone: 'America/Los_Angeles' },
    visit: { ...sample.visit, start: '2026-12-01T18:00:00-08:00' },
  });
  await openStage(opened.page, 'Property');
  const unfold = opened.page.getByRole('button', { name: /^Property panel/ });
  if (await unfold.isVisible()) await unfold.tap();
  await field(opened.page).scrollIntoViewIfNeeded();
  return opened;
}
const field = (page: Page) => page.getByRole('combobox', { name: 'ZIP code or town in the United States' });
const options = (page: Page) => page.getByRole('listbox', { name: 'Places' }).getByRole('option');
const site = (page: Page) => page.evaluate(() => window.__stillspot?.store.getState().plan.site);
const steps = (page: Page) => page.evaluate(() => window.__stillspot?.store.temporal.getState().pastStates.length ?? 0);
const told = (page: Page) => page.locator('.field-group', { hasText: 'Location' }).getByRole('status');

describe('a place from the list', () => {
  it('is entered by keyboard, with its time zone in one step, and undone', async () => {
    const { page, expectNoTroubles } = await property();
    await field(page).focus();
    await page.keyboard.type('15213');
    await expect.poll(() => options(page).allTextContents()).toEqual(['15213 Pittsburgh, PA']);
    await page.keyboard.press('Enter');
    await expect
      .poll(() => site(page))
      .toMatchObject({ latitude: 40.44, longitude: -79.96, timeZone: 'America/New_York' });
    expect(await steps(page)).toBe(1);
    expect(await told(page).textContent()).toBe(
      'Entered: the middle of 15213 Pittsburgh, PA (40.44, -79.96). Time zone: America/New_York, before America/Los_Angeles. The times of the test are shown in that zone now: check them.',
    );
    expect(await page.getByLabel('Latitude').inputValue()).toBe('40.44°');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => site(page)).toMatchObject({ latitude: null, timeZone: 'America/Los_Angeles' });
    // One of several is chosen with the arrow keys; Enter alone chooses none.
    await field(page).fill('portland');
    await expect.poll(() => options(page).count()).toBe(6);
    expect(await accessibilityFindings(page)).toEqual([]);
    await page.keyboard.press('Enter');
    expect((await site(page))?.latitude).toBeNull();
    await page.keyboard.press('ArrowUp');
    await page.keyboard.press('ArrowDown');
    const [first] = await options(page).allTextContents();
    expect(await options(page).first().getAttribute('aria-selected')).toBe('true');
    expect(first).toBe('Portland, OR');
    await page.keyboard.press('Enter');
    await expect.poll(() => site(page)).toMatchObject({ latitude: 45.52, timeZone: 'America/Los_Angeles' });
    expectNoTroubles();
  });

  it('that is not in the list is told, and Escape closes the list', async () => {
    const { page, expectNoTroubles } = await property();
    const words = (text: string) => page.getByText(text);
    await field(page).fill('00000');
    await words('ZIP code 00000 is not in the list. Check the digits').waitFor();
    await field(page).fill('K1A 0B1');
    await words('For a place outside the United States enter latitude and longitude.').waitFor();
    await field(page).fill('Nosuchtown');
    await words('No town in the list begins with "Nosuchtown".').waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => words('No town in the list').isVisible()).toBe(false);
    expect(await field(page).inputValue()).toBe('Nosuchtown');
    expect((await site(page))?.latitude).toBeNull();
    expectNoTroubles();
  });

  it('is entered by mouse, and nothing on the page moves for the list', async () => {
    const { page, expectNoTroubles } = await property();
    const at = () => page.getByLabel('Latitude').boundingBox();
    const before = await at();
    await field(page).fill('springfield il');
    await options(page).first().waitFor();
    expect(await at()).toEqual(before);
    await options(page).filter({ hasText: 'Springfield, IL' }).click();
    await expect.poll(() => site(page)).toMatchObject({ latitude: 39.78, timeZone: 'America/Chicago' });
    expect(await field(page).evaluate((each) => each === document.activeElement)).toBe(true);
    expectNoTroubles();
  });

  it.each(
    someOf(
      [
        [390, 844],
        [1024, 768],
      ] as const,
      1,
    ),
  )('is entered by finger at %d × %d, in rows of 44 px', async (width, height) => {
    const { page, expectNoTroubles } = await property({ viewport: { width, height }, touch: true });
    await field(page).tap();
    await page.keyboard.type('9610');
    await options(page).first().waitFor();
    expect((await options(page).first().boundingBox())?.height).toBeGreaterThanOrEqual(44);
    await settled(page);
    const [name = ''] = await options(page).allTextContents();
    await options(page).first().tap();
    await expect.poll(() => told(page).textContent()).toContain(`the middle of ${name}`);
    expect((await site(page))?.latitude).not.toBeNull();
    expect(await accessibilityFindings(page)).toEqual([]);
    expectNoTroubles();
  });
});

describe('the time zone', () => {
  it('follows coordinates that are typed, when both are there', async () => {
    const { page } = await property();
    await page.getByLabel('Latitude').fill('-33.87');
    await page.keyboard.press('Enter');
    expect((await site(page))?.timeZone).toBe('America/Los_Angeles');
    await page.getByLabel('Longitude').fill('151.21');
    await page.keyboard.press('Enter');
    await expect.poll(() => site(page)).toMatchObject({ longitude: 151.21, timeZone: 'Australia/Sydney' });
    expect(await told(page).textContent()).toMatch(/^Time zone: Australia\/Sydney, before America\/Los_Angeles\./);
  });
});

describe('the last site', () => {
  it('is offered with its title, and entered with its time zone in one press', async () => {
    const { page, expectNoTroubles } = await property();
    expect(await page.getByRole('button', { name: /^As in / }).count()).toBe(0);
    await field(page).fill('80202');
    await page.keyboard.press('Enter');
    await expect.poll(() => site(page)).toMatchObject({ timeZone: 'America/Denver' });
    await saved(page);
    await page.getByRole('banner').getByRole('button', { name: 'Plans' }).click();
    await page.getByRole('button', { name: 'New plan' }).first().click();
    await openStage(page, 'Property');
    await page.getByRole('button', { name: `As in "${sample.title}"` }).click();
    await expect.poll(() => site(page)).toMatchObject({ latitude: 39.75, longitude: -105, timeZone: 'America/Denver' });
    expect(await told(page).textContent()).toMatch(/^Entered: as in "/);
    expectNoTroubles();
  });
});
