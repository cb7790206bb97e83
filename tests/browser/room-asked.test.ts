import { beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { buildLevel } from '../../geometry/level/build-level.ts';
import type { XY } from '../../geometry/plan/model.ts';
import { type Editor, editorOf } from './editor.ts';
import { sample, sampleLevel } from './hands.ts';
import { type OpenPage, openPage, settled } from './harness.ts';

/** A level with nothing where the name of a room is shown. */
const bare = { ...sampleLevel, rooms: [], fixtures: [], objects: [], detectors: [] };
const unnamed = { ...sample, levels: [bare] };
const [FIRST, SECOND] = buildLevel(bare).rooms.map(({ labelPoint }) => labelPoint);
if (!FIRST || !SECOND) throw new Error('the sample has two rooms');

/** On a narrow stage the box is over the lower part of the plan, where the finger may still be. */
describe('the question what a room is used for, on a tablet held upright', () => {
  let open: OpenPage;
  let editor: Editor;
  const box = () => open.page.getByRole('region', { name: /used for/ });
  const tap = async (point: XY) => {
    const { x, y } = await editor.at(point);
    await open.page.touchscreen.tap(x, y);
    await box().waitFor();
    await settled(open.page);
  };
  const view = () =>
    open.page.evaluate(() => {
      const { viewport, wholeInView } = window.__stillspot?.store.getState() ?? {};
      return { viewport, wholeInView };
    });

  beforeAll(async () => {
    open = await openPage({ viewport: { width: 820, height: 1180 }, touch: true });
    editor = await editorOf(open.page);
  });
  beforeEach(() => open.page.evaluate((plan) => window.__stillspot?.store.getState().openPlan(plan), unnamed));

  it('is asked by a tap that answers nothing, wherever the answers come to lie', async () => {
    // The box has been loaded: from now on it opens immediately.
    await tap(FIRST);
    await box().getByRole('button', { name: 'Not now' }).tap();
    for (const at of [0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85]) {
      await open.page.evaluate(
        ({ share, room: [, y] }) => {
          const { viewport, stageSize, setViewport } = window.__stillspot?.store.getState() ?? {};
          if (viewport && stageSize) setViewport?.({ ...viewport, y: stageSize.height * share - y * viewport.scale });
        },
        { share: at, room: FIRST },
      );
      await tap(FIRST);
      expect((await editor.level()).rooms, `at ${at}`).toEqual([]);
      await box().getByRole('button', { name: 'Not now' }).tap();
      await box().waitFor({ state: 'detached' });
    }
  });

  it('moves the room into sight, and once all are named the plan lies as before', async () => {
    const before = await view();
    expect(before.wholeInView).toBe(true);
    await tap(FIRST);
    expect(await view()).not.toEqual(before);
    await box().getByRole('button', { name: 'Family room' }).tap();
    await expect.poll(async () => (await editor.level()).rooms.length).toBe(1);
    await box().getByRole('button', { name: 'Utility room' }).tap();
    await box().waitFor({ state: 'detached' });
    await expect.poll(view).toEqual(before);
  });

  it('leaves a view that was moved meanwhile where it is', async () => {
    await tap(SECOND);
    await open.page.evaluate(() => window.__stillspot?.store.getState().zoomBy(1.5));
    const moved = await view();
    await box().getByRole('button', { name: 'Not now' }).tap();
    await box().waitFor({ state: 'detached' });
    await settled(open.page);
    expect(await view()).toEqual(moved);
    open.expectNoTroubles();
  });
});
