import { expect, it } from 'vitest';
import { openPage } from './harness.ts';
import { openStage } from './samples.ts';

it('a part that does not come through says so in its place, and comes when it is asked for again', async () => {
  const { page, context } = await openPage();
  await context.route(/assets\/site-panel.*\.js/, (route) => route.abort());
  await page.reload();
  await openStage(page, 'Site');
  await page.getByText('A part of Stillspot did not come through. Your plan is not touched.').waitFor();
  await context.unroute(/assets\/site-panel.*\.js/);
  await page.getByRole('button', { name: 'Try again' }).click();
  await page.getByRole('heading', { name: 'Rules that are kept' }).waitFor();
  await expect.poll(() => page.getByText('did not come through').count()).toBe(0);
});
