import { expect, it } from 'vitest';
import { editorOf } from './editor.ts';
import { sample } from './hands.ts';
import { openPage } from './harness.ts';
import { broughtIntoView, pressedShift } from './pressed.ts';
import { openStage } from './samples.ts';

/** Opening one question closes another: from the foot of a short column what is above and below it changes at once. */
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
  // Else nothing was tried.
  expect(scrolls).toBeGreaterThan(0);
  expectNoTroubles();
});
