import { expect, it } from 'vitest';
import { editorOf } from './editor.ts';
import { sample } from './hands.ts';
import { openPage, settled } from './harness.ts';
import { broughtIntoView, pressedShift } from './pressed.ts';
import { openStage } from './samples.ts';

/** Opening one question closes another: from the foot of a short column what is above and below it changes at once. */
it('a question that is pressed stays under the finger, unless what it opens would be below the edge', async () => {
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
  let brought = 0;
  /** How far below the edge of the column what the open question holds ends, and how far below its heading it begins, px. */
  const opened = () =>
    page.evaluate(() => {
      const item = document.querySelector('#stage-draw .question[data-open]')?.getBoundingClientRect();
      const [pane, head] = [document.querySelector('.job'), document.querySelector('.job__head')].map((each) =>
        each?.getBoundingClientRect(),
      );
      if (!pane || !head) throw new Error('the column is folded');
      // A press on the open one closes it.
      if (!item) return { below: 0, under: 0 };
      return { below: item.bottom - pane.bottom, under: item.top - head.bottom };
    });
  for (const name of asked) {
    const question = page.getByRole('button', { name, exact: true });
    if (await broughtIntoView(page, question)) scrolls += 1;
    const shift = await pressedShift(page, question, () => question.tap());
    // What comes late, as the answer "none here", is brought in too.
    await expect
      .poll(async () => {
        const { below, under } = await opened();
        return below < 1 || under < 1;
      })
      .toBe(true);
    const { below, under } = await opened();
    // No farther than that takes.
    if (shift > 0) expect(below > -2 || under < 1, `${name}: ${shift} px`).toBe(true);
    if (shift > 0) brought += 1;
  }
  // Else nothing was tried.
  expect(scrolls).toBeGreaterThan(0);
  expect(brought).toBeGreaterThan(0);
  expect(brought).toBeLessThan(asked.length / 2);
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
