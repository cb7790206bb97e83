import { readFileSync } from 'node:fs';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Plan } from '../../geometry/plan/model.ts';
import { type Editor, editorOf } from './editor.ts';
import { type OpenPage, openPage } from './harness.ts';

const sample = JSON.parse(readFileSync('samples/01-plain-basement.plan.json', 'utf8')) as Plan;

describe('the sheet by keyboard alone', () => {
  let open: OpenPage;
  let editor: Editor;
  const keys = async (...pressed: readonly string[]) => {
    for (const key of pressed) await open.page.keyboard.press(key);
  };
  const times = async (key: string, count: number) => keys(...Array.from({ length: count }, () => key));
  const detectors = async () => (await editor.level()).detectors;

  beforeAll(async () => {
    open = await openPage();
    editor = await editorOf(open.page);
    await open.page.evaluate((plan) => {
      const state = window.__stillspot?.store.getState();
      state?.openPlan({ ...plan, levels: plan.levels.map((level) => ({ ...level, detectors: [] })), readings: [] });
    }, sample);
  });

  it('sets a detector down on the white', async () => {
    await keys('8', '1'); // Where could it be placed? A detector.
    await keys('ArrowRight', 'ArrowLeft', 'Enter');
    await expect.poll(() => detectors()).toHaveLength(1);
    expect(['clear-of-drawn', 'tight']).toContain(await editor.verdict());
    await expect.poll(() => editor.selection()).toEqual(['d1']);
  });

  it('moves it by an inch, an eighth and a foot', async () => {
    const [x, y] = await editor.detectorAt();
    await keys('ArrowRight');
    await expect.poll(async () => (await editor.detectorAt())[0]).toBeCloseTo(x + 25.4, 4);
    await keys('Shift+ArrowDown');
    await expect.poll(async () => (await editor.detectorAt())[1]).toBeCloseTo(y + 3.175, 4);
    await keys('Control+ArrowLeft');
    await expect.poll(async () => (await editor.detectorAt())[0]).toBeCloseTo(x + 25.4 - 304.8, 4);
  });

  it('an arrow that is held down is one step of history', async () => {
    const steps = await editor.steps();
    const [x] = await editor.detectorAt();
    await open.page.keyboard.down('ArrowRight');
    for (let i = 0; i < 5; i++) await open.page.keyboard.down('ArrowRight');
    await open.page.keyboard.up('ArrowRight');
    await expect.poll(async () => (await editor.detectorAt())[0]).toBeCloseTo(x + 6 * 25.4, 4);
    await expect.poll(() => editor.steps()).toBe(steps + 1);
    await keys('Control+z');
    await expect.poll(async () => (await editor.detectorAt())[0]).toBeCloseTo(x, 4);
  });

  it('M moves it with the cross: evaluated on the way, set by Enter', async () => {
    const steps = await editor.steps();
    const [x, y] = await editor.detectorAt();
    await keys('m');
    await times('Control+ArrowRight', 3);
    await times('ArrowDown', 2);
    const draggedDetector = await open.page.evaluate(() => window.__stillspot?.store.getState().draggedDetector?.at);
    expect(draggedDetector?.[0]).toBeCloseTo(x + 3 * 304.8, -2);
    await expect.poll(() => editor.detectorAt()).toEqual([x, y]);
    await keys('Enter');
    await expect.poll(() => editor.detectorAt()).not.toEqual([x, y]);
    await expect.poll(() => editor.steps()).toBe(steps + 1);
  });

  it('a thing put back in mid-run keeps the walls that were drawn; a step back in mid-move is the move', async () => {
    const { walls } = await editor.level();
    await open.page.evaluate(() => window.__stillspot?.store.getState().setTool({ kind: 'wall' }));
    await editor.press(4000, 3000);
    await editor.press(4000, 3600);
    await open.page.evaluate(() => window.__stillspot?.store.getState().setTool({ kind: 'select' }));
    await expect.poll(async () => (await editor.level()).walls).toHaveLength(walls.length + 1);
    await keys('Control+z');
    await expect.poll(async () => (await editor.level()).walls).toEqual(walls);
    await open.page.evaluate(() => window.__stillspot?.store.getState().select(['d1']));
    const steps = await editor.steps();
    await keys('m', 'Control+ArrowUp', 'Control+z');
    await expect.poll(() => editor.steps()).toBe(steps);
    await expect.poll(() => open.page.evaluate(() => window.__stillspot?.store.getState().tool.kind)).toBe('select');
  });

  it('Escape puts the move back', async () => {
    const stood = await editor.detectorAt();
    await keys('m');
    await times('Control+ArrowUp', 4);
    await keys('Escape');
    await expect.poll(() => editor.detectorAt()).toEqual(stood);
    await expect.poll(() => open.page.evaluate(() => window.__stillspot?.store.getState().draggedDetector)).toBeNull();
  });

  it('draws a room, opens it, names it and furnishes it', async () => {
    await open.page.evaluate(() => window.__stillspot?.store.getState().newPlan());
    await keys('1', '1'); // Four walls; the crosshair is in the middle.
    await times('Control+ArrowLeft', 10);
    await times('Control+ArrowUp', 8);
    await keys('Enter');
    await times('Control+ArrowRight', 20);
    await times('Control+ArrowDown', 15);
    await keys('Enter');
    const drawn = await editor.level();
    expect(drawn.walls).toHaveLength(4);
    const [, right] = drawn.walls;
    // 15 ft inside and 8 in walls.
    expect(Math.abs((right?.to[1] ?? 0) - (right?.from[1] ?? 0))).toBeCloseTo(15 * 304.8 + 203.2, 3);

    await keys('Escape', '2', '2'); // A window: from the last corner up to the top wall, where the crosshair stops.
    await times('Control+ArrowLeft', 10);
    await times('Control+ArrowUp', 16);
    await keys('Enter', 'Escape');
    await expect.poll(async () => (await editor.level()).openings).toHaveLength(1);

    await keys('3', '1'); // A family room: down from the wall.
    await times('Control+ArrowDown', 8);
    await keys('Enter');
    await keys('6', '1'); // A sump pit, to the left.
    await times('Control+ArrowLeft', 8);
    await keys('Enter');
    const level = await editor.level();
    expect(level.rooms.map(({ use }) => use)).toEqual(['family-room']);
    expect(level.fixtures.map(({ kind }) => kind)).toEqual(['sump-pit']);
  });

  it('N goes round everything on the level, R turns, Ctrl+D copies, Delete takes away', async () => {
    await open.page.evaluate((plan) => window.__stillspot?.store.getState().openPlan(plan), sample);
    const level = await editor.level();
    await keys('n');
    await expect.poll(() => editor.selection()).toEqual([level.detectors[0]?.id]);
    await keys('Shift+N');
    await expect.poll(() => editor.selection()).toEqual([level.walls.at(-1)?.id]);
    await open.page.evaluate((id) => window.__stillspot?.store.getState().select([id]), level.objects[0]?.id ?? '');
    await keys('r', 'Control+d');
    // The part of the app that copies is loaded by the first copy.
    await expect.poll(async () => (await editor.level()).objects).toHaveLength(level.objects.length + 1);
    await keys('Delete');
    await expect.poll(async () => (await editor.level()).objects).toHaveLength(level.objects.length);
    await keys('Control+z', 'Control+z', 'Control+z');
    await expect.poll(async () => (await editor.level()).objects).toEqual(level.objects);
    open.expectNoTroubles();
  });
});
