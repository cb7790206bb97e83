import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { accessibilityFindings, download, type OpenPage, openPage } from './harness.ts';
import { pickSample } from './samples.ts';

const stage = async (page: Page, name: string) => {
  const button = page.getByRole('button', { name, exact: true });
  if ((await button.getAttribute('aria-expanded')) !== 'true') await button.click();
};
const type = async (page: Page, label: string, text: string) => {
  const field = page.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.press('Enter');
};
const plan = (page: Page) => page.evaluate(() => window.__stillspot?.store.getState().plan);

describe('a whole job, from the plan to the next step', () => {
  let opened: OpenPage;
  let page: Page;
  beforeAll(async () => {
    opened = await openPage();
    page = opened.page;
    await pickSample(page, /^Plain basement/);
    await page.locator('.saved', { hasText: /^saved / }).waitFor();
  });
  afterAll(() => opened.context.close());

  it('schedules: the next starts are offered, one is taken, the window to fetch is shown', async () => {
    await stage(page, 'Time');
    await page.getByRole('button', { name: 'When could it start?' }).click();
    await page.getByRole('button', { name: 'Take this start' }).first().click();
    await page.getByText('May be fetched').waitFor();
    expect((await plan(page))?.visit.start).toMatch(/:(?:00|30):00[+-]/);
  });

  it('says what was missed and the ways out, and is right again when it is mended', async () => {
    await type(page, 'House closed since', '2026-03-07T12:00');
    await type(page, 'Set out', '2026-03-07T18:00');
    await type(page, 'Fetched', '2026-03-10T09:00');
    await page
      .locator('#stage-time')
      .getByText(/Closed for 6 h before the start, needs 12 h/)
      .waitFor();
    await type(page, 'House closed since', '2026-03-07T06:00');
    await page.getByText('Closed for 12 h before the start.').waitFor();
  });

  it('47 h 59 min is not evaluated, said plainly; a minute more is', async () => {
    await type(page, 'Fetched', '2026-03-09T17:59');
    // 8 March 2026: the clocks of the sample's zone go forward in the night.
    await page.getByText(/The detector lay out for 46 h 59 min/).waitFor();
    await page.getByText(/not evaluated; keep the record/).waitFor();
    await type(page, 'Fetched', '2026-03-09T19:00');
    await page.getByText("The detector lay out for 48 h: within the kit's 48 h to 96 h.").waitFor();
  });

  it('goes into a calendar', async () => {
    const file = await download(page, () =>
      page.getByRole('button', { name: 'Save the visit for a calendar' }).click(),
    );
    expect(file.name).toMatch(/\.ics$/);
    expect(file.bytes.toString()).toContain('BEGIN:VCALENDAR');
    expect(await accessibilityFindings(page)).toEqual([]);
  });

  it('two results that agree: the average, the levels of others, the next step', async () => {
    await stage(page, 'Read');
    await type(page, 'Result of A1', '3.9');
    await page.getByText('Only one result of the pair is in.').first().waitFor();
    await type(page, 'Result of A2', '4.0');
    const slip = page.getByRole('region', { name: 'A1 and A2, side by side' });
    expect(await slip.getAttribute('data-agreement')).toBe('in-control');
    expect(await slip.locator('.set__figure').textContent()).toContain('4.0 pCi/L');
    await slip.getByText('Follow up: a long-term test').first().waitFor();
    await slip.getByText('Beside the levels of others').click();
    expect(await slip.getByRole('row', { name: /United States 4 pCi\/L/ }).textContent()).toContain('reached');
    expect(await accessibilityFindings(page)).toEqual([]);
  });

  it('two that straddle the level by more than two: no average, test again', async () => {
    await type(page, 'Result of A1', '2.9');
    await type(page, 'Result of A2', '5.9');
    const slip = page.getByRole('region', { name: 'A1 and A2, side by side' });
    await expect.poll(() => slip.getAttribute('data-agreement')).toBe('straddles-by-two');
    expect(await slip.locator('.set__figure').count()).toBe(0);
    await slip.getByText('Test again with a new pair').first().waitFor();
    await page.keyboard.press('Control+z');
    opened.expectNoTroubles();
  });
});
