import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import type { XY } from '../../geometry/plan/model.ts';
import { type Editor, editorOf } from './editor.ts';
import { freshSample, SUMP, sampleLevel, selectIds } from './hands.ts';
import { announcerReady, drag, type OpenPage, openPage, settled } from './harness.ts';
import { openStage } from './samples.ts';

let open: OpenPage;
let page: Page;
let editor: Editor;

beforeAll(async () => {
  open = await openPage();
  page = open.page;
  editor = await editorOf(page);
  await freshSample(editor);
});

const focused = () => page.evaluate(() => document.activeElement?.id ?? '');
const said = () => page.locator('#announcer').textContent();
const keys = async (...pressed: readonly string[]) => {
  for (const key of pressed) await page.keyboard.press(key);
};
/** Returns how much of the walls' extent is on the stage, px. */
const inView = () =>
  page.evaluate(() => {
    const state = window.__stillspot?.store.getState();
    const walls = state?.plan.levels[0]?.walls ?? [];
    const { viewport, stageSize } = state ?? { viewport: { scale: 1, x: 0, y: 0 }, stageSize: { width: 0, height: 0 } };
    const xs = walls.flatMap(({ from, to }) => [from[0], to[0]].map((x) => x * viewport.scale + viewport.x));
    const ys = walls.flatMap(({ from, to }) => [from[1], to[1]].map((y) => y * viewport.scale + viewport.y));
    const part = (values: number[], size: number) =>
      Math.min(size, Math.max(...values)) - Math.max(0, Math.min(...values));
    return Math.min(part(xs, stageSize.width), part(ys, stageSize.height));
  });

/** Chooses the detector tool and places a detector at the crosshair, which an arrow key and its opposite show at its last position. */
async function placeAtCross(): Promise<void> {
  await page.evaluate(() => window.__stillspot?.store.getState().setTool({ kind: 'detector' }));
  await settled(page);
  await keys('ArrowRight', 'ArrowLeft', 'Enter');
}

describe('the plan by keyboard', () => {
  it('is reached by the first stop of the page, and shows its cross at once', async () => {
    await page.reload();
    await editorOf(page);
    await announcerReady(page);
    await keys('Tab');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('To the plan');
    await keys('Enter');
    expect(await focused()).toBe('sheet-of-plan');
    await expect.poll(said).toMatch(/^Enter (selects|lists)/);
  });

  it('the cross keeps its place after an act, an undo, another stage and another level', async () => {
    await keys('Escape', 'Control+ArrowRight', 'Control+ArrowRight', 'ArrowDown');
    const place = async () => (await said())?.trim();
    await placeAtCross();
    await expect.poll(async () => (await editor.level()).detectors.length).toBe(3);
    const { at } = (await editor.level()).detectors.at(-1) ?? { at: [0, 0] as XY };
    await keys('Escape', 'Control+z');
    await expect.poll(async () => (await editor.level()).detectors.length).toBe(2);
    await openStage(page, 'Time');
    await openStage(page, 'Place');
    await page.evaluate(() => document.getElementById('sheet-of-plan')?.focus());
    await placeAtCross();
    await expect.poll(async () => (await editor.level()).detectors.length).toBe(3);
    expect((await editor.level()).detectors.at(-1)?.at).toEqual(at);
    expect(await place()).toBeDefined();
    await keys('Escape', 'Control+z', 'Escape');
  });

  it('Enter selects what is at the cross, then lists what can be done with it', async () => {
    await keys('Escape');
    const sump = sampleLevel.fixtures.find(({ id }) => id === SUMP);
    await selectIds(editor, [SUMP]);
    await keys('m', 'Escape'); // The crosshair is on the pit now.
    await selectIds(editor, []);
    await expect.poll(said).toMatch(/Enter selects (the )?sump pit/i);
    await keys('Enter');
    await expect.poll(() => editor.selection()).toEqual([sump?.id]);
    await keys('Enter');
    await page.getByRole('menu').waitFor();
    await keys('Escape');
    await page.getByRole('menu').waitFor({ state: 'detached' });
    expect(await focused()).toBe('sheet-of-plan');
  });

  it('no arrow, wheel or drag takes the plan off its stage', async () => {
    await freshSample(editor);
    for (const key of ['Control+ArrowRight', 'Control+ArrowDown', 'Control+ArrowLeft', 'Control+ArrowUp']) {
      for (let press = 0; press < 30; press++) await keys(key);
      expect(await inView(), key).toBeGreaterThanOrEqual(50);
    }
    const middle = await editor.at([4000, 3000]);
    await page.mouse.move(middle.x, middle.y);
    for (let turn = 0; turn < 20; turn++) await page.mouse.wheel(400, 400);
    await settled(page);
    expect(await inView(), 'wheel').toBeGreaterThanOrEqual(20);
  });
});

describe('handles of a small thing with the whole level in view', () => {
  it('are 24 px apart with a leader, and the one that is pulled changes the thing as far as the pointer goes', async () => {
    await freshSample(editor);
    await keys('0');
    const small = sampleLevel.fixtures.find(
      ({ shape }) => 'box' in shape && Math.min(shape.box.width, shape.box.depth) < 200,
    );
    if (!small || !('box' in small.shape)) throw new Error('the sample has no small box');
    await selectIds(editor, [small.id]);
    await settled(page);
    const { scale } = await page.evaluate(
      () => window.__stillspot?.store.getState().viewport ?? { scale: 1, x: 0, y: 0 },
    );
    const { center, width, depth } = small.shape.box;
    const at = await editor.at(center);
    // The place of the lower right handle: beside its corner, so that its neighbors are 24 px away.
    const px = (side: number) => Math.max(side * scale, 24) / 2;
    const handle = { x: at.x + px(width), y: at.y + px(depth) };
    await drag(page, handle, { x: handle.x + 40, y: handle.y });
    const after = (await editor.level()).fixtures.find(({ id }) => id === small.id);
    if (!after || !('box' in after.shape)) throw new Error('the thing is gone');
    expect(after.shape.box.width).toBeGreaterThan(width + 20 / scale);
    expect(after.shape.box.width).toBeLessThan(width + 60 / scale);
    await keys('Control+z');
    open.expectNoTroubles();
  });
});
