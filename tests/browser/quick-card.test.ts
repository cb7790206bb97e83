import { writeFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import { checkPlan } from '../../geometry/check/check-detector.ts';
import { headlineOf } from '../../geometry/messages/index.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { someOf } from '../helpers/how-many.ts';
import { accessibilityFindings, download, type OpenPage, openPage, pngSize, settled } from './harness.ts';

/** At most so many taps from opening the app to the card. */
const MOST_TAPS = 14;

describe('the quick card on a phone, from a first visit', () => {
  let open: OpenPage;
  let taps = 0;
  let first: Plan;
  const tap = async (name: string | RegExp) => {
    await open.page.getByRole('button', { name }).first().tap();
    taps += 1;
  };
  const plan = () => open.page.evaluate(() => window.__stillspot?.store.getState().plan) as Promise<Plan>;
  const shot = (name: string) =>
    process.env.STILLSPOT_SHOTS ? open.page.screenshot({ path: `${process.env.STILLSPOT_SHOTS}/${name}.png` }) : null;

  beforeAll(async () => {
    open = await openPage({ viewport: { width: 390, height: 844 }, touch: true });
  });

  it('takes at most 14 taps with every question answered', async () => {
    await shot('quick-0');
    await tap('One kit, one room: quick card');
    await open.page.getByRole('heading', { name: 'Quick card' }).waitFor();
    await shot('quick-1');
    await tap('48 to 96 hours');
    await tap(/^5$/);
    await tap('Basement that we live in');
    await tap('Family room');
    await shot('quick-2');
    await open.page
      .getByRole('group', { name: 'From the left wall to the right wall: round lengths' })
      .getByRole('button', { name: '16 ft' })
      .tap();
    await open.page
      .getByRole('group', { name: 'From your wall to the far wall: round lengths' })
      .getByRole('button', { name: '20 ft' })
      .tap();
    taps += 2;
    await tap(/^Right wall/);
    await shot('quick-3');
    await tap(/^far wall, 2 of 5 from the left/);
    await tap(/^I looked on this whole floor: no /);
    await shot('quick-4');
    await tap('A small table that I can move');
    await open.page.getByRole('group', { name: /^Pets/ }).getByRole('button', { name: 'No' }).tap();
    taps += 1;
    await tap(/evening: /);
    await shot('quick-5');
    await tap('Make the card');
    await open.page.getByRole('heading', { name: /measure with a tape/ }).waitFor();
    await shot('quick-card');
    expect(taps).toBeLessThanOrEqual(MOST_TAPS);
    open.expectNoTroubles();
  });

  it('says what the check of its plan says, and what is still open', async () => {
    const made = await plan();
    const reports = checkPlan(made).levels.flatMap(({ detectors }) => detectors);
    expect(reports).toHaveLength(1);
    const [report] = reports;
    const word = report ? headlineOf(report).word : '';
    expect(await open.page.locator('.quick-card__verdict').textContent()).toContain(word);
    const still = open.page.getByRole('region', { name: 'Still open: this is not a clear result' });
    expect(await still.locator('li[data-open="true"]').count()).toBe(1);
    const sun = open.page.getByRole('button', { name: /no direct sun/ });
    await sun.scrollIntoViewIfNeeded();
    const before = await sun.boundingBox();
    const verdict = () => open.page.locator('.quick-card__verdict').textContent();
    await sun.tap();
    await expect.poll(verdict).toMatch(/ ?Clear$/);
    expect(await still.count()).toBe(0);
    expect((await plan()).levels[0]?.lookedFor).toContain('direct-sun');
    // A second press takes it back; nothing moves for either.
    await sun.tap();
    await expect.poll(verdict).toContain(word);
    await sun.tap();
    await expect.poll(verdict).toMatch(/ ?Clear$/);
    expect(await sun.boundingBox()).toEqual(before);
  });

  it('draws the sketch in the font of the page', async () => {
    const sketch = open.page.locator('.quick-card__sketch');
    await expect.poll(() => sketch.getAttribute('src')).toContain(encodeURIComponent('@font-face'));
  });

  it('hands out the picture of one upright page, and the times for a calendar', async () => {
    const press = (name: string) => () => open.page.getByRole('button', { name }).tap();
    const { bytes } = await download(open.page, press('Save as a picture'));
    // Letter upright at 150 px to the inch.
    expect(pngSize(bytes)).toEqual({ width: 1275, height: 1650 });
    if (process.env.STILLSPOT_SHOTS) writeFileSync(`${process.env.STILLSPOT_SHOTS}/quick-picture.png`, bytes);
    const calendar = await download(open.page, press('Save the times for a calendar'));
    expect(calendar.bytes.toString()).toMatch(/SUMMARY:Last moment to pick up/);
  });

  it('is shared by the sheet of the system where there is one', async () => {
    await open.page.evaluate(() => {
      const shared: string[] = [];
      Object.assign(window, { shared });
      Object.assign(navigator, {
        canShare: () => true,
        share: async ({ files }: ShareData) => {
          shared.push(...(files ?? []).map(({ name, type }) => `${name} ${type}`));
        },
      });
    });
    await open.page.getByRole('button', { name: /as a picture$/ }).tap();
    await expect
      .poll(() => open.page.evaluate(() => (window as unknown as { shared: string[] }).shared))
      .toEqual(['quick-card-family-room.png image/png']);
  });

  it('prints one upright page', async () => {
    expect(await open.page.locator('.printed img').count()).toBe(1);
    const page = await open.page.evaluate(() =>
      document.adoptedStyleSheets.map((sheet) => sheet.cssRules[0]?.cssText).join(),
    );
    expect(page).toContain('215.9mm 279.4mm');
  });

  it('has no finding of axe, and targets of 44 px', async () => {
    expect(await accessibilityFindings(open.page)).toEqual([]);
    await open.page.getByRole('button', { name: 'Change the answers' }).tap();
    await open.page.getByRole('heading', { name: '1. The leaflet of your kit' }).waitFor();
    await settled(open.page);
    expect(await accessibilityFindings(open.page)).toEqual([]);
    const small = await open.page.evaluate(() =>
      [...document.querySelectorAll<HTMLElement>('.quick button, .quick input, .quick select, .quick summary')]
        .map((element) => ({ name: element.textContent || element.tagName, box: element.getBoundingClientRect() }))
        .filter(({ box }) => box.width > 0 && (box.width < 43.5 || box.height < 43.5))
        .map(({ name, box }) => `${name} ${box.width} x ${box.height}`),
    );
    expect(small).toEqual([]);
    const wide = await open.page.evaluate(() => document.querySelector('.quick')?.scrollWidth ?? 0);
    expect(wide).toBeLessThanOrEqual(390);
  });

  it('says why there is no spot, and changes its own plan', async () => {
    const before = await open.page.evaluate(() => window.location.hash);
    await open.page.getByLabel('Or another use').selectOption('kitchen');
    await open.page.getByRole('button', { name: 'Make the card' }).tap();
    await open.page.getByRole('heading', { name: 'No spot yet' }).waitFor();
    await shot('quick-none');
    expect((await plan()).levels.flatMap(({ detectors }) => detectors)).toEqual([]);
    expect(await open.page.evaluate(() => window.location.hash)).toBe(before);
  });

  it('another room is another plan, and the first one is kept', async () => {
    await open.page.evaluate(() => window.__stillspot?.store.getState().undo());
    first = await plan();
    await open.page.getByRole('button', { name: 'Another room' }).tap();
    await open.page.getByRole('button', { name: 'Bedroom' }).tap();
    await open.page.getByRole('button', { name: 'Basement that we live in' }).tap();
    await open.page.getByLabel('From the left wall to the right wall', { exact: true }).fill('11 ft 4');
    await open.page.getByLabel('From your wall to the far wall', { exact: true }).fill('13\' 2 1/2"');
    await open.page.getByLabel('From your wall to the far wall', { exact: true }).blur();
    await open.page.getByRole('button', { name: 'Make the card' }).tap();
    await open.page.locator('.quick-card__verdict').waitFor();
    expect((await plan()).title).toBe('Quick card, bedroom');
    // The leaflet is the same; nothing else is taken over.
    expect((await plan()).levels[0]?.lookedFor ?? []).toEqual([]);
    await shot('quick-bedroom');
  });

  it('opens in the full app with everything in it, and stands under Plans', async () => {
    await open.page.getByRole('button', { name: 'Open in the full app' }).tap();
    expect(await open.page.locator('dialog').count()).toBe(0);
    // Back leads to the first room, which a reload finds as it was.
    await open.page.goBack();
    await expect.poll(plan).toEqual(first);
    await open.page.reload();
    await open.page.locator('#root > *').first().waitFor();
    await expect.poll(plan).toEqual(first);
    open.expectNoTroubles();
  });
});

describe('the quick card on other screens', () => {
  const sizes = [
    { width: 320, height: 640 },
    { width: 820, height: 1180 },
    { width: 1440, height: 900 },
  ] as const;
  let open: OpenPage;
  const shot = (name: string) =>
    process.env.STILLSPOT_SHOTS ? open.page.screenshot({ path: `${process.env.STILLSPOT_SHOTS}/${name}.png` }) : null;

  beforeAll(async () => {
    open = await openPage({ viewport: { width: 1440, height: 900 } });
  });

  it('is made with the keyboard alone, from the library', async () => {
    const { page } = open;
    await page.getByRole('button', { name: 'Plans' }).focus();
    await page.keyboard.press('Enter');
    const library = page.getByRole('dialog', { name: 'Plans' });
    await library.getByRole('button', { name: /quick card/ }).focus();
    await shot('quick-library');
    await page.keyboard.press('Enter');
    const heading = page.getByRole('heading', { name: 'Quick card' });
    await heading.waitFor();
    await expect.poll(() => heading.evaluate((element) => element === document.activeElement)).toBe(true);
    for (const name of ['Basement that we live in', 'Bedroom']) {
      await page.getByRole('button', { name }).focus();
      await page.keyboard.press('Space');
    }
    await page.getByLabel('From the left wall to the right wall', { exact: true }).focus();
    await page.keyboard.type('11 ft 6');
    await page.keyboard.press('Enter');
    await page.getByLabel('From your wall to the far wall', { exact: true }).focus();
    await page.keyboard.type('13 ft');
    await page.keyboard.press('Enter');
    const square = page.getByRole('button', { name: /^left wall, 3 of 5/ });
    await square.focus();
    await page.keyboard.press('Space');
    expect(await square.getAttribute('aria-pressed')).toBe('true');
    await page.getByRole('button', { name: 'Make the card' }).focus();
    await page.keyboard.press('Enter');
    await page.locator('.quick-card__verdict').waitFor();
    await expect.poll(() => heading.evaluate((element) => element === document.activeElement)).toBe(true);
  });

  it.each(someOf(sizes, 2))(
    'has no finding of axe and no sideways scrolling at $width px, in any theme',
    async (size) => {
      const { page } = open;
      await page.setViewportSize(size);
      for (const asks of [false, true]) {
        if (asks) await page.getByRole('button', { name: 'Change the answers' }).click();
        for (const theme of ['paper', 'sun', 'dark'] as const) {
          await page.evaluate((name) => window.__stillspot?.store.getState().setTheme(name), theme);
          await settled(page);
          expect({ theme, asks, found: await accessibilityFindings(page) }).toEqual({ theme, asks, found: [] });
        }
        await page.evaluate(() => window.__stillspot?.store.getState().setTheme('paper'));
        await shot(`quick-${size.width}-${asks ? 'asks' : 'card'}`);
        const wide = await page.evaluate(() => document.querySelector('.quick')?.scrollWidth ?? 0);
        expect(wide).toBeLessThanOrEqual(size.width);
      }
      await page.getByRole('button', { name: 'Make the card' }).click();
      await page.locator('.quick-card__verdict').waitFor();
      open.expectNoTroubles();
    },
  );
});
