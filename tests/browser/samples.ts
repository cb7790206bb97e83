import type { Locator, Page } from 'playwright-core';
import { expect } from 'vitest';
import { SAMPLE_NAMES, sampleText } from '../helpers/sample-files.ts';
import { type OpenPage, openPage, type PageOptions, partsThere } from './harness.ts';

/** Opens one of the invented houses by its name, as a user would. */
export async function pickSample(page: Page, name: RegExp): Promise<void> {
  await page.getByRole('banner').getByRole('button', { name: 'Plans' }).click();
  await page.getByRole('button', { name }).click();
}

/** Opens one of the invented houses as a file, because Plans draws the pictures of all of them, which takes as long as opening the page. */
export async function openSample(page: Page, name: string): Promise<void> {
  const sample = SAMPLE_NAMES.find((each) => each.endsWith(name.toLowerCase().replaceAll(' ', '-'))) ?? name;
  const file = { name: `${sample}.plan.json`, mimeType: 'application/json', buffer: Buffer.from(sampleText(sample)) };
  await page.getByLabel('Plan file to open').setInputFiles(file);
  await page.getByText(`${file.name} is open.`).first().waitFor();
}

/** Waits until the last change is in the store. */
export const saved = (page: Page): Promise<void> => page.locator('.saved', { hasText: /^saved / }).waitFor();

/** Removes washer and dryer from the level: within 10 ft of them a detector is blocked, whatever else is not known of its room. */
export const takeMachinesAway = (page: Page): Promise<void> =>
  page.evaluate(() => {
    const stays = ({ kind }: { readonly kind: string }) => kind !== 'washer' && kind !== 'dryer';
    window.__stillspot?.store.getState().run((plan) => ({
      ...plan,
      levels: plan.levels.map((level) => ({ ...level, fixtures: level.fixtures.filter(stays) })),
    }));
  });

/** Waits until the browser has stored a setting: leaving the page immediately after the choice could prevent that. */
export async function keptSetting(page: Page, name: string, value: unknown): Promise<void> {
  const kept = () =>
    page.evaluate(
      (key) =>
        new Promise((done, failed) => {
          const opening = indexedDB.open('stillspot-shelf');
          opening.onerror = () => failed(opening.error);
          opening.onsuccess = () => {
            const asked = opening.result.transaction('settings').objectStore('settings').get(key);
            asked.onerror = () => failed(asked.error);
            asked.onsuccess = () => {
              opening.result.close();
              done(asked.result);
            };
          };
        }),
      name,
    );
  await expect.poll(kept).toEqual(value);
}

/** Opens the house with a pair of detectors, saved in the library, on its own page. On a small page the job is folded then. */
export async function openPair(options: PageOptions = {}): Promise<OpenPage> {
  const open = await openPage(options);
  await openSample(open.page, 'Plain basement');
  await saved(open.page);
  return open;
}

/** Returns the button of a stage in the bar. */
export const stageButton = (page: Page, name: string): Locator =>
  page.getByRole('navigation', { name: 'Stages of the test' }).getByRole('button', { name, exact: true });

/** Opens a stage by its button in the bar. */
export async function openStage(page: Page, name: string): Promise<void> {
  await stageButton(page, name).click();
  await page.locator('.stage-bar [aria-current="page"]', { hasText: name }).waitFor();
  await partsThere(page);
}
