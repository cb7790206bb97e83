import { readFileSync } from 'node:fs';
import type { CDPSession } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Plan, XY } from '../../geometry/plan/model.ts';
import { type Editor, editorOf } from './editor.ts';
import { inputSession, type OpenPage, openPage, type PagePoint } from './harness.ts';

const sample = JSON.parse(readFileSync('samples/01-plain-basement.plan.json', 'utf8')) as Plan;

describe('the sheet by touch, on a tablet', () => {
  let open: OpenPage;
  let editor: Editor;
  let session: CDPSession;
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...touchPoints: PagePoint[]) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints });
  const viewport = () =>
    open.page.evaluate(() => window.__stillspot?.store.getState().viewport ?? { scale: 0, x: 0, y: 0 });
  const between = (a: PagePoint, b: PagePoint, share: number): PagePoint => ({
    x: a.x + (b.x - a.x) * share,
    y: a.y + (b.y - a.y) * share,
  });

  beforeAll(async () => {
    open = await openPage({ viewport: { width: 1024, height: 768 }, touch: true });
    editor = await editorOf(open.page);
    session = await inputSession(open.page);
    await open.page.evaluate((plan) => window.__stillspot?.store.getState().openPlan(plan), sample);
  });

  it('a detector is carried above the finger, evaluated on the way, and set down where it stood', async () => {
    const stood = await editor.detectorAt();
    const steps = await editor.steps();
    const tapped = await editor.at(stood);
    await open.page.touchscreen.tap(tapped.x, tapped.y);
    await expect.poll(() => editor.selection()).toHaveLength(1);
    const from = await editor.at(stood);
    const to = { x: from.x + 40, y: from.y + 120 };
    await touch('touchStart', from);
    for (let step = 1; step <= 6; step++) await touch('touchMove', between(from, to, step / 6));
    const inHand = () => open.page.evaluate(() => window.__stillspot?.store.getState().draggedDetector);
    const shown = async () => editor.at(((await inHand())?.at ?? [0, 0]) as XY);
    // The browser delivers touch moves once per frame: the last one has arrived when the detector is beside the finger.
    await expect.poll(async () => (await shown()).x).toBeCloseTo(to.x, -1);
    expect(to.y - (await shown()).y).toBeGreaterThan(60);
    const draggedDetector = await inHand();
    expect(draggedDetector?.byTouch).toBe(true);
    await touch('touchEnd');
    await expect.poll(() => editor.detectorAt()).toEqual(draggedDetector?.at);
    await expect.poll(() => editor.steps()).toBe(steps + 1);
    await expect.poll(() => open.page.evaluate(() => window.scrollY)).toBe(0);
    await open.page.evaluate(() => window.__stillspot?.store.getState().undo());
    await expect.poll(() => editor.detectorAt()).toEqual(stood);
  });

  it('a tap selects; a finger that starts on a wall moves the sheet, not the wall', async () => {
    const before = await editor.level();
    await open.page.evaluate(() => window.__stillspot?.store.getState().select([]));
    const [wall] = before.walls;
    const middle: XY = [
      ((wall?.from[0] ?? 0) + (wall?.to[0] ?? 0)) / 2,
      ((wall?.from[1] ?? 0) + (wall?.to[1] ?? 0)) / 2,
    ];
    const on = await editor.at(middle);
    const view = await viewport();
    await touch('touchStart', on);
    for (let step = 1; step <= 4; step++) await touch('touchMove', { x: on.x + step * 15, y: on.y + step * 10 });
    await touch('touchEnd');
    await expect.poll(() => editor.level()).toEqual(before);
    await expect.poll(async () => (await viewport()).x - view.x).toBeCloseTo(60, 0);
    const tapped = await editor.at(middle);
    await open.page.touchscreen.tap(tapped.x, tapped.y);
    await expect.poll(() => editor.selection()).toHaveLength(1);
  });

  it('two fingers zoom about their middle and change nothing drawn', async () => {
    const before = await editor.level();
    const middle = await editor.at([3000, 3000]);
    const { scale } = await viewport();
    const fingers = (off: number): PagePoint[] => [
      { x: middle.x - off, y: middle.y },
      { x: middle.x + off, y: middle.y },
    ];
    await touch('touchStart', fingers(50)[0] as PagePoint);
    await touch('touchStart', ...fingers(50));
    for (const off of [60, 75, 90, 100]) await touch('touchMove', ...fingers(off));
    await touch('touchEnd');
    await expect.poll(async () => (await viewport()).scale / scale).toBeCloseTo(2, 1);
    const now = await editor.at([3000, 3000]);
    expect(Math.hypot(now.x - middle.x, now.y - middle.y)).toBeLessThan(3);
    await expect.poll(() => editor.level()).toEqual(before);
    await open.page.evaluate(() => window.__stillspot?.store.getState().fit());
  });

  it('walls are tapped corner by corner, and a length typed by finger makes the last one that long', async () => {
    await open.page.evaluate(() => {
      const state = window.__stillspot?.store.getState();
      state?.newPlan();
      state?.setTool({ kind: 'wall' });
    });
    const tap = async (x: number, y: number) => {
      const point = await editor.at([x, y]);
      await open.page.touchscreen.tap(point.x, point.y);
    };
    await tap(1000, 1000);
    await tap(7000, 1000);
    await open.page.getByRole('button', { name: 'Type the length of this wall' }).tap();
    await open.page.keyboard.type('18 ft');
    await open.page.keyboard.press('Enter');
    const corners = await open.page.evaluate(() => window.__stillspot?.store.getState().plan.levels[0]?.walls.length);
    expect(corners).toBe(0); // not in the plan until the outline is closed
    await tap(1000 + 18 * 304.8, 5000);
    await tap(1000, 5000);
    await tap(1000, 1000);
    const { walls } = await editor.level();
    expect(walls).toHaveLength(4);
    const [top] = walls;
    // 18 ft inside, plus half a wall of 8 in at each end.
    expect(Math.abs((top?.to[0] ?? 0) - (top?.from[0] ?? 0))).toBeCloseTo(18 * 304.8 + 203.2, 3);
    await open.page.evaluate((plan) => window.__stillspot?.store.getState().openPlan(plan), sample);
  });

  it('every drag is also two taps: select, "Press where it goes", tap the place', async () => {
    const stood = await editor.detectorAt();
    const on = await editor.at(stood);
    await open.page.touchscreen.tap(on.x, on.y);
    await open.page.getByText('Dimensions').click();
    await open.page.getByRole('button', { name: 'Press where it goes' }).click();
    const target = await editor.at([stood[0] + 900, stood[1] - 600]);
    await open.page.touchscreen.tap(target.x, target.y);
    const now = await editor.detectorAt();
    expect(Math.hypot(now[0] - stood[0] - 900, now[1] - stood[1] + 600)).toBeLessThan(40);
    await expect.poll(() => editor.selection()).toEqual(['d1']);
  });

  it('a button moves what is selected by 1 in, or by 1 ft, one step each', async () => {
    const [stood, steps] = [await editor.detectorAt(), await editor.steps()];
    const button = (name: string) => open.page.getByRole('button', { name, exact: true });
    await button('Move right by 1 in').tap();
    await button('1 ft').tap();
    await button('Move down by 1 ft').tap();
    const now = await editor.detectorAt();
    expect([now[0] - stood[0], now[1] - stood[1]].map((mm) => Math.round(mm * 10) / 10)).toEqual([25.4, 304.8]);
    expect(await editor.steps()).toBe(steps + 2);
    open.expectNoTroubles();
  });
});
