import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { isLongRun, someOf } from '../helpers/how-many.ts';
import { accessibilityFindings, type OpenPage, openPage } from './harness.ts';
import { openSample, openStage, takeMachinesAway } from './samples.ts';

let open: OpenPage;
let page: Page;

beforeAll(async () => {
  open = await openPage();
  page = open.page;
  await openSample(page, 'Crowded utility');
  await page.getByRole('heading', { name: 'Blocked', exact: true }).waitFor();
});

/** Opens the list of the level, which stays open until it is closed. */
async function openList(): Promise<void> {
  const list = page.locator('.all-items');
  if ((await list.getAttribute('open')) === null) await list.locator('summary').click();
}

describe('axe finds nothing', () => {
  it.each(someOf(['paper', 'sun', 'dark'], 1))('in the colors %s, with numbers and list open', async (theme) => {
    await page.getByLabel('Colors').selectOption(theme);
    await openStage(page, 'Draw');
    await openList();
    await page.evaluate(() => {
      const { plan, select } = window.__stillspot?.store.getState() ?? {};
      select?.([plan?.levels[0]?.fixtures[0]?.id ?? '']);
    });
    expect(await accessibilityFindings(page)).toEqual([]);
  });

  it.runIf(isLongRun)('in every stage, with the clearances open', async () => {
    await page.getByLabel('Colors').selectOption('paper');
    for (const stage of ['Property', 'Place']) {
      await openStage(page, stage);
      await page.locator('.rung summary').first().click();
      expect(await accessibilityFindings(page)).toEqual([]);
    }
    for (const stage of ['Time', 'House', 'Log', 'Results', 'Plan sheet']) {
      await openStage(page, stage);
      expect(await accessibilityFindings(page)).toEqual([]);
    }
    await openStage(page, 'Draw');
  });

  it('in a dialog', async () => {
    await page.getByRole('banner').getByRole('button', { name: 'Keys' }).click();
    await page.getByRole('dialog', { name: 'Keys' }).waitFor();
    expect(await accessibilityFindings(page)).toEqual([]);
    await page.keyboard.press('Escape');
  });
});

describe('by keyboard', () => {
  it('two digits put a thing in hand, Escape puts it back', async () => {
    await page.locator('body').press('4');
    await page.locator('body').press('1');
    await expect
      .poll(() => page.evaluate(() => window.__stillspot?.store.getState().tool))
      .toEqual({
        kind: 'fixture',
        fixture: 'supply-register',
      });
    await page.getByText('Press where it stands: supply register.').waitFor();
    await page.keyboard.press('Escape');
    await expect.poll(() => page.evaluate(() => window.__stillspot?.store.getState().tool.kind)).toBe('select');
  });

  it('the list of the level selects, and the verdict panel shows what is selected', async () => {
    await openStage(page, 'Draw');
    await openList();
    const row = page.getByLabel('Detectors', { exact: true }).getByRole('button').nth(1);
    await row.focus();
    await page.keyboard.press('Enter');
    await expect.poll(() => row.getAttribute('aria-pressed')).toBe('true');
    await page.locator('.verdict-panel__where', { hasText: 'Detector C2' }).waitFor();
  });
});

describe('the way out', () => {
  it('moves a blocked detector to the nearest valid spot, and the change is told aloud', async () => {
    await page.getByLabel('Detectors on this level').getByRole('button', { name: /^C1/ }).click();
    await page.getByRole('button', { name: /^Move it .* with tape to spare$/ }).click();
    await page.getByRole('heading', { name: 'Clear of what is drawn', exact: true }).waitFor();
    await expect
      .poll(() => page.locator('output[aria-live]').textContent())
      .toMatch(
        /^Moved C1 .+ [a-z-]+\. C1: clear of what is drawn\. Every rule that ran is met\..* Not run: direct sun and what carries it\./,
      );
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('heading', { name: 'Blocked', exact: true }).waitFor();
  });

  it('asks for the use of a room that has none, and takes no use for granted', async () => {
    await takeMachinesAway(page);
    await page.getByLabel('Detectors on this level').getByRole('button', { name: /^C2/ }).click();
    await page.getByRole('heading', { name: 'Unknown', exact: true }).waitFor();
    const rooms = () => page.evaluate(() => window.__stillspot?.store.getState().plan.levels[0]?.rooms.length);
    const before = await rooms();
    await page.getByRole('button', { name: 'Enter what this room is used for' }).click();
    await expect.poll(() => rooms()).toBe(before);
    await page
      .getByRole('region', { name: 'What is this room used for?' })
      .getByRole('button', { name: /^Closet/ })
      .click();
    await expect.poll(() => rooms()).toBe((before ?? 0) + 1);
    await page.getByLabel('Detectors on this level').getByRole('button', { name: /^C2/ }).click();
    await page.getByRole('heading', { name: 'Blocked', exact: true }).waitFor();
    open.expectNoTroubles();
  });
});

describe('what belongs on every screen with a verdict', () => {
  it('the four cautions are in view without scrolling, on a desk and on a tablet', async () => {
    for (const viewport of [
      { width: 1440, height: 900 },
      { width: 1024, height: 768 },
      { width: 768, height: 1024 },
    ]) {
      await page.setViewportSize(viewport);
      const box = await page.locator('.cautions').boundingBox();
      expect(box && box.y + box.height).toBeLessThanOrEqual(viewport.height);
      const text = await page.locator('.cautions').textContent();
      for (const word of ['tape', 'Local codes', 'licensed professional', 'Long-term risk'])
        expect(text).toContain(word);
    }
  });

  it.each([
    [1440, 900],
    [1024, 768],
    [768, 1024],
  ])('nothing runs off a page of %d by %d', async (width, height) => {
    await page.setViewportSize({ width, height });
    const over = await page.evaluate(() => document.documentElement.scrollWidth - window.innerWidth);
    expect(over).toBeLessThanOrEqual(0);
  });
});

describe('on a coarse pointer', () => {
  it('every press target is at least 44 px in one direction and 24 in the other', async () => {
    const { page: tablet } = await openPage({ viewport: { width: 1024, height: 768 }, touch: true });
    await openSample(tablet, 'Plain basement');
    await tablet.getByRole('heading', { name: 'Clear of what is drawn', exact: true }).waitFor();
    const small = await tablet.evaluate(() =>
      [...document.querySelectorAll('button, select, summary, input:not([type=file])')]
        .filter((each) => each.checkVisibility() && !each.closest('.unseen'))
        .map((each) => ({ box: each.getBoundingClientRect(), text: each.textContent ?? '' }))
        .filter(({ box }) => box.height < 43.5 || box.width < 24)
        .map(({ box, text }) => `${text}: ${Math.round(box.width)} × ${Math.round(box.height)}`),
    );
    expect(small).toEqual([]);
  });
});
