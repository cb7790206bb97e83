import { describe, expect, it } from 'vitest';
import { accessibilityFindings, openPage } from './harness.ts';

describe('the built page', () => {
  it('opens, draws in its own font and prints no error', async () => {
    const { page, expectNoTroubles } = await openPage();
    await expect.poll(() => page.locator('#root').evaluate((root) => root.childElementCount)).toBeGreaterThan(0);
    await expect.poll(() => page.title()).toContain('Stillspot');
    const loaded = await page.evaluate(() =>
      [...document.fonts].filter(({ status }) => status === 'loaded').map(({ family }) => family.replaceAll('"', '')),
    );
    expect(loaded).toContain('Atkinson Hyperlegible Next');
    expectNoTroubles();
  });

  it('has no accessibility finding', async () => {
    const { page } = await openPage();
    await page.locator('#root > *').first().waitFor();
    expect(await accessibilityFindings(page)).toEqual([]);
  });
});
