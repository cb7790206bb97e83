import { writeFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { checkPlan } from '../../geometry/check/check-detector.ts';
import { headlineOf } from '../../geometry/messages/index.ts';
import type { Plan } from '../../geometry/plan/model.ts';
import { emptyPlan } from '../../geometry/planfile/empty.ts';
import { type CardAnswers, NO_ANSWERS } from '../../src/quick-card/answers.ts';
import { quickPlan } from '../../src/quick-card/make-plan.ts';
import { isLongRun, someOf } from '../helpers/how-many.ts';
import {
  accessibilityFindings,
  download,
  type OpenPage,
  openPage,
  type PageOptions,
  pngSize,
  settled,
} from './harness.ts';

/** At most so many taps from opening the app to the card. */
const MOST_TAPS = 14;

const FOOT = 304.8;
const DAY = 86_400_000;
const PHONE = { viewport: { width: 390, height: 844 }, touch: true } as const;

/** What the walk of the first test answers: direct sun alone is open then. */
const ANSWERED: CardAnswers = {
  ...NO_ANSWERS,
  leaflet: { ...NO_ANSWERS.leaflet, minimumHours: 48, maximumHours: 96, labDays: 5 },
  level: 'basement',
  use: 'family-room',
  across: 16 * FOOT,
  along: 20 * FOOT,
  inside: ['right'],
  things: [{ kind: 'window', square: '1,-1' }],
  none: ['moving-air', 'heat', 'sump', 'floor-drain', 'washer-dryer'],
  support: { kind: 'table', top: 762 },
  company: false,
};

const planOf = (page: Page) => page.evaluate(() => window.__stillspot?.store.getState().plan) as Promise<Plan>;
const verdictOf = (page: Page) => page.locator('.quick-card__verdict').textContent();
const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });
const shot = (page: Page, name: string) =>
  process.env.STILLSPOT_SHOTS ? page.screenshot({ path: `${process.env.STILLSPOT_SHOTS}/${name}.png` }) : null;

/** From the plan that is open, by Plans. */
async function openQuickCard(page: Page): Promise<void> {
  const plans = page.getByRole('dialog', { name: 'Plans' });
  if (!(await plans.isVisible())) await page.getByRole('banner').getByRole('button', { name: 'Plans' }).click();
  await plans
    .getByRole('button', { name: /quick card/i })
    .first()
    .click();
  await page.getByRole('heading', { name: 'Quick card' }).waitFor();
}

/** A page of its own with the card of these answers, the house to be closed tomorrow. */
async function openCard(answers: CardAnswers = ANSWERED, options: PageOptions = PHONE): Promise<OpenPage> {
  const open = await openPage(options);
  const closing = new Date(Date.now() + DAY).toISOString();
  const plan = quickPlan(emptyPlan(), { ...answers, closing }, Date.now());
  await open.page.evaluate((made) => window.__stillspot?.store.getState().openPlan(made), plan);
  await openQuickCard(open.page);
  await button(open.page, 'Change the answers').waitFor();
  return open;
}

/** From a first visit to the card, every question answered. Returns the taps. */
async function walkToCard(page: Page): Promise<number> {
  let taps = 0;
  const tap = async (name: string | RegExp, group?: string | RegExp) => {
    const within = group === undefined ? page : page.getByRole('group', { name: group });
    await within.getByRole('button', { name }).first().tap();
    taps += 1;
  };
  await shot(page, 'quick-0');
  await tap('One kit, one room: quick card');
  await page.getByRole('heading', { name: '1. The leaflet of your kit' }).waitFor();
  await shot(page, 'quick-1');
  await tap('48 to 96 hours');
  await tap(/^5$/);
  await tap('Basement that we live in');
  await tap('Family room');
  await shot(page, 'quick-2');
  await tap('16 ft', 'From the left wall to the right wall: round lengths');
  await tap('20 ft', 'From your wall to the far wall: round lengths');
  await tap(/^Right wall/);
  await shot(page, 'quick-3');
  await tap(/^far wall, 2 of 5 from the left/);
  await tap(/^I looked on this whole floor: no /);
  await shot(page, 'quick-4');
  await tap('A small table that I can move');
  await tap('No', /^Pets/);
  await tap(/evening: /);
  await shot(page, 'quick-5');
  await tap('Make the card');
  await page.getByRole('heading', { name: /measure with a tape/ }).waitFor();
  await shot(page, 'quick-card');
  return taps;
}

