import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import type { XY } from '../../geometry/plan/model.ts';
import { type Editor, editorOf } from './editor.ts';
import { DESK, freshSample, SUMP, sampleLevel, selectIds } from './hands.ts';
import { drag, type OpenPage, openPage } from './harness.ts';

let open: OpenPage;
let page: Page;
let editor: Editor;

beforeAll(async () => {
  open = await openPage();
  page = open.page;
  editor = await editorOf(page);
  await freshSample(editor);
  await page.getByText('Everything on this level').click();
});

const list = () => page.locator('.all-items');
const pressed = () => list().locator('[aria-pressed="true"] > span:first-child').allTextContents();
const [first] = sampleLevel.detectors;
const row = () => list().getByLabel('Detectors', { exact: true }).getByRole('button').first();
const pit = sampleLevel.fixtures.find(({ id }) => id === SUMP);
const besidePit: XY =
  pit && 'circle' in pit.shape ? [pit.shape.circle.center[0] + 500, pit.shape.circle.center[1]] : [0, 0];

describe('the list beside the sheet', () => {
  it('holds every thing of the level, whichever stage is open', async () => {
    const { detectors, rooms, walls, openings, fixtures, objects } = sampleLevel;
    const count = [detectors, rooms, walls, openings, fixtures, objects].reduce((sum, { length }) => sum + length, 0);
    for (const stage of ['Site', 'Place', 'Sheet', 'Draw']) {
      await page.getByRole('button', { name: stage, exact: true }).click();
      await expect.poll(() => list().getByRole('button').count()).toBe(count);
    }
  });

  it('shows what is selected on the sheet, one or several, and selects on it', async () => {
    await editor.press(...(first?.at ?? [0, 0]));
    await expect.poll(() => pressed()).toEqual([first?.label]);
    await selectIds(editor, [SUMP, DESK]);
    await expect.poll(() => pressed()).toEqual(['Sump pit', 'Desk']);
    await page.keyboard.press('Escape');
    await expect.poll(() => pressed()).toEqual([]);
    await list()
      .getByRole('button', { name: /^Sump pit/ })
      .press('Enter');
    await expect.poll(() => editor.selection()).toEqual([SUMP]);
  });

  it('shows each verdict in words, and follows while the detector is dragged', async () => {
    await expect.poll(() => row().textContent()).toMatch(/ clear$/);
    const [from, to] = [await editor.at(first?.at ?? [0, 0]), await editor.at(besidePit)];
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(to.x, to.y, { steps: 6 });
    await expect.poll(() => row().textContent()).toMatch(/ blocked$/);
    await expect.poll(() => row().getAttribute('data-verdict')).toBe('blocked');
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await expect.poll(() => row().textContent()).toMatch(/ clear$/);
  });
});

describe('a verdict that changes', () => {
  /** Everything that the live region comes to say. */
  const listen = () =>
    page.evaluate(() => {
      const said: string[] = [];
      const region = document.querySelector('output[aria-live]');
      if (region)
        new MutationObserver(() => said.push(region.textContent ?? '')).observe(region, {
          childList: true,
          characterData: true,
          subtree: true,
        });
      (window as unknown as { said: string[] }).said = said;
    });
  const said = () => page.evaluate(() => (window as unknown as { said: string[] }).said);

  it('is told once, when the hand rests, however often it changed on the way', async () => {
    await freshSample(editor);
    await page.waitForTimeout(700);
    await listen();
    const from = await editor.at(first?.at ?? [0, 0]);
    const to = await editor.at(besidePit);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    for (const end of [to, from, to]) await page.mouse.move(end.x, end.y, { steps: 3 });
    await page.mouse.up();
    await expect.poll(said).toHaveLength(1);
    await page.waitForTimeout(700);
    const [once, ...more] = await said();
    expect(more).toEqual([]);
    expect(once?.match(new RegExp(`${first?.label}: `, 'g'))).toHaveLength(1);
    expect(once).toMatch(new RegExp(`${first?.label}: blocked\\. .*sump pit`));
  });

  it('says nothing while nothing changes, and nothing of a detector that stands as before', async () => {
    await page.waitForTimeout(700);
    await listen();
    await selectIds(editor, [DESK]);
    await drag(page, await editor.at([3500, 2200]), await editor.at([3700, 2400]));
    await page.waitForTimeout(700);
    await expect.poll(() => said()).toEqual([]);
    open.expectNoTroubles();
  });

  it('is not told of verdicts that a reload brings back as they were', async () => {
    await page.waitForTimeout(1200);
    await page.reload();
    await editorOf(page);
    await page.locator('.slip[data-verdict="blocked"], .slip[data-verdict="clear"]').waitFor();
    await listen();
    await selectIds(editor, [DESK]);
    await page.waitForTimeout(800);
    await expect.poll(async () => (await said()).join(' ')).not.toMatch(/: (clear|blocked|tight|unknown)\./);
  });
});
