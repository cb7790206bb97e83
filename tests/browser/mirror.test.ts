import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import type { XY } from '../../geometry/plan/model.ts';
import { type Editor, editorOf } from './editor.ts';
import { DESK, freshSample, SUMP, sampleLevel, selectIds } from './hands.ts';
import { drag, type OpenPage, openPage } from './harness.ts';
import { openStage, saved } from './samples.ts';

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
  it('holds every thing of the level, whichever stage is open beside it', async () => {
    const { detectors, rooms, walls, openings, fixtures, objects } = sampleLevel;
    const count = [detectors, rooms, walls, openings, fixtures, objects].reduce((sum, { length }) => sum + length, 0);
    for (const stage of ['Property', 'Place', 'Draw']) {
      await openStage(page, stage);
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
    await expect.poll(() => row().textContent()).toMatch(/ clear of what is drawn$/);
    const [from, to] = [await editor.at(first?.at ?? [0, 0]), await editor.at(besidePit)];
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(to.x, to.y, { steps: 6 });
    await expect.poll(() => row().textContent()).toMatch(/ blocked$/);
    await expect.poll(() => row().getAttribute('data-verdict')).toBe('blocked');
    await page.keyboard.press('Escape');
    await page.mouse.up();
    await expect.poll(() => row().textContent()).toMatch(/ clear of what is drawn$/);
  });
});

describe('a verdict that changes', () => {
  /** Duration of one direction of a drag: shorter than the rest after which anything is announced. */
  const A_DRAG_MS = 150;
  /** Rests longer than any delay, on the clock of the page, which is otherwise stopped. */
  const rest = () => page.clock.runFor(2000);
  /** The second computation ends when its worker does, and requests a frame that only a running clock produces. */
  const at = async (place: XY) => (await Promise.all([editor.at(place), page.clock.runFor(200)]))[0];
  beforeAll(async () => {
    await page.clock.install();
    await page.clock.pauseAt(Date.now() + 60_000);
  });
  /** Starts recording all texts of the live region. */
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
    await rest();
    await listen();
    const from = await at(first?.at ?? [0, 0]);
    const to = await at(besidePit);
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    const verdicts: (string | null)[] = [];
    for (const end of [to, from, to]) {
      await page.mouse.move(end.x, end.y, { steps: 3 });
      await page.clock.runFor(A_DRAG_MS);
      verdicts.push(await row().getAttribute('data-verdict'));
    }
    expect(verdicts).toEqual(['blocked', 'clear-of-drawn', 'blocked']);
    await page.mouse.up();
    await rest();
    const once = (await said()).join(' ');
    expect(once.match(new RegExp(`${first?.label}: `, 'g'))).toHaveLength(1);
    expect(once).toMatch(new RegExp(`${first?.label}: blocked\\. .*sump pit`));
  });

  it('says what is selected, and nothing of a detector that stands as before', async () => {
    await rest();
    await listen();
    await selectIds(editor, [DESK]);
    await rest();
    await drag(page, await at([3500, 2200]), await at([3700, 2400]));
    await rest();
    expect(await said()).toEqual(['Desk is selected.', 'Nothing is selected.']);
    open.expectNoTroubles();
  });

  it('is not answered of verdicts that a reload brings back as they were', async () => {
    await page.clock.resume();
    await saved(page);
    await page.reload();
    await editorOf(page);
    await page
      .locator('.verdict-panel[data-verdict="blocked"], .verdict-panel[data-verdict="clear-of-drawn"]')
      .waitFor();
    await listen();
    await selectIds(editor, [DESK]);
    await rest();
    expect((await said()).join(' ')).not.toMatch(/: (clear|blocked|tight|unknown)\./);
  });
});
