import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { editorOf } from './editor.ts';
import { openPage } from './harness.ts';
import { openSample, openStage } from './samples.ts';

/** Returns names and marks that extend beyond the button of their stage. */
const overflowing = (page: Page) =>
  page.locator('.stage-bar__name, .stage-bar__mark').evaluateAll((elements) =>
    elements.flatMap((element) => {
      const [inner, outer] = [element.getBoundingClientRect(), element.closest('button')?.getBoundingClientRect()];
      const fits = outer && inner.right <= outer.right && inner.left >= outer.left && inner.bottom <= outer.bottom;
      return fits ? [] : [element.textContent];
    }),
  );

it('at twice the size the stages keep their words to themselves', async () => {
  const { page, expectNoTroubles } = await openPage({ viewport: { width: 720, height: 450 } });
  await openSample(page, 'Plain basement');
  // Every stage with the longest mark that it can have.
  await page.evaluate(() => {
    for (const mark of document.querySelectorAll('.stage-bar__mark')) mark.textContent = 'ready';
  });
  expect(await page.locator('.stage-bar__stage').count()).toBe(8);
  expect(await overflowing(page)).toEqual([]);
  expectNoTroubles();
});

it.each([
  { width: 320, height: 640 },
  { width: 844, height: 390 },
])('no word of a verdict breaks at $width by $height, and a sign alone is as wide as a fingertip', async (viewport) => {
  const { page, expectNoTroubles } = await openPage({ viewport, touch: true });
  await openSample(page, 'Crowded utility');
  const word = page.locator('.side--folded .rail > span').first();
  await expect.poll(() => word.textContent()).toBe('Blocked');
  const lines = () =>
    word.evaluate((element) => {
      const text = document.createRange();
      text.selectNodeContents(element);
      return text.getClientRects().length;
    });
  await expect.poll(lines).toBe(1);
  for (const name of ['− Smaller', '+ Larger']) {
    const box = await page.locator('.foot').getByRole('button', { name }).boundingBox();
    expect(box?.width, name).toBeGreaterThanOrEqual(44);
  }
  expectNoTroubles();
});

it('the state of a new test is read in full on a desk, in the height that it always has', async () => {
  const { page, expectNoTroubles } = await openPage({ viewport: { width: 1440, height: 900 } });
  await editorOf(page);
  const says = page.locator('.test-line__says');
  await expect.poll(() => says.textContent()).toBe('No detector is placed yet.');
  expect(await says.evaluate((each) => each.scrollHeight - each.clientHeight)).toBe(0);
  expect(await says.evaluate((each) => each.scrollWidth - each.clientWidth)).toBe(0);
  const height = () => page.locator('.test-line').evaluate((each) => each.getBoundingClientRect().height);
  const empty = await height();
  await openSample(page, 'Crowded utility');
  await expect.poll(() => says.textContent()).not.toBe('No detector is placed yet.');
  expect(await height()).toBe(empty);
  expectNoTroubles();
});

it('fields of one row stand in line, with a label of two lines or with a trouble below', async () => {
  const { page, expectNoTroubles } = await openPage({ viewport: { width: 1440, height: 900 } });
  await openSample(page, 'Plain basement');
  await openStage(page, 'Time');
  const top = async (label: string) => (await page.getByLabel(label, { exact: true }).first().boundingBox())?.y;
  await page.getByRole('textbox', { name: 'Mitigation system on since' }).waitFor();
  expect(await top('Closed-building conditions since')).toBe(await top('Mitigation system on since'));
  await page.setViewportSize({ width: 820, height: 1180 });
  await openStage(page, 'Log');
  await page.getByLabel('All placed by', { exact: true }).waitFor();
  expect(await top('All sealed')).toBe(await top('All placed by'));
  const serials = page.locator('.log__serial');
  for (const i of [0, 1]) {
    await serials.nth(i).locator('input').fill('SN-001');
    await page.keyboard.press('Enter');
  }
  await page.getByText('A2 has the same serial number. Check the labels again.').first().waitFor();
  const field = await serials.first().locator('input').boundingBox();
  const camera = await serials.first().getByRole('button').boundingBox();
  expect(camera?.y).toBeCloseTo(field?.y ?? Number.NaN, 0);
  expectNoTroubles();
});

it('on a phone the words of the folded verdict column stand in lines, not in columns beside one another', async () => {
  const { page, expectNoTroubles } = await openPage({ viewport: { width: 390, height: 844 }, touch: true });
  await openSample(page, 'Plain basement');
  await page.evaluate(() => window.__stillspot?.store.getState().select(['t1']));
  const rail = page.locator('.side--folded .rail');
  const more = rail.getByText('and dimensions of the selection');
  await more.waitFor();
  const lines = await rail.locator(':scope > span:not(.unseen)').evaluateAll((spans) =>
    spans.map((span) => {
      const text = document.createRange();
      if (span.lastChild) text.selectNodeContents(span.lastChild); // without what only a screen reader is told
      return new Set([...text.getClientRects()].map(({ bottom }) => Math.round(bottom))).size;
    }),
  );
  expect(Math.max(...lines)).toBe(1);
  expect((await rail.boundingBox())?.height).toBeLessThan(60);
  expectNoTroubles();
});

it('the hours of a leaflet stand in line on the quick card, with a trouble below one of them', async () => {
  const { page, expectNoTroubles } = await openPage({ viewport: { width: 390, height: 844 }, touch: true });
  await page.getByRole('button', { name: 'One kit, one room: quick card' }).first().tap();
  const [least, most] = ['Hours at least', 'Hours at most'].map((label) => page.getByLabel(label, { exact: true }));
  if (!least || !most) throw new Error('unreachable');
  await least.fill('two');
  await least.press('Enter');
  await page.getByText('Write a number from 1 to 10000.').waitFor();
  expect((await most.boundingBox())?.y).toBe((await least.boundingBox())?.y);
  expectNoTroubles();
});
