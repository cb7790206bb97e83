import type { Locator, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { someOf } from '../helpers/how-many.ts';
import { accessibilityFindings, download, type OpenPage } from './harness.ts';
import { openPair, openStage, stageButton } from './samples.ts';
import { tabTo } from './tab-to.ts';

const conditions = (page: Page) => page.evaluate(() => window.__stillspot?.store.getState().plan.conditions ?? []);
const whole = (page: Page) => page.locator('.house-whole__word > span').textContent();
const item = (page: Page, name: string): Locator =>
  page.locator('.condition').filter({ has: page.getByRole('button', { name, exact: true }) });
const answerOf = (page: Page, name: string, answer: string) =>
  page.getByRole('group', { name, exact: true }).getByRole('button', { name: answer, exact: true });
/** Returns the message over the sheet; a screen reader gets the same text. */
const message = (page: Page) => page.locator('.message > p:first-child').textContent();

const WINDOWS = 'Windows closed on every level';
const DOORS = 'Exterior doors closed';
const ITEMS = 15; // all but the mitigation system, which this house does not have

describe('the walk through the house', () => {
  let open: OpenPage;
  let page: Page;
  beforeAll(async () => {
    open = await openPair();
    page = open.page;
  });
  afterAll(() => open.context.close());

  it('by mouse: one press for each item, with who and when; nothing unanswered passes', async () => {
    await openStage(page, 'House');
    const mark = stageButton(page, 'House').locator('.stage-bar__mark');
    await expect.poll(() => mark.textContent()).toBe(''); // an item without an answer is not "done"
    await page.getByLabel('Inspected by').fill('R. Alder');
    await page.getByRole('button', { name: 'Time of the inspection: now' }).click();
    const kept = page.locator('.condition__answers').getByRole('button', { name: 'Met', exact: true });
    await expect.poll(() => kept.count()).toBe(ITEMS);
    for (let at = 0; at < ITEMS; at++) {
      await expect.poll(() => whole(page)).toBe('The house: Unknown');
      await kept.nth(at).click();
    }
    await expect.poll(() => whole(page)).toBe('The house: Met');
    await expect.poll(() => mark.textContent()).toBe('done');
    const answers = await conditions(page);
    expect(answers.map(({ state, by }) => [state, by])).toEqual(Array(ITEMS).fill(['kept', 'R. Alder']));
    expect(answers.every(({ at }) => at !== null)).toBe(true);
    await expect
      .poll(() => item(page, WINDOWS).textContent())
      .toMatch(/Met: R\. Alder, \w+day, \w+ \d+, \d+:\d\d [ap]m/);
  });

  it('a break says at once what it means, at the item, at the top and aloud; undo takes it back', async () => {
    await answerOf(page, WINDOWS, 'Not met').click();
    await expect.poll(() => whole(page)).toBe('The house: Invalid, do not use');
    await expect.poll(() => page.locator('.house-whole').textContent()).toContain(`Deviation: "${WINDOWS}"`);
    // The stage does not repeat the message above its content.
    await expect.poll(() => page.locator('.stage-page .hint').count()).toBe(0);
    // Nothing has been measured yet, so nothing needs to be tested again.
    const says = 'Found before the start. Close the windows; the closed hours begin again from then. Start later:';
    await expect.poll(() => item(page, WINDOWS).textContent()).toContain(says);
    await expect.poll(() => message(page)).toContain(`${WINDOWS}: ${says}`);
    await expect.poll(() => item(page, WINDOWS).locator('.mark pattern').count()).toBe(1); // hatched, not only red
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => whole(page)).toBe('The house: Met');
  });

  it('opened, an item tells what is asked, what a break means and where it is published', async () => {
    await page.getByRole('button', { name: DOORS, exact: true }).click();
    const text = await item(page, DOORS).textContent();
    expect(text).toContain('normal entry and exit');
    expect(text).toContain('If not met: This test is invalid: do not use the result.');
    expect(text).toMatch(/Source: ANSI\/AARST MAH-2019, Exh\. 2\..*Not read in the primary text: EPA/);
    await page.locator('summary', { hasText: 'Non-interference agreement' }).click();
    await page.getByLabel('Signing was refused').check();
    await page.getByText('Who refused is not recorded.').waitFor();
    await answerOf(page, WINDOWS, 'Not met').click();
    await item(page, WINDOWS).locator('.condition__means').waitFor();
  });

  // axe-screens.test.ts tests the default colors.
  it.each(someOf(['dark', 'sun'], 1))('axe finds nothing in the colors %s', async (theme) => {
    await page.getByLabel('Colors').selectOption(theme);
    expect(await accessibilityFindings(page)).toEqual([]);
  });

  it('by keyboard: to an item, its answer, its note, and back', async () => {
    await openStage(page, 'Place');
    await stageButton(page, 'House').focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => stageButton(page, 'House').getAttribute('aria-current')).toBe('page');
    await tabTo(page, answerOf(page, WINDOWS, 'Met'));
    await page.keyboard.press('Space');
    await expect.poll(() => whole(page)).toBe('The house: Met');
    await tabTo(page, answerOf(page, DOORS, 'Not met'));
    await page.keyboard.press('Space');
    await expect.poll(() => whole(page)).toBe('The house: Invalid, do not use');
    const doors = page.getByRole('button', { name: DOORS, exact: true });
    await tabTo(page, doors, { key: 'Shift+Tab' });
    // It was opened above and stayed open while another stage was shown.
    await expect.poll(() => doors.getAttribute('aria-expanded')).toBe('true');
    await page.keyboard.press('Enter');
    await expect.poll(() => doors.getAttribute('aria-expanded')).toBe('false');
    await page.keyboard.press('Enter');
    await tabTo(page, item(page, DOORS).getByLabel('Note'));
    await page.keyboard.type('cat');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await conditions(page)).find(({ note }) => note)?.note).toBe('cat');
    await tabTo(page, item(page, DOORS).getByRole('button', { name: 'Clear the answer' }));
    await page.keyboard.press('Enter');
    await expect.poll(() => whole(page)).toBe('The house: Unknown');
    // The focus is not lost with the removed button.
    await tabTo(page, page.getByRole('button', { name: DOORS, exact: true }));
    open.expectNoTroubles();
  });

  it.each([
    ['notice', 'Notice to occupants'],
    ['door-hanger', 'Door hanger'],
    ['agreement', 'Non-interference agreement'],
    ['log', 'Log, chain of custody'],
  ])('the paper "%s" is looked at, and saved', async (which, title) => {
    if (which === 'log') await openStage(page, 'Log');
    else await page.getByLabel('Which one').selectOption(which);
    await page.getByRole('button', { name: 'Preview the document' }).click();
    const dialog = page.getByRole('dialog', { name: title });
    const first = dialog.getByRole('img', { name: /^Sheet 1 of / });
    await first.waitFor();
    await expect.poll(() => first.evaluate((image) => (image as HTMLImageElement).naturalWidth)).toBeGreaterThan(0);
    await page.keyboard.press('Escape');
    await dialog.waitFor({ state: 'detached' });
    const save = () => page.getByRole('button', { name: 'Save the drawing (SVG)' }).click();
    const file = await download(page, save, new RegExp(`-${which}(-1)?\\.svg$`));
    expect(file.bytes.toString()).toMatch(/^<svg/);
    open.expectNoTroubles();
  });
});

