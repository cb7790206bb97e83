import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { someOf } from '../helpers/how-many.ts';
import { STAGES } from './access-pages.ts';
import { openPage } from './harness.ts';
import { openSample, openStage } from './samples.ts';

/** Gives everything a name as long as the file format allows, without a place to break. */
const renameAll = (page: Page) =>
  page.evaluate(() => {
    const name = 'W'.repeat(200);
    const named = <T extends object>(items: readonly T[]) => items.map((item) => ({ ...item, name }));
    window.__stillspot?.store.getState().run((plan) => ({
      ...plan,
      title: name,
      site: { ...plan.site, label: name },
      levels: plan.levels.map((level) => ({
        ...level,
        name,
        rooms: named(level.rooms),
        fixtures: named(level.fixtures),
        objects: named(level.objects),
        detectors: level.detectors.map((detector) => ({ ...detector, label: name })),
      })),
    }));
    window.__stillspot?.store.setState({ selection: ['d1'] });
  });

const SAMPLE = 'Finch Lane, basement';

/** Returns how much wider than the screen the page and its scrolling parts are, CSS px. */
const excess = (page: Page) =>
  page.evaluate(() => {
    const scrolls = (element: Element) => /auto|scroll/.test(getComputedStyle(element).overflowX);
    const all = [document.documentElement, ...[...document.querySelectorAll('.page *')].filter(scrolls)];
    return Math.max(...all.map(({ scrollWidth, clientWidth }) => scrollWidth - clientWidth));
  });

describe('names of two hundred letters', () => {
  it.each(someOf([390, 820, 1440], 1))('do not make any page wider than the screen at %d px', async (width) => {
    const { page } = await openPage({ viewport: { width, height: 900 } });
    await openSample(page, 'Plain basement');
    await expect.poll(() => page.evaluate(() => window.__stillspot?.store.getState().plan.title)).toBe(SAMPLE);
    await renameAll(page);
    for (const stage of STAGES) {
      await openStage(page, stage);
      await expect.poll(() => excess(page)).toBeLessThanOrEqual(1);
    }
  });
});
