import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { isLongRun, someOf } from '../helpers/how-many.ts';
import { ANSWERED, button, openCard, PHONE, planOf, shot, walkToCard } from './card-page.ts';
import { accessibilityFindings, openPage, type PageOptions, settled } from './harness.ts';

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
      // The choice stays in view, and moves only as far as the squares require.
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
    // The leaflet is the same; no other answer is taken over.
    expect((await planOf(page)).levels[0]?.lookedFor ?? []).toEqual([]);
    await shot(page, 'quick-bedroom');
    await button(page, 'Open in the full app').tap();
    expect(await page.locator('dialog').count()).toBe(0);
    // Back leads to the first room, which is unchanged after a reload.
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
    // It opens by itself, because a user on a phone does not look for it.
    await page.getByRole('heading', { name: 'Quick card' }).waitFor();
    const chosen = (name: string) => button(page, name).getAttribute('aria-pressed');
    await expect.poll(() => button(page, 'Bedroom').count()).toBe(1);
    expect([await chosen('Bedroom'), await chosen('Basement that we live in')]).toEqual(['true', 'true']);
    await shot(page, 'quick-resumed');
    await button(page, 'Back to the card: Quick card, family room').tap();
    await page.locator('.quick-card__verdict').waitFor();
    expect(await planOf(page)).toEqual(first);
    // From there it also continues where it was.
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
    await page.locator('.saved', { hasText: /^saved / }).waitFor({ state: 'attached' });
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

  it('opens on the card in a new tab, too, where the store answers late', async () => {
    const { page, context } = await openPage(PHONE);
    await walkToCard(page);
    await page.locator('.saved', { hasText: /^saved / }).waitFor({ state: 'attached' });
    const address = page.url();
    await page.close();
    const nextDay = await context.newPage();
    // The picture waits 4 s for the store: a store that takes longer is simulated by a timeout of 0.
    await nextDay.addInitScript(() => {
      const timer = window.setTimeout.bind(window);
      const cut: number[] = [];
      const shorter = (run: () => void, ms: number, ...rest: unknown[]) => {
        if (ms === 4000) cut.push(ms);
        return timer(run, ms === 4000 ? 0 : ms, ...rest);
      };
      Object.assign(window, { cut, setTimeout: shorter });
    });
    await nextDay.goto(address);
    await nextDay.locator('.quick-card__verdict').waitFor();
    expect(await nextDay.evaluate(() => (window as unknown as { cut: number[] }).cut.length)).toBeGreaterThan(0);
    await expect.poll(() => nextDay.getByText('The storage of this browser does not answer').count()).toBe(0);
  });

  it('keeps changed answers of the open card over a reload, and leaves its plan alone until the card is made', async () => {
    const open = await openPage(PHONE);
    const { page } = open;
    await walkToCard(page);
    const first = await planOf(page);
    await button(page, 'Change the answers').tap();
    await button(page, 'Bedroom').tap();
    await page.reload();
    // It opens by itself, because a user on a phone does not look for it.
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
    // One Tab stop for all squares; the arrow keys move through the picture.
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

  // The usual run tests the card in `access-matrix`.
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
