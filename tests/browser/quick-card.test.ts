import { writeFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { checkPlan } from '../../geometry/check/check-detector.ts';
import { headlineOf } from '../../geometry/messages/index.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import type { CardAnswers } from '../../src/quick-card/answers.ts';
import { ANSWERED, button, openCard, PHONE, planOf, shot, verdictOf, walkToCard } from './card-page.ts';
import { accessibilityFindings, download, openPage, pngSize, settled } from './harness.ts';

/** Greatest number of taps from opening the app to the card. */
const MOST_TAPS = 14;

describe('the quick card on a phone', () => {
  it('takes at most 14 taps from a first visit with every question answered', async () => {
    const open = await openPage(PHONE);
    expect(await walkToCard(open.page)).toBeLessThanOrEqual(MOST_TAPS);
    const { quickCard } = (await planOf(open.page)) as Plan & { readonly quickCard: CardAnswers };
    // The height of the table is not measured yet.
    expect({ ...quickCard, closing: null }).toEqual({ ...ANSWERED, support: { kind: 'table', top: null } });
    open.expectNoTroubles();
  });

  it('says what the check of its plan says, and what is still open', async () => {
    const { page } = await openCard();
    const reports = checkPlan(await planOf(page)).levels.flatMap(({ detectors }) => detectors);
    expect(reports).toHaveLength(1);
    const [report] = reports;
    const word = report ? headlineOf(report).word : '';
    expect(await verdictOf(page)).toContain(word);
    const still = page.getByRole('region', { name: 'Still open: this is not a clear result' });
    expect(await still.locator('li[data-open="true"]').count()).toBe(1);
    const sun = button(page, /no direct sun/);
    await sun.scrollIntoViewIfNeeded();
    const before = await sun.boundingBox();
    await sun.tap();
    await expect.poll(() => verdictOf(page)).toMatch(/ ?Clear$/);
    expect(await still.count()).toBe(0);
    expect((await planOf(page)).levels[0]?.lookedFor).toContain('direct-sun');
    // A second press undoes it; nothing moves in either case.
    await sun.tap();
    await expect.poll(() => verdictOf(page)).toContain(word);
    await sun.tap();
    await expect.poll(() => verdictOf(page)).toMatch(/ ?Clear$/);
    expect(await sun.boundingBox()).toEqual(before);
  });

  it('says beside the verdict what is open, above what hands the card out', async () => {
    const { page } = await openCard({ ...ANSWERED, things: [], none: ['heat'] });
    const sentence = page
      .getByText(/^Not a clear result: 6 points are still open: exterior doors and windows, /)
      .first();
    const box = await sentence.boundingBox();
    const save = await button(page, 'Save as a picture').boundingBox();
    expect((box?.y ?? 844) + (box?.height ?? 0)).toBeLessThan(844 / 2);
    expect(box?.y).toBeLessThan(save?.y ?? 0);
    await shot(page, 'quick-open');
    await button(page, 'See what is open').tap();
    const still = page.getByRole('region', { name: 'Still open: this is not a clear result' });
    await expect.poll(async () => (await still.boundingBox())?.y ?? 844).toBeLessThan(844 / 2);
    await shot(page, 'quick-open-list');
  });

  it('lists what is open alone; each point says what it is, then what a press records', async () => {
    const { page } = await openCard({ ...ANSWERED, none: ['moving-air', 'heat'] });
    const still = page.getByRole('region', { name: 'Still open: this is not a clear result' });
    const points = still.getByRole('listitem');
    expect(await points.allTextContents()).toEqual([
      expect.stringMatching(/^Direct sun: .*I looked: no direct sun reaches the spot$/),
      expect.stringMatching(/^Sump pit: .*I looked on this whole floor: no sump pitThere is one: mark where/),
      expect.stringMatching(/^Floor drain: .*I looked on this whole floor: no floor drainThere is one/),
      expect.stringMatching(/^Washer and dryer: .*I looked on this whole floor: no washer or dryerThere is one/),
    ]);
    const looked = page.getByRole('region', { name: 'You have looked' });
    expect(await looked.getByRole('listitem').count()).toBe(2);
    // A closed point stays where it is: a second press undoes it, and closes no other point.
    const drain = still.getByRole('button', { name: /: no floor drain$/ });
    await drain.tap();
    await expect.poll(() => drain.getAttribute('aria-pressed')).toBe('true');
    await page
      .getByText(/^Not a clear result: 3 points/)
      .first()
      .waitFor();
    await drain.tap();
    await expect.poll(() => drain.getAttribute('aria-pressed')).toBe('false');
    await looked.getByRole('button', { name: 'Take it back: heat' }).tap();
    await expect.poll(() => points.count()).toBe(5);
    expect((await planOf(page)).levels[0]?.lookedFor).toEqual(['moving-air']);
    // The other answer: where the pit is.
    await still.getByRole('button', { name: 'There is one: mark where: sump pit' }).tap();
    await page.getByText('Sump pit: press every square that it touches.').waitFor();
    expect(
      await button(page, /^floor, 3 of 5 from the far wall, 3 of 5/)
        .first()
        .isVisible(),
    ).toBe(true);
  });

  it('leads from a height that nobody has measured to its question', async () => {
    const { page } = await openCard({ ...ANSWERED, support: { kind: 'table', top: null } });
    await button(page, 'Answer it: height above the floor').tap();
    const top = page.getByLabel(/^How high its top is/);
    await top.fill('2 ft');
    await top.press('Enter');
    await button(page, 'Make the card').tap();
    await page.getByText('2 ft above the floor, on a small table that you move there.').waitFor();
    expect(await button(page, 'Answer it: height above the floor').count()).toBe(0);
  });

  it('draws the sketch in the font of the page', async () => {
    const { page } = await openCard();
    const sketch = page.locator('.quick-card__sketch');
    await expect.poll(() => sketch.getAttribute('src')).toContain(encodeURIComponent('@font-face'));
  });

  it('hands out the picture of one upright page, and the times for a calendar', async () => {
    const { page } = await openCard();
    const press = (name: string) => () => button(page, name).tap();
    const { bytes } = await download(page, press('Save as a picture'));
    // Letter upright at 150 px to the inch.
    expect(pngSize(bytes)).toEqual({ width: 1275, height: 1650 });
    if (process.env.STILLSPOT_SHOTS) writeFileSync(`${process.env.STILLSPOT_SHOTS}/quick-picture.png`, bytes);
    const calendar = await download(page, press('Save the times for a calendar'));
    expect(calendar.bytes.toString()).toMatch(/SUMMARY:Last moment to pick up/);
  });

  it('is shared by the sheet of the system where there is one', async () => {
    const { page } = await openCard();
    // With a share sheet, the button has another name from its first frame on.
    await page.evaluate(() => {
      const shared: string[] = [];
      Object.assign(window, { shared });
      Object.assign(navigator, {
        canShare: () => true,
        share: async ({ files }: ShareData) => {
          shared.push(...(files ?? []).map(({ name, type }) => `${name} ${type}`));
        },
      });
    });
    await button(page, /as a picture$/).tap();
    await expect
      .poll(() => page.evaluate(() => (window as unknown as { shared: string[] }).shared))
      .toEqual(['quick-card-family-room.png image/png']);
  });

  it('prints one upright page', async () => {
    const { page } = await openCard();
    await page.locator('.printed img').waitFor({ state: 'attached' });
    expect(await page.locator('.printed img').count()).toBe(1);
    const paper = await page.evaluate(() =>
      document.adoptedStyleSheets.map((sheet) => sheet.cssRules[0]?.cssText).join(),
    );
    expect(paper).toContain('215.9mm 279.4mm');
  });

  it('has no finding of axe, and targets of 44 px', async () => {
    const { page } = await openCard();
    expect(await accessibilityFindings(page)).toEqual([]);
    await button(page, 'Change the answers').tap();
    await page.getByRole('heading', { name: '1. The leaflet of your kit' }).waitFor();
    await settled(page);
    expect(await accessibilityFindings(page)).toEqual([]);
    const small = await page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('.quick button, .quick input, .quick select, .quick summary')]
        .map((element) => ({ name: element.textContent || element.tagName, box: element.getBoundingClientRect() }))
        .filter(({ box }) => box.width > 0 && (box.width < 43.5 || box.height < 43.5))
        .map(({ name, box }) => `${name} ${box.width} x ${box.height}`),
    );
    expect(small).toEqual([]);
    const wide = await page.evaluate(() => document.querySelector('.quick')?.scrollWidth ?? 0);
    expect(wide).toBeLessThanOrEqual(390);
  });

  it('says why there is no spot, and changes its own plan', async () => {
    const { page } = await openCard();
    const before = await page.evaluate(() => window.location.hash);
    await button(page, 'Change the answers').tap();
    await page.getByLabel('Or another use').selectOption('kitchen');
    await button(page, 'Make the card').tap();
    await page.getByRole('heading', { name: 'No spot yet' }).waitFor();
    await shot(page, 'quick-none');
    expect((await planOf(page)).levels.flatMap(({ detectors }) => detectors)).toEqual([]);
    expect(await page.evaluate(() => window.location.hash)).toBe(before);
  });
});
