import { expect, it } from 'vitest';
import { editorOf } from './editor.ts';
import { sample } from './hands.ts';
import { openPage, settled } from './harness.ts';
import { broughtIntoView, pressedShift } from './pressed.ts';
import { openStage } from './samples.ts';

/** Opening one question closes another: at the bottom of a short column, the content above and below it changes at the same time. */
it('a question that is pressed stays under the finger, wherever the column was scrolled to', async () => {
  const { page, expectNoTroubles } = await openPage({ viewport: { width: 1024, height: 768 }, touch: true });
  await editorOf(page);
  await page.evaluate((plan) => window.__stillspot?.store.getState().openPlan(plan), sample);
  await openStage(page, 'Draw');
  const panel = page.getByRole('button', { name: 'Draw panel' });
  if (await panel.isVisible()) await panel.tap();
  const asked = [
    'What closes the room?',
    'What opens it?',
    'What heats?',
    'What is wet or open to the soil?',
    'What moves air?',
    'What stands here?',
    'What closes the room?',
    'What stands here?',
  ];
  let scrolls = 0;
  for (const name of asked) {
    const question = page.getByRole('button', { name, exact: true });
    if (await broughtIntoView(page, question)) scrolls += 1;
    expect(await pressedShift(page, question, () => question.tap()), name).toBe(0);
  }
  // Without scrolling nothing would have been tested.
  expect(scrolls).toBeGreaterThan(0);
  expectNoTroubles();
});

it('a stage opens at its top, or where it was left', async () => {
  const { page, expectNoTroubles } = await openPage({ viewport: { width: 1440, height: 700 } });
  await editorOf(page);
  await page.evaluate((plan) => window.__stillspot?.store.getState().openPlan(plan), sample);
  const scrolled = () => page.evaluate(() => document.querySelector('.job')?.scrollTop);
  const scrollTo = async (top: number) => {
    await page.evaluate((to) => document.querySelector('.job')?.scrollTo(0, to), top);
    await expect.poll(scrolled).toBe(top);
    await settled(page);
  };
  await openStage(page, 'Draw');
  await scrollTo(200);
  await openStage(page, 'Place');
  await expect.poll(scrolled).toBe(0);
  await scrollTo(150);
  await openStage(page, 'Property');
  await expect.poll(scrolled).toBe(0);
  await openStage(page, 'Draw');
  await expect.poll(scrolled).toBe(200);
  await openStage(page, 'Place');
  await expect.poll(scrolled).toBe(150);
  expectNoTroubles();
});

it('the space above what was pressed goes with the next press on the plan', async () => {
  const { page, expectNoTroubles } = await openPage({ viewport: { width: 820, height: 1180 }, touch: true });
  await editorOf(page);
  await page.evaluate((plan) => window.__stillspot?.store.getState().openPlan(plan), sample);
  await openStage(page, 'Draw');
  const question = (name: string) => page.getByRole('button', { name, exact: true });
  const space = () =>
    page.evaluate(() => {
      const head = document.querySelector('.job__head');
      return head && Number.parseFloat(getComputedStyle(head).marginBottom);
    });
  if ((await question('What closes the room?').getAttribute('aria-expanded')) !== 'true')
    await question('What closes the room?').tap();
  expect(await pressedShift(page, question('What opens it?'), () => question('What opens it?').tap())).toBe(0);
  expect(await space()).toBeGreaterThan(100);
  await page.touchscreen.tap(700, 900);
  await expect.poll(space).toBe(0);
  expect(await question('What opens it?').getAttribute('aria-expanded')).toBe('true');
  expectNoTroubles();
});
