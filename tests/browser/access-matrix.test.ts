import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { ACCESS_PAGES } from './access-pages.ts';
import { accessibilityFindings, openPage } from './harness.ts';
import { openSample } from './samples.ts';

const WIDTHS = [320, 390, 768, 1024, 1440] as const;
const THEMES = ['paper', 'sun', 'dark'] as const;
type Theme = (typeof THEMES)[number];

/** `STILLSPOT_AXE=all`: each page at each width in each theme, about 10 minutes; else each page once, with widths and themes in turn. */
const ALL = process.env.STILLSPOT_AXE === 'all';
const HEIGHTS: Readonly<Record<number, number>> = { 320: 640, 390: 844, 768: 1024, 1024: 768, 1440: 900 };

const cases = ACCESS_PAGES.flatMap((shown, index) =>
  (ALL ? WIDTHS : [WIDTHS[index % WIDTHS.length] ?? 1440]).flatMap((width) =>
    (ALL ? THEMES : [THEMES[index % THEMES.length] ?? 'paper']).map((theme) => ({ shown, width, theme })),
  ),
);

describe('axe finds nothing, serious or minor', () => {
  let page: Page;
  beforeAll(async () => {
    page = (await openPage()).page;
    await openSample(page, 'Crowded utility');
    await page.getByRole('heading', { name: 'Blocked', exact: true }).waitFor();
  });
  const look = async (width: number, theme: Theme) => {
    await page.setViewportSize({ width, height: HEIGHTS[width] ?? 900 });
    await page.evaluate((each) => window.__stillspot?.store.getState().setTheme(each), theme);
  };

  it.each(cases)('on $shown.name at $width px in $theme', async ({ shown, width, theme }) => {
    await look(width, theme);
    await shown.show(page);
    expect(await accessibilityFindings(page)).toEqual([]);
    await shown.leave?.(page);
  });
});