describe('on a tablet, by finger only', () => {
  let open: OpenPage;
  let page: Page;
  beforeAll(async () => {
    open = await openPair({ touch: true, viewport: { width: 1024, height: 768 } });
    page = open.page;
  });
  afterAll(() => open.context.close());

  it('an answer without who and when is recorded and says so; both are put on it later', async () => {
    await openStage(page, 'House');
    await answerOf(page, DOORS, 'Met').tap();
    await answerOf(page, 'Fireplaces off', 'Not applicable').tap();
    await item(page, DOORS).getByText('Met: who and when not recorded').waitFor();
    await expect
      .poll(() => conditions(page))
      .toEqual([
        { item: 'doors-closed', state: 'kept', at: null, note: '' },
        { item: 'fireplaces-off', state: 'not-applicable', at: null, note: '' },
      ]);
    await page.getByLabel('Inspected by').fill('R. Alder');
    await page.getByRole('button', { name: 'Time of the inspection: now' }).tap();
    await page.getByRole('button', { name: 'Put name and time on 2 answers' }).tap();
    await item(page, DOORS)
      .getByText(/Met: R\. Alder, \w+day/)
      .waitFor();
    await expect
      .poll(async () => (await conditions(page)).map(({ state, by }) => [state, by]))
      .toEqual([
        ['kept', 'R. Alder'],
        ['not-applicable', 'R. Alder'],
      ]);
  });

  it('nothing sticks out of the column, and every answer is as large as a fingertip', async () => {
    await page.getByRole('button', { name: WINDOWS, exact: true }).tap();
    await answerOf(page, WINDOWS, 'Not met').tap();
    const found = await page.evaluate(() => {
      const column = document.querySelector('#stage-house')?.getBoundingClientRect();
      const inside = [...document.querySelectorAll('#stage-house *')].map((one) => one.getBoundingClientRect());
      const pressed = [...document.querySelectorAll('.condition button')].map((one) => one.getBoundingClientRect());
      return {
        out: inside.filter(({ right, width }) => width > 1 && right > (column?.right ?? 0) + 0.5).length,
        small: pressed.filter(({ width, height }) => Math.min(width, height) < 44).length,
        pressed: pressed.length,
      };
    });
    expect(found).toEqual({ out: 0, small: 0, pressed: found.pressed });
    expect(found.pressed).toBeGreaterThan(45); // 15 names, and two or three answers each
    open.expectNoTroubles();
  });
});
