import { readdirSync } from 'node:fs';
import { join } from 'node:path';
import type { BrowserContext, Page } from 'playwright-core';
import { beforeAll, describe, expect, inject, it } from 'vitest';
import { howMany } from '../helpers/how-many.ts';
import { STAGES } from './access-pages.ts';
import { openPage } from './harness.ts';
import { pickSample, saved, stageButton } from './samples.ts';

/** Scripts and styles of the app, without the samples; fonts are tested in `faults.test.ts`. */
const PARTS = readdirSync(join(inject('siteFolder'), 'assets'))
  .filter((name) => /\.(js|css)$/.test(name) && !name.includes('.plan-'))
  .sort();
/** The usual run tests one part in so many, others whenever the number of parts changes. */
const EVERY = howMany(60, 1);

const title = (page: Page) => page.getByRole('banner').getByLabel('Title of the plan');

let page: Page;
let context: BrowserContext;
beforeAll(async () => {
  ({ page, context } = await openPage());
  await pickSample(page, /^Plain basement/);
  await saved(page);
});

describe('a part of the app that is not there', () => {
  it.each(PARTS.filter((_, i) => i % EVERY === PARTS.length % EVERY))(
    '%s: the rest works, or words say why not',
    async (part) => {
      const pattern = `**/assets/${part}`;
      await context.route(pattern, (route) => route.fulfill({ status: 404, body: 'not found' }));
      try {
        await page.goto(inject('siteUrl'), { waitUntil: 'commit' });
        const notStarted = page.getByText(/^Stillspot has not started\./);
        await title(page).or(notStarted).first().waitFor();
        if ((await notStarted.count()) > 0) {
          await page.getByRole('button', { name: 'Load again' }).waitFor();
          return;
        }
        // The plan is shown again. The test hook is not used, because it loads with the sheet.
        await expect.poll(() => title(page).inputValue()).not.toBe('');
        for (const stage of STAGES) {
          await stageButton(page, stage).click();
          await page.locator('.stage-bar [aria-current="page"]', { hasText: stage }).waitFor();
          // Its page, or the message that a part of it did not load.
          const shown = page.getByRole('heading', { name: stage, exact: true });
          const missing = page.getByText('A part of Stillspot did not load');
          await shown.or(missing).filter({ visible: true }).first().waitFor();
        }
        await title(page).fill(`Without ${part}`);
        await title(page).press('Enter');
        await saved(page);
        // No fault of one part has broken the whole page.
        expect(await page.locator('main.broken').count()).toBe(0);
      } finally {
        await context.unroute(pattern);
      }
      await page.reload();
      await expect.poll(() => title(page).inputValue()).toBe(`Without ${part}`);
    },
  );
});