describe('the quick card on a phone', () => {
  it('takes at most 14 taps from a first visit with every question answered', async () => {
    const open = await openPage(PHONE);
    expect(await walkToCard(open.page)).toBeLessThanOrEqual(MOST_TAPS);
    const { quickCard } = (await planOf(open.page)) as Plan & { readonly quickCard: CardAnswers };
    // How high the table is nobody has measured yet.
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
    // A second press takes it back; nothing moves for either.
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
    // A point that is closed stays where it is: a second press of the finger takes it back, and closes no other one.
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
    // The other answer: where it is.
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
    // With a share sheet the button is called otherwise from its first picture on.
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

describe('the questions of the quick card', () => {
  const openQuestions = async (options = PHONE as PageOptions) => {
    const open = await openCard(ANSWERED, options);
    await button(open.page, 'Change the answers').tap();
    await open.page.getByRole('heading', { name: '1. The leaflet of your kit' }).waitFor();
    return open;
  };

  it.each(someOf(['Sump pit', 'Washer or dryer', 'Vent or grille'], 1))(
    'show the squares and what to do with them once "%s" is chosen, and leave it under the finger',
    async (name) => {
      const { page } = await openQuestions();
      const chosen = page.getByRole('button', { name, exact: true });
      await chosen.scrollIntoViewIfNeeded();
      const before = await chosen.boundingBox();
      await chosen.tap();
      const words = page.getByText(`${name}: press every square that it touches.`);
      await words.waitFor();
      await settled(page);
      const top = (await page.locator('.quick__head').boundingBox())?.height ?? 0;
      const bottom = (await page.locator('.quick__foot').boundingBox())?.y ?? 0;
      const [squares, said, after] = await Promise.all(
        [page.locator('.squares'), words, chosen].map((each) => each.boundingBox()),
      );
      expect(said?.y).toBeGreaterThan(top);
      expect((squares?.y ?? 0) + (squares?.height ?? 1000)).toBeLessThan(bottom);
      // The choice stays in view, and moves only as far as the squares need.
      expect(after?.y).toBeGreaterThan(top);
      expect(after?.y).toBeLessThanOrEqual((before?.y ?? 0) + 1);
      if ((after?.y ?? 0) < (before?.y ?? 0) - 1) {
        const where = await page.locator('.quick__where').boundingBox();
        expect((where?.y ?? 0) + (where?.height ?? 0)).toBeGreaterThan(bottom - 60);
      }
      if (name === 'Washer or dryer') await shot(page, 'quick-washer');
    },
  );

  it('keep the choice in view where the squares with it are higher than the screen', async () => {
    const { page } = await openQuestions({ viewport: { width: 320, height: 480 }, touch: true });
    const chosen = page.getByRole('button', { name: 'Washer or dryer', exact: true });
    await chosen.tap();
    await page.getByText('Washer or dryer: press every square that it touches.').waitFor();
    await settled(page);
    const head = await page.locator('.quick__head').boundingBox();
    const after = await chosen.boundingBox();
    expect(after?.y).toBeGreaterThanOrEqual(head?.height ?? 0);
    expect(after?.y).toBeLessThan(240);
  });

  it('leave the head and the foot behind on a page of large type, where they would take half of it', async () => {
    const { page } = await openQuestions({ viewport: { width: 320, height: 256 }, touch: true });
    const square = page.getByRole('button', { name: /^far wall, 3 of 5/ }).first();
    await square.scrollIntoViewIfNeeded();
    for (const part of ['.quick__head', '.quick__foot']) {
      const box = await page.locator(part).boundingBox();
      expect((box?.y ?? 0) + (box?.height ?? 0) <= 0 || (box?.y ?? 0) >= 256).toBe(true);
    }
  });

  it('refuse hours that no test can meet, in the field', async () => {
    const { page } = await openQuestions();
    const most = page.getByLabel('Hours at most');
    await page.getByLabel('Hours at least').fill('96');
    await most.fill('48');
    await most.press('Enter');
    const trouble = page.getByRole('alert').filter({ hasText: /at least 96 hours and at most 48 hours/ });
    await trouble.waitFor();
    expect(await button(page, 'Make the card').isDisabled()).toBe(true);
    await shot(page, 'quick-hours');
    await most.fill('168');
    await most.press('Enter');
    await expect.poll(() => trouble.count()).toBe(0);
    expect(await button(page, 'Make the card').isDisabled()).toBe(false);
  });

  it('say of a length what is wrong with it, and the range', async () => {
    const { page } = await openQuestions();
    const across = page.getByLabel('From the left wall to the right wall', { exact: true });
    for (const [text, wrong] of [
      ['0', 'short'],
      ['5000', 'long'],
    ] as const) {
      await across.fill(text);
      await across.press('Enter');
      await page.getByText(`"${text}" is too ${wrong}. Write a length from 1 in to 328 ft.`).first().waitFor();
    }
    await shot(page, 'quick-length');
  });
});

describe('another room', () => {
  const bedroom = async (page: Page) => {
    await button(page, 'Another room').tap();
    await button(page, 'Bedroom').tap();
    await button(page, 'Basement that we live in').tap();
  };

  it('is another plan with the same leaflet, and the first one is kept', async () => {
    const open = await openPage(PHONE);
    const { page } = open;
    await walkToCard(page);
    const first = await planOf(page);
    await bedroom(page);
    await page.getByLabel('From the left wall to the right wall', { exact: true }).fill('11 ft 4');
    await page.getByLabel('From your wall to the far wall', { exact: true }).fill('13\' 2 1/2"');
    await page.getByLabel('From your wall to the far wall', { exact: true }).blur();
    await button(page, 'Make the card').tap();
    await page.locator('.quick-card__verdict').waitFor();
    expect((await planOf(page)).title).toBe('Quick card, bedroom');
    // The leaflet is the same; nothing else is taken over.
    expect((await planOf(page)).levels[0]?.lookedFor ?? []).toEqual([]);
    await shot(page, 'quick-bedroom');
    await button(page, 'Open in the full app').tap();
    expect(await page.locator('dialog').count()).toBe(0);
    // Back leads to the first room, which a reload finds as it was.
    await page.goBack();
    await expect.poll(() => planOf(page)).toEqual(first);
    await page.reload();
    await page.locator('#root > *').first().waitFor();
    await expect.poll(() => planOf(page)).toEqual(first);
    open.expectNoTroubles();
  });

  it('keeps its answers over a reload, with the first card one press away', async () => {
    const open = await openPage(PHONE);
    const { page } = open;
    await walkToCard(page);
    const first = await planOf(page);
    await bedroom(page);
    await page.reload();
    // It opens by itself: whoever answers on a phone does not look for it.
    await page.getByRole('heading', { name: 'Quick card' }).waitFor();
    const chosen = (name: string) => button(page, name).getAttribute('aria-pressed');
    await expect.poll(() => button(page, 'Bedroom').count()).toBe(1);
    expect([await chosen('Bedroom'), await chosen('Basement that we live in')]).toEqual(['true', 'true']);
    await shot(page, 'quick-resumed');
    await button(page, 'Back to the card: Quick card, family room').tap();
    await page.locator('.quick-card__verdict').waitFor();
    expect(await planOf(page)).toEqual(first);
    // From there on, too, it goes on where it was.
    await button(page, 'Another room').tap();
    expect(await chosen('Bedroom')).toBe('true');
    await button(page, 'Begin again').tap();
    expect(await chosen('Bedroom')).toBe('false');
    open.expectNoTroubles();
  });

  it('opens on the card in a new tab where it was open last, and on the plan where the full app was', async () => {
    const open = await openPage(PHONE);
    const { page, context } = open;
    await walkToCard(page);
    await expect
      .poll(() => page.evaluate(() => document.querySelector('.save-status')?.textContent ?? 'saved'))
      .toMatch(/saved/i);
    const address = page.url();
    await page.close();
    const nextDay = await context.newPage();
    await nextDay.goto(address);
    await nextDay.locator('.quick-card__verdict').waitFor();
    await button(nextDay, 'Open in the full app').tap();
    await nextDay.close();
    const later = await context.newPage();
    await later.goto(address);
    await later.locator('#root > *').first().waitFor();
    await settled(later);
    expect(await later.locator('dialog').count()).toBe(0);
  });

  it('keeps changed answers of the open card over a reload, and leaves its plan alone until the card is made', async () => {
    const open = await openPage(PHONE);
    const { page } = open;
    await walkToCard(page);
    const first = await planOf(page);
    await button(page, 'Change the answers').tap();
    await button(page, 'Bedroom').tap();
    await page.reload();
    // It opens by itself: whoever answers on a phone does not look for it.
    await page.getByRole('heading', { name: 'Quick card' }).waitFor();
    await expect.poll(() => button(page, 'Bedroom').count()).toBe(1);
    expect(await button(page, 'Bedroom').getAttribute('aria-pressed')).toBe('true');
    expect(await planOf(page)).toEqual(first);
    await button(page, 'Make the card').tap();
    await page.locator('.quick-card__verdict').waitFor();
    expect((await planOf(page)).title).toBe('Quick card, bedroom');
    open.expectNoTroubles();
  });
});

describe('the quick card on other screens', () => {
  const sizes = [
    { width: 320, height: 640 },
    { width: 820, height: 1180 },
    { width: 1440, height: 900 },
  ] as const;

  it('is made with the keyboard alone, from the library', async () => {
    const { page } = await openPage({ viewport: { width: 1440, height: 900 } });
    await page.getByRole('button', { name: 'Plans' }).focus();
    await page.keyboard.press('Enter');
    const library = page.getByRole('dialog', { name: 'Plans' });
    await library.getByRole('button', { name: /quick card/ }).focus();
    await shot(page, 'quick-library');
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
    // One stop of the Tab key for all squares; the arrows lead through the picture.
    const names: string[] = [];
    for (const key of ['ArrowUp', 'ArrowUp', 'ArrowUp', 'ArrowRight', 'ArrowDown']) {
      await page.keyboard.press(key);
      names.push(await page.evaluate(() => document.activeElement?.getAttribute('aria-label') ?? ''));
    }
    expect(names).toEqual([
      'left wall, 2 of 5 from the far wall',
      'left wall, 1 of 5 from the far wall',
      'far wall, 1 of 5 from the left',
      'far wall, 2 of 5 from the left',
      'wall that you come in through, 2 of 5 from the left',
    ]);
    await page.keyboard.press('Tab');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toMatch(/on this floor, 10 ft/);
    await page.getByRole('button', { name: 'Make the card' }).focus();
    await page.keyboard.press('Enter');
    await page.locator('.quick-card__verdict').waitFor();
    await expect.poll(() => heading.evaluate((element) => element === document.activeElement)).toBe(true);
  });

  // The usual run has the card in `access-matrix`.
  it.each(isLongRun ? sizes : [])(
    'has no finding of axe and no sideways scrolling at $width px, in any theme',
    async (size) => {
      const open = await openCard(ANSWERED, { viewport: size });
      const { page } = open;
      for (const asks of [false, true]) {
        if (asks) await page.getByRole('button', { name: 'Change the answers' }).click();
        for (const theme of ['paper', 'sun', 'dark'] as const) {
          await page.evaluate((name) => window.__stillspot?.store.getState().setTheme(name), theme);
          await settled(page);
          expect({ theme, asks, found: await accessibilityFindings(page) }).toEqual({ theme, asks, found: [] });
        }
        await page.evaluate(() => window.__stillspot?.store.getState().setTheme('paper'));
        await shot(page, `quick-${size.width}-${asks ? 'asks' : 'card'}`);
        const wide = await page.evaluate(() => document.querySelector('.quick')?.scrollWidth ?? 0);
        expect(wide).toBeLessThanOrEqual(size.width);
      }
      open.expectNoTroubles();
    },
  );
});
