import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Editor } from './editor.ts';
import { expectByKeyboard, type KeyHand, openByKeyboard } from './key-hand.ts';

/** Greatest number of key presses and typed fields in the whole job; a field counts once, with the key that ends it. */
const MOST_ACTIONS = 100;
const MOST_SCROLLS = 0;

let opened: Awaited<ReturnType<typeof openByKeyboard>>;
let page: Page;
let editor: Editor;
let hand: KeyHand;
beforeAll(async () => {
  opened = await openByKeyboard();
  ({ page, editor, hand } = opened);
});

describe('the whole job by keyboard alone', () => {
  it('a rectangular basement is drawn to its sizes, opened, named and furnished', async () => {
    await hand.keys('to the plan', 'Tab', 'Enter');
    await hand.keys('four walls', '1', '1', 'Enter');
    await hand.times('across', 'Control+ArrowRight', 3);
    await hand.times('down', 'Control+ArrowDown', 3);
    await hand.keys('the opposite corner', 'Enter');
    await page.locator('.length-box').waitFor();
    // Digits now enter the length: no key is shown that would not act.
    const shownKeys = page.locator('.answers kbd').filter({ visible: true });
    expect(await shownKeys.count()).toBe(0);
    await hand.type('across inside', '34');
    await hand.type('down inside', '24');
    await page.locator('.length-box').waitFor({ state: 'detached' });
    expect(await shownKeys.allTextContents()).toContain('1 1');
    const walls = (await editor.level()).walls;
    expect(walls).toHaveLength(4);
    await hand.keys('the whole level', '0');
    await hand.keys('door', '2', '1');
    await hand.times('to the wall', 'Control+ArrowLeft', 4);
    await hand.keys('puts it in', 'Enter');
    await expect.poll(async () => (await editor.level()).openings.length).toBe(1);
    await hand.keys('leaves its length, puts it back', 'Escape', 'Escape');
    await hand.keys('family room', '3', '1', 'Control+ArrowRight', 'Control+ArrowRight', 'Control+ArrowRight', 'Enter');
    await expect.poll(async () => (await editor.level()).rooms.length).toBe(1);
    await hand.keys('sump pit', '6', '1', 'Control+ArrowRight', 'Enter');
    await page.locator('.length-box').waitFor();
    await hand.type('from the wall', '4 ft');
    await hand.type('from the other wall', '5 ft');
    const [pit] = (await editor.level()).fixtures;
    expect(pit?.kind).toBe('sump-pit');
  });

  it('a detector is placed where it may be placed, and none is looked for elsewhere', async () => {
    await hand.keys('lets go', 'Escape', 'Escape');
    await hand.keys('detector', '8', '1');
    await hand.times('to the middle', 'Control+ArrowRight', 12);
    await hand.keys('places it', 'Enter');
    await expect.poll(async () => (await editor.level()).detectors.length).toBe(1);
    await expect.poll(() => editor.verdict()).toMatch(/clear|unknown|tight/);
    await hand.keys('lets go', 'Escape', 'Escape');
  });

  it('its log and its result are written', async () => {
    await hand.toStage('Log');
    await hand.keys('to the page', 'F6');
    await hand.tabTo(/\bA1\b/);
    await hand.type('serial number', 'K-1001');
    await expect
      .poll(() => page.evaluate(() => window.__stillspot?.store.getState().plan.log?.map(({ serial }) => serial)))
      .toEqual(['K-1001']);
    await hand.toStage('Results');
    await hand.keys('to the page', 'F6');
    await hand.tabTo(/Result of A1/);
    await hand.type('result', '3.2');
    await expect
      .poll(() => page.evaluate(() => window.__stillspot?.store.getState().plan.readings.map(({ value }) => value)))
      .toEqual([3.2]);
    await hand.toStage('Place');
    await hand.keys('to the work, the plan', 'F6', 'F6');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('sheet-of-plan');
  });

  it('no focus strayed or hid, nothing moved or was refused, and it took no more actions than were counted', () => {
    expectByKeyboard(opened, { actions: MOST_ACTIONS, scrolls: MOST_SCROLLS });
  });
});
