import { expect, it } from 'vitest';
import { openPage } from './harness.ts';
import { openStage } from './samples.ts';

it('a part that does not come through says so in its place, and comes when it is asked for again', async () => {
  const { page, context } = await openPage();
  // Parts load only when they are shown: none is tried again by itself before the button is pressed.
  await context.addInitScript(() => {
    window.requestIdleCallback = () => 0;
  });
  await context.route(/assets\/site-panel.*\.js/, (route) => route.abort());
  await page.reload();
  await openStage(page, 'Property');
  await page.getByText('A part of Stillspot did not load. Your plan is unchanged.').waitFor();
  await context.unroute(/assets\/site-panel.*\.js/);
  await page.getByRole('button', { name: 'Try again' }).click();
  await page.getByRole('heading', { name: 'Protocol' }).waitFor();
  await expect.poll(() => page.getByText('did not load').count()).toBe(0);
});
