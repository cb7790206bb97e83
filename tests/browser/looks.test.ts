import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { someOf } from '../helpers/how-many.ts';
import { accessibilityFindings, type OpenPage, openPage, type PageOptions } from './harness.ts';
import { keptSetting, openSample, openStage } from './samples.ts';

async function openLook(media: PageOptions['media']): Promise<OpenPage> {
  const open = await openPage(media ? { media } : {});
  await openSample(open.page, 'Crowded utility');
  await open.page.getByRole('heading', { name: 'Blocked', exact: true }).waitFor();
  return open;
}
const theme = (page: Page) => page.evaluate(() => document.documentElement.dataset.theme);
const ground = (page: Page, selector: string) =>
  page
    .locator(selector)
    .first()
    .evaluate((each) => getComputedStyle(each).backgroundColor);

describe('at a first visit', () => {
  it('a system in the dark gets the dark colors, and what is picked stays picked', async () => {
    const { page, context, expectNoTroubles } = await openPage({ media: { colorScheme: 'dark' } });
    await page.getByRole('heading', { name: 'Start with the room that you are in.' }).waitFor();
    await expect.poll(() => theme(page)).toBe('dark');
    await page.getByLabel('Colors').selectOption('paper');
    await expect.poll(() => theme(page)).toBe('paper');
    await keptSetting(page, 'theme', 'paper');
    await page.reload();
    await page.getByRole('heading', { name: 'Start with the room that you are in.' }).waitFor();
    await expect.poll(() => theme(page)).toBe('paper');
    expectNoTroubles();
    await context.close();
  });

  it('a system that asks for more contrast gets the colors for bright sun', async () => {
    const { page, context } = await openPage({ media: { contrast: 'more' } });
    await page.getByRole('heading', { name: 'Start with the room that you are in.' }).waitFor();
    await expect.poll(() => theme(page)).toBe('sun');
    await context.close();
  });
});

describe('where the system sets the colors', () => {
  it.each(someOf(['dark', 'light'] as const, 1))(
    '%s: what is on differs from what is off, and axe finds nothing',
    async (colorScheme) => {
      const { page, context, expectNoTroubles } = await openLook({ forcedColors: 'active', colorScheme });
      await expect.poll(() => theme(page)).toBe(colorScheme === 'dark' ? 'dark' : 'sun');
      const [on, off] = ['.foot .button[aria-pressed="true"]', '.foot .button:not([aria-pressed])'];
      expect(await ground(page, on)).not.toBe(await ground(page, off));
      await page.locator(on).first().hover();
      expect(await ground(page, on)).not.toBe(await ground(page, off));
      expect(await ground(page, '.chip[aria-pressed="true"]')).not.toBe(
        await ground(page, '.chip[aria-pressed="false"]'),
      );
      await openStage(page, 'Draw');
      await page.locator('summary', { hasText: 'Levels:' }).click();
      expect(await accessibilityFindings(page)).toEqual([]);
      expectNoTroubles();
      await context.close();
    },
  );
});

describe('where the system asks for less motion', () => {
  /** Returns whether a detector was visible between its old and new position when a button moved it. */
  async function glides(reducedMotion: 'reduce' | 'no-preference'): Promise<boolean> {
    const { page, context } = await openLook({ reducedMotion });
    await page.getByLabel('Detectors on this level').getByRole('button', { name: /^C1/ }).click();
    const way = await page.getByRole('button', { name: /^Move it .* with tape to spare$/ }).elementHandle();
    const seen = await page.evaluate((button) => {
      (button as HTMLElement).click();
      return window.__stillspot?.gliding() ?? false;
    }, way);
    await page.getByRole('heading', { name: 'Clear of what is drawn', exact: true }).waitFor();
    await context.close();
    return seen;
  }

  it('a detector is there at once; else it glides', async () => {
    expect(await glides('reduce')).toBe(false);
    expect(await glides('no-preference')).toBe(true);
  });
});
