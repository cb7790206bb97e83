import { beforeAll, describe, expect, it } from 'vitest';
import type { Level } from '../../geometry/plan/model.ts';
import { type Editor, editorOf } from './editor.ts';
import { type OpenPage, openPage } from './harness.ts';

/** A basement drawn from nothing, step by step on one page: each test continues where the last one ended. */
describe('a basement drawn by mouse', () => {
  let open: OpenPage;
  let editor: Editor;

  beforeAll(async () => {
    open = await openPage();
    editor = await editorOf(open.page);
  });

  const lengths = (level: Level) =>
    level.walls.map(({ from, to }) => Math.round(Math.hypot(to[0] - from[0], to[1] - from[1])));

  it('a rectangular room in one drag is as large inside as it was drawn', async () => {
    await editor.take('What closes the room?', 'Four walls in one drag');
    // 30 ft by 20 ft, a whole number of inches apart.
    await editor.pull([1016, 1016], [10160, 7112]);
    const level = await editor.level();
    expect(level.walls).toHaveLength(4);
    // 8 in walls: half of one at each end beyond the inside length.
    expect(lengths(level)).toEqual([9347, 6299, 9347, 6299]);
    await expect.poll(() => editor.message()).toContain('closed');
    await expect.poll(() => editor.steps()).toBe(1);
  });

  it('a wall after wall ends on the wall that it reaches, upright though the hand was not', async () => {
    await editor.take('What closes the room?', 'Wall after wall');
    await editor.press(7000, 920);
    await editor.press(7060, 7200);
    const [, , , , partition] = (await editor.level()).walls;
    expect(partition?.from[0]).toBe(partition?.to[0]);
    expect(partition?.from[1]).toBe(914.4);
    expect(partition?.to[1]).toBe(7213.6);
    expect(partition?.thickness).toBe(114.3);
    await expect.poll(() => editor.steps()).toBe(2);
  });

  it('a typed length takes effect', async () => {
    // After a wall that closed a room, the next press selects.
    await editor.take('What closes the room?', 'Wall after wall');
    await editor.press(914.4, 4064);
    await editor.move(3000, 4080);
    await open.page.keyboard.type('4 ft 6 in');
    await open.page.keyboard.press('Enter');
    await open.page.keyboard.press('Escape');
    const stub = (await editor.level()).walls.at(-1);
    // 4 ft 6 in from the wall's face: half of the 8 in wall more from its center-line.
    expect(stub?.from[0]).toBe(914.4);
    expect(stub?.to[0]).toBeCloseTo(914.4 + 101.6 + 1371.6, 3);
    expect(stub?.to[1]).toBe(stub?.from[1]);
    await open.page.keyboard.press('Control+z');
    await expect.poll(async () => (await editor.level()).walls).toHaveLength(5);
  });

  it('the step back of the top bar takes a corner back, and a corner that is set outlives a crash of the tab', async () => {
    const steps = await editor.steps();
    const corners = () => open.page.evaluate(() => window.__stillspot?.store.getState().chain.corners ?? []);
    for (const x of [2000, 3000, 4000]) await editor.press(x, 5200);
    await open.page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => corners()).toHaveLength(2);
    await open.page.getByRole('button', { name: 'Redo' }).click();
    const drawn = await corners();
    expect(drawn).toHaveLength(3);
    await expect.poll(() => editor.steps()).toBe(steps);
    await open.page.locator('.saved', { hasText: /^saved / }).waitFor();
    const next = await open.context.newPage();
    await next.goto(open.page.url());
    await next.waitForFunction(() => (window.__stillspot?.store.getState().chain.corners.length ?? 0) > 0);
    const found = await next.evaluate(() => window.__stillspot?.store.getState());
    expect(found?.chain.corners).toEqual(drawn);
    expect(found?.tool.kind).toBe('wall');
    await next.close();
    for (let step = 0; step < 3; step++) await open.page.keyboard.press('Control+z');
    await expect.poll(() => corners()).toEqual([]);
    await open.page.keyboard.press('Escape');
    await expect.poll(async () => (await editor.level()).walls).toHaveLength(5);
  });

  it('windows and doors go into walls, and nowhere else', async () => {
    await editor.take('What opens it?', 'Window');
    await editor.press(3000, 3000);
    await expect.poll(() => editor.message()).toContain('Press on the wall');
    await editor.press(3000, 920);
    await editor.press(3100, 920);
    await expect.poll(() => editor.message()).toMatch(/over a window/);
    await editor.take('What opens it?', 'Door');
    await editor.press(7030, 5000);
    await editor.press(3500, 7200);
    const { openings } = await editor.level();
    expect(openings.map(({ kind, wall }) => [kind, wall])).toEqual([
      ['window', 'w1'],
      ['door', 'w5'],
      ['door', 'w3'],
    ]);
  });

  it('rooms are named', async () => {
    await editor.take('What is it used for?', 'Family room');
    await editor.press(3000, 2500);
    await editor.take('What is it used for?', 'Utility room');
    await editor.press(9000, 2500);
    const { rooms } = await editor.level();
    expect(rooms.map(({ use }) => use)).toEqual(['family-room', 'utility']);
  });

  it('things are set down with their usual size, against the wall that they come near', async () => {
    await editor.take('What is wet or open to the soil?', 'Sump pit');
    await editor.press(7500, 6700);
    await editor.take('What heats?', 'Furnace');
    await editor.press(9300, 4600);
    await editor.take('What moves air?', 'Supply register');
    await editor.press(4800, 1100);
    await editor.take('What stands here?', 'Desk');
    await editor.press(4000, 4000);
    const { fixtures, objects } = await editor.level();
    expect(fixtures.map(({ kind }) => kind)).toEqual(['sump-pit', 'furnace', 'supply-register']);
    // 4 in deep, its back at the wall's face at 1016.
    expect(fixtures[2]?.shape).toMatchObject({
      box: { width: 254, depth: 101.6, center: [expect.any(Number), 1066.8] },
    });
    expect(objects[0]?.top).toBe(762);
  });

  it('a detector in reach of the pit is blocked, and turns clear as it is dragged away', async () => {
    await editor.takeDetector();
    await editor.press(6300, 6000);
    await expect.poll(() => editor.verdict()).toBe('blocked');
    const stood = await editor.detectorAt();
    const from = await editor.at(stood);
    const to = await editor.at([4000, 4000]);
    const steps = await editor.steps();
    await open.page.mouse.move(from.x, from.y);
    await open.page.mouse.down();
    const seen: string[] = [];
    for (let step = 1; step <= 10; step++) {
      const share = step / 10;
      await open.page.mouse.move(from.x + (to.x - from.x) * share, from.y + (to.y - from.y) * share);
      seen.push(await editor.verdict());
    }
    // It is evaluated while it is dragged, before it is placed.
    expect(seen[0]).toBe('blocked');
    expect(seen.at(-1)).toBe('clear-of-drawn');
    await expect.poll(() => editor.detectorAt()).toEqual(stood);
    await open.page.mouse.up();
    await expect.poll(() => editor.detectorAt()).not.toEqual(stood);
    await expect.poll(() => editor.steps()).toBe(steps + 1);
    // On the desk, 30 in high.
    await expect.poll(async () => (await editor.level()).detectors[0]?.base).toBe(762);
  });

  it('undo takes the drag back, redo does it again', async () => {
    await open.page.keyboard.press('Control+z');
    await expect.poll(() => editor.verdict()).toBe('blocked');
    await open.page.keyboard.press('Control+Shift+z');
    await expect.poll(() => editor.verdict()).toBe('clear-of-drawn');
  });

  it('Escape gives a drag up and leaves everything as it was', async () => {
    const before = await editor.level();
    const steps = await editor.steps();
    const { x, y } = await editor.at(await editor.detectorAt());
    await open.page.mouse.move(x, y);
    await open.page.mouse.down();
    await open.page.mouse.move(x + 60, y + 60, { steps: 4 });
    await expect
      .poll(() => open.page.evaluate(() => window.__stillspot?.store.getState().draggedDetector?.id))
      .toBe('d1');
    await open.page.keyboard.press('Escape');
    await open.page.mouse.up();
    await expect.poll(() => editor.level()).toEqual(before);
    await expect.poll(() => editor.steps()).toBe(steps);
  });

  it('a wall that is pulled takes its room along', async () => {
    await open.page.keyboard.press('Escape');
    await editor.press(5500, 7213.6);
    await expect.poll(() => editor.selection()).toEqual(['w3']);
    await editor.pull([5500, 7213.6], [5500, 7620]);
    const { walls } = await editor.level();
    expect(walls[2]?.from[1]).toBeGreaterThan(7500);
    expect(walls[1]?.to).toEqual(walls[2]?.from);
    // The partition that butts against it follows.
    expect(walls[4]?.to[1]).toBe(walls[2]?.from[1]);
    await open.page.keyboard.press('Control+z');
  });

  it('an opening slides along its wall', async () => {
    const before = (await editor.level()).openings[0]?.offset ?? 0;
    await editor.pull([3000, 914.4], [3600, 1500]);
    const after = (await editor.level()).openings[0]?.offset ?? 0;
    expect(after - before).toBeCloseTo(600, -2);
    expect(after - before).toBeGreaterThan(500);
  });

  it('a frame selects what lies in it; Delete takes it away in one step', async () => {
    await open.page.keyboard.press('Escape');
    await editor.pull([2600, 3200], [5600, 4900]);
    await expect.poll(async () => [...(await editor.selection())].sort()).toEqual(['d1', 't1']);
    await open.page.keyboard.press('Delete');
    const level = await editor.level();
    expect([level.detectors.length, level.objects.length]).toEqual([0, 0]);
    await open.page.keyboard.press('Control+z');
    await expect.poll(async () => (await editor.level()).detectors).toHaveLength(1);
  });

  it('a desk is resized by its corner', async () => {
    await open.page.keyboard.press('Escape');
    await editor.press(3500, 4200);
    await expect.poll(() => editor.selection()).toEqual(['t1']);
    const before = (await editor.level()).objects[0]?.shape;
    if (!before || !('box' in before)) throw new Error('the desk has no box');
    const { center, width, depth } = before.box;
    await editor.pull(
      [center[0] + width / 2, center[1] + depth / 2],
      [center[0] + width / 2 + 300, center[1] + depth / 2 + 200],
    );
    const after = (await editor.level()).objects[0]?.shape;
    if (!after || !('box' in after)) throw new Error('the desk has no box');
    expect(after.box.width).toBeGreaterThan(width + 200);
    expect(after.box.center[0] - after.box.width / 2).toBeCloseTo(center[0] - width / 2, 2);
    await open.page.keyboard.press('Control+z');
  });

  it('the wheel zooms at the pointer, and 0 brings the whole level back', async () => {
    const point = await editor.at([4000, 4000]);
    await open.page.mouse.move(point.x, point.y);
    await open.page.mouse.wheel(0, -240);
    const width = async () => (await editor.at([5000, 4000])).x - (await editor.at([4000, 4000])).x;
    await expect.poll(width).toBeGreaterThan(1.2 * 1000 * 0.05);
    expect((await editor.at([4000, 4000])).x).toBeCloseTo(point.x, 0);
    await open.page.keyboard.press('0');
    const corner = await editor.at([914, 914]);
    expect(corner.x).toBeGreaterThan(0);
  });

  it('all of it is there after a reload', async () => {
    const before = await editor.level();
    await open.page.getByText(/^saved/).waitFor();
    await open.page.reload();
    await open.page.waitForFunction(() => (window.__stillspot?.store.getState().plan.levels[0]?.walls.length ?? 0) > 0);
    await expect.poll(() => editor.level()).toEqual(before);
    open.expectNoTroubles();
  });
});
