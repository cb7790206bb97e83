import type { Locator, Page } from 'playwright-core';
import { settled } from './harness.ts';

/**
 * Scrolls a control into view as a user does: as far as possible, so that the controls after it are visible too.
 * Returns whether the page had to be scrolled.
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
    // A press on a partly visible control would scroll the rest of it into view, so it is scrolled before.
  } else await target.scrollIntoViewIfNeeded();
  return isHidden;
}

/**
 * Presses a control by `press`. Returns how far the control has moved from under the pointer, whole px, because scrolling stops at whole ones.
 * 0 for a control that the press removed.
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
