import type { Page } from 'playwright-core';

/** Opens one of the invented houses by its name, as a user would. */
export async function pickSample(page: Page, name: RegExp): Promise<void> {
  await page.getByRole('banner').getByRole('button', { name: 'Plans' }).click();
  await page.getByRole('button', { name }).click();
}
