import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';

/**
 * Presses Tab, or another key, until `target` has the focus. Fails after `most` presses. The element is looked up once, and again
 * only if the page has created it anew: finding one by its role reads the names of the whole page.
 */
export async function tabTo(page: Page, target: Locator, { key = 'Tab', most = 90 } = {}): Promise<void> {
  await target.waitFor();
  let element = await target.elementHandle();
  const isThere = async () => {
    const found = await element?.evaluate((each) => (each.isConnected ? each === document.activeElement : null));
    if (typeof found === 'boolean') return found;
    element = await target.elementHandle();
    return element?.evaluate((each) => each === document.activeElement);
  };
  for (let presses = 0; presses < most && !(await isThere()); presses++) await page.keyboard.press(key);
  await expect.poll(isThere).toBe(true);
}
