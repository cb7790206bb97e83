import type { Locator, Page } from 'playwright-core';
import { settled } from './harness.ts';

/**
 * Brings what is to be pressed into sight as a hand scrolls: as far as it goes, so that what comes next is on the page too.
 * Returns whether the page had to be scrolled for it.
 */
export async function broughtIntoView(page: Page, target: Locator): Promise<boolean> {
  await target.waitFor();
  const isHidden = await target.evaluate((element) => {
    const { left, top, width, height } = element.getBoundingClientRect();
    const above = document.elementFromPoint(left + width / 2, top + height / 2);
    return above === null || !(element.contains(above) || above.contains(element));
  });
  if (isHidden) {
    await target.evaluate((element) => element.scrollIntoView({ block: 'start' }));
    await settled(page);
    // A press where a part of it shows: the press itself would bring in the rest.
  } else await target.scrollIntoViewIfNeeded();
  return isHidden;
}

/**
 * Presses it by `press`. Returns how far it has moved away from under the hand, whole px: a scroller comes to rest at whole ones. 0 for what has
 * gone with its work done.
 */
export async function pressedShift(page: Page, target: Locator, press: () => Promise<unknown>): Promise<number> {
  const element = await target.elementHandle();
  const before = await element?.boundingBox();
  await press();
  await settled(page);
  const after = (await element?.isVisible()) ? await element?.boundingBox() : null;
  await element?.dispose();
  return before && after ? Math.floor(Math.hypot(after.x - before.x, after.y - before.y)) : 0;
}
