import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { someOf } from '../helpers/how-many.ts';
import { ACCESS_PAGES } from './access-pages.ts';
import { openPage } from './harness.ts';
import { openPair } from './samples.ts';

/** A phone and a tablet in both orientations, CSS px. */
const SIZES = [
  [390, 844],
  [820, 1180],
  [1024, 768],
] as const;

/** Returns controls smaller than a finger needs: at least 44 px in one direction and 24 in the other; main buttons 44 px high. */
const tooSmall = (page: Page) =>
  page.evaluate(() =>
    [...document.querySelectorAll<HTMLElement>('button, select, summary, a[href], input:not([type=file])')]
      .filter(
        (each) =>
          each.checkVisibility({ visibilityProperty: true }) &&
          !each.closest('.unseen, [inert]') &&
          !each.matches('.skip, .unseen'),
      )
      .map((each) => {
        // The label of a check box or a radio button can be pressed too.
        const label =
          each instanceof HTMLInputElement && /checkbox|radio/.test(each.type) ? each.closest('label') : null;
        return { each, box: (label ?? each).getBoundingClientRect() };
      })
      .filter(({ box }) => box.width > 0 && box.height > 0)
      .filter(({ each, box }) => {
        const isMain = each.matches('.button--main');
        return (
          Math.min(box.width, box.height) < 23.5 ||
          box.height < (isMain ? 43.5 : 0) ||
          Math.max(box.width, box.height) < 43.5
        );
      })
      .map(
        ({ each, box }) =>
          `${each.textContent || each.getAttribute('aria-label')}: ${Math.round(box.width)} × ${Math.round(box.height)}`,
      ),
  );

describe.each(someOf(SIZES, 1))('targets of a finger at %d × %d', (width, height) => {
  let page: Page;
  beforeAll(async () => {
    page = (await openPair({ viewport: { width, height }, touch: true })).page;
  });

  it.each(ACCESS_PAGES.filter(({ name }) => name !== 'Keys'))('$name', async ({ show, leave }) => {
    await show(page);
    expect(await tooSmall(page)).toEqual([]);
    await leave?.(page);
  });
});

it('the empty sheet on a phone', async () => {
  const { page } = await openPage({ viewport: { width: 390, height: 844 }, touch: true });
  await page.getByRole('button', { name: 'Four walls in one drag' }).first().waitFor();
  expect(await tooSmall(page)).toEqual([]);
  // A finger drops nothing.
  expect(await page.getByText('Or drop a plan file').isVisible()).toBe(false);
});

it.each([
  [390, 844],
  [820, 1180],
])('what folds and unfolds a column at %d × %d is 44 px in both directions', async (width, height) => {
  const { page } = await openPair({ viewport: { width, height }, touch: true });
  const sizes = async () => {
    const boxes = await page
      .locator('.rail, .column-head > .text-button, .job__head > .text-button')
      .evaluateAll((all) =>
        all.map((each) => {
          const box = each.getBoundingClientRect();
          return Math.min(box.width, box.height);
        }),
      );
    return Math.round(Math.min(...boxes));
  };
  expect(await sizes()).toBeGreaterThanOrEqual(43); // less a hairline
  const rail = page.locator('.side--folded .rail');
  if (await rail.isVisible()) await rail.tap();
  await page.locator('.side .column-head > .text-button').waitFor();
  expect(await sizes()).toBeGreaterThanOrEqual(43);
});
