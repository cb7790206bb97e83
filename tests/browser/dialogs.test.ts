import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { type OpenPage, openPage } from './harness.ts';
import { openStage } from './samples.ts';

let open: OpenPage;
let page: Page;

beforeAll(async () => {
  open = await openPage();
  page = open.page;
});

/** Opens the list of keys from its button. */
async function openKeys(): Promise<void> {
  await page.getByRole('banner').getByRole('button', { name: 'Keys' }).click();
  await page.getByRole('dialog', { name: 'Keys' }).waitFor();
}

type Way = 'Escape' | 'Close' | 'a tap of the book’s way back';

/**
 * Closes the dialog in the given way and immediately presses a key on the page, before the browser has drawn again: browsers report a
 * closed dialog only with their next frame, and a key press may come earlier. Returns whether the page handled the key, and what has the focus.
 */
const closeAndPress = (way: Way, key: string, ctrlKey: boolean) =>
  page.evaluate(
    ([how, pressed, ctrl]) => {
      const dialog = document.querySelector('dialog');
      if (!dialog?.open) throw new Error('no dialog is open');
      const buttons = [...dialog.querySelectorAll('button')];
      // The scripted equivalent of Escape.
      if (how === 'Escape') dialog.requestClose();
      else buttons.find(({ textContent }) => /^(Close|Back to the plan)$/.test(textContent))?.click();
      const press = new KeyboardEvent('keydown', { key: pressed, ctrlKey: ctrl, bubbles: true, cancelable: true });
      document.body.dispatchEvent(press);
      return { taken: press.defaultPrevented, focus: document.activeElement?.textContent };
    },
    [way, key, ctrlKey] as const,
  );

describe('a dialog that was just closed', () => {
  it.each(['Escape', 'Close'] as const)('by %s has given the keyboard back, and Control+S saves', async (way) => {
    await openKeys();
    const file = page.waitForEvent('download');
    expect(await closeAndPress(way, 's', true)).toEqual({ taken: true, focus: 'Keys' });
    await file;
  });

  it.each(['Escape', 'Close'] as const)('by %s opens again by its key, and stays', async (way) => {
    await openKeys();
    expect((await closeAndPress(way, '?', false)).taken).toBe(true);
    await page.getByRole('dialog', { name: 'Keys' }).waitFor();
    await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done))));
    expect(await page.evaluate(() => document.querySelector('dialog')?.open)).toBe(true);
    await page.keyboard.press('Escape');
    await page.locator('dialog').waitFor({ state: 'detached' });
  });

  it('takes the digits of the palette', async () => {
    await openKeys();
    expect((await closeAndPress('Escape', '4', false)).taken).toBe(true);
  });

  it.each(['Escape', 'a tap of the book’s way back'] as const)('the quality book, by %s', async (way) => {
    await openStage(page, 'Results');
    await page.getByRole('button', { name: /^Quality book/ }).click();
    await page.getByRole('dialog', { name: 'Quality book' }).waitFor();
    const file = page.waitForEvent('download');
    expect((await closeAndPress(way, 's', true)).taken).toBe(true);
    await file;
    open.expectNoTroubles();
  });
});
