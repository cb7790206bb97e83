import type { CDPSession } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Level, Plan, XY } from '../../geometry/plan/model.ts';
import { type Editor, editorOf } from './editor.ts';
import { DESK, freshSample, middleOf, pressKeys, sample, sampleLevel, selectIds } from './hands.ts';
import { inputSession, type OpenPage, openPage, type PagePoint } from './harness.ts';
import { openStage } from './samples.ts';

/** A point of the desk in the plain basement, off its corners, where no detector is: the desk spans 1981 … 3505 by 3886 … 4648. */
const GRIP: XY = [2250, 4267];
/** The movement of the desk, after which its pair is 30 in from a supply register. */
const WAY: XY = [-1000, -3000];

const axesOf = ({ detectors }: Level) => detectors.map(({ at }) => at);
/** Returns how far the desk and its detectors moved, mm. */
function ways(now: Level): readonly XY[] {
  const [dx, dy] = middleOf(now, DESK);
  const [x, y] = middleOf(sampleLevel, DESK);
  const of = axesOf(now).map((at, i): XY => {
    const [ax, ay] = sampleLevel.detectors[i]?.at ?? [0, 0];
    return [Math.round(at[0] - ax), Math.round(at[1] - ay)];
  });
  return [[Math.round(dx - x), Math.round(dy - y)], ...of];
}

function expectTogether(now: Level): void {
  const [desk, ...pair] = ways(now);
  expect(pair).toEqual([desk, desk]);
  expect(Math.hypot(...(desk as XY))).toBeGreaterThan(100);
}

describe('a pair on a desk', () => {
  let open: OpenPage;
  let editor: Editor;
  beforeAll(async () => {
    open = await openPage();
    editor = await editorOf(open.page);
  });
  beforeEach(() => freshSample(editor));
  afterAll(() => open.expectNoTroubles());

  it('goes with it under the mouse, is evaluated where it stands, and comes back by one undo', async () => {
    await selectIds(editor, ['d1']);
    await expect.poll(() => editor.verdict()).toBe('clear-of-drawn');
    await selectIds(editor, []);
    await editor.pull(GRIP, [GRIP[0] + WAY[0], GRIP[1] + WAY[1]]);
    await expect.poll(() => editor.steps()).toBe(1);
    expectTogether(await editor.level());
    await selectIds(editor, ['d1']);
    await expect.poll(() => editor.verdict()).toBe('blocked');
    await open.page.evaluate(() => window.__stillspot?.store.getState().undo());
    await expect.poll(async () => axesOf(await editor.level())).toEqual(axesOf(sampleLevel));
    await expect.poll(() => editor.verdict()).toBe('clear-of-drawn');
  });

  it('goes with it by the arrow keys and by typed numbers', async () => {
    await selectIds(editor, [DESK]);
    for (let press = 0; press < 3; press++) await pressKeys(editor, ['Control+ArrowLeft']);
    await expect.poll(async () => ways(await editor.level())[0]?.[0]).toBe(-914);
    expectTogether(await editor.level());
    await selectIds(editor, [DESK]);
    const top = open.page.getByLabel('Top', { exact: true });
    await top.fill('32 in');
    await top.press('Enter');
    await expect.poll(async () => (await editor.level()).detectors.map(({ base }) => base)).toEqual([812.8, 812.8]);
  });

  it('is told that nothing carries it when the desk is deleted', async () => {
    await selectIds(editor, [DESK]);
    await pressKeys(editor, ['Delete']);
    await expect.poll(() => editor.message()).toContain('Nothing carries A1 and A2 now.');
  });

  it('a sofa dragged into a partition lands on the face on the side of the hand', async () => {
    const sofa = sampleLevel.objects.find(({ name }) => name === 'Sofa')?.id ?? '';
    const [x, y] = middleOf(sampleLevel, sofa);
    // The partition's west face is at 6343.65; the sofa, 84 in long, would extend to 6500.
    await editor.pull([x - 600, y], [6500 - 1066.8 - 600, y - 200]);
    await expect.poll(() => editor.steps()).toBe(1);
    expect(middleOf(await editor.level(), sofa)[0]).toBeCloseTo(6343.65 - 1066.8, 1);
    await expect.poll(() => editor.message()).toBe('');
  });

  it('a thing nudged into a wall says so, and one press sets it at the face', async () => {
    await selectIds(editor, [DESK]);
    for (let press = 0; press < 7; press++) await pressKeys(editor, ['Control+ArrowLeft']);
    await expect.poll(() => editor.message()).toContain('into a wall');
    await open.page.getByRole('button', { name: 'Move it to the wall' }).first().click();
    await expect.poll(async () => middleOf(await editor.level(), DESK)[0]).toBeCloseTo(762, 1);
    expectTogether(await editor.level());
  });

  it('a desk that is no place is told by how much it would have to move, and is moved by one press', async () => {
    await selectIds(editor, []);
    // In front of the outside door, all of it within 3 ft: its middle at (1524, 6900).
    await open.page.evaluate((id) => {
      const state = window.__stillspot?.store.getState();
      state?.select([id]);
      state?.nudge(-1219.2, 2632.8);
      state?.select([]);
    }, DESK);
    await openStage(open.page, 'Place');
    await open.page.getByLabel('Furniture', { exact: true }).selectOption({ label: 'Sofa' });
    await open.page.getByText('people sit or lie on it').waitFor();
    await open.page.getByLabel('Furniture', { exact: true }).selectOption({ label: 'Desk' });
    await open.page.getByLabel('For', { exact: true }).selectOption({ label: 'a pair' });
    await open.page.getByText('No spot on the desk.').waitFor();
    await open.page.getByRole('button', { name: /^Move the desk .* to the north$/ }).click();
    await open.page.getByText('A pair may stand on the desk').waitFor();
    expectTogether(await editor.level());
  });

  it('a wall laid on another says so, and one press makes one wall of both', async () => {
    await editor.take('What closes the room?', 'Wall after wall');
    await editor.press(6400.8, 1500);
    await editor.press(6400.8, 5500);
    await pressKeys(editor, ['Enter']);
    await expect.poll(async () => (await editor.level()).walls).toHaveLength(6);
    await open.page.getByRole('button', { name: 'Make one wall of them' }).first().click();
    await expect.poll(async () => (await editor.level()).walls).toEqual(sampleLevel.walls);
  });
});

describe('a pair on a desk, by touch', () => {
  it('goes with it under the finger', async () => {
    const open = await openPage({ viewport: { width: 1024, height: 768 }, touch: true });
    const editor = await editorOf(open.page);
    const session: CDPSession = await inputSession(open.page);
    const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...touchPoints: PagePoint[]) =>
      session.send('Input.dispatchTouchEvent', { type, touchPoints });
    await freshSample(editor);
    await selectIds(editor, [DESK]);
    // The finger is on the middle, because near an edge it would grab a corner.
    const [x, y] = middleOf(sampleLevel, DESK);
    const from = await editor.at([x, y]);
    const to = await editor.at([x + WAY[0], y + WAY[1]]);
    await touch('touchStart', from);
    for (let step = 1; step <= 6; step++) {
      await touch('touchMove', { x: from.x + ((to.x - from.x) * step) / 6, y: from.y + ((to.y - from.y) * step) / 6 });
    }
    await expect
      .poll(() => open.page.evaluate(() => window.__stillspot?.store.getState().previewPlan !== null))
      .toBe(true);
    await touch('touchEnd');
    await expect.poll(() => editor.steps()).toBe(1);
    expectTogether(await editor.level());
    open.expectNoTroubles();
  });
});

describe('a partition at the inner corner of a house of two legs', () => {
  it('drawn by hand never gives floor', async () => {
    const open = await openPage();
    const editor = await editorOf(open.page);
    const corners: readonly XY[] = [
      [0, 0],
      [8000, 0],
      [8000, 4000],
      [4000, 4000],
      [4000, 8000],
      [0, 8000],
    ];
    const walls = corners.map((from, i) => {
      const to = corners[(i + 1) % corners.length] as XY;
      return { id: `w${i + 1}`, from, to, thickness: 300, side: 'auto' } as const;
    });
    // 232 mm from the foundation's corner at (3850, 3850).
    const beside = 232 / Math.SQRT2;
    const at: XY = [3850 - beside - 36, 3850 - beside - 36];
    const detector = { id: 'd1', label: 'A1', at, base: 762, radius: 50.8, tall: 25.4, pair: null };
    const rooms = [{ id: 'r1', name: 'Den', use: 'den', at: [1000, 1000] }] as const;
    const { fixtures: _, ...level } = {
      ...sampleLevel,
      walls,
      openings: [],
      objects: [],
      detectors: [detector],
      rooms,
    };
    const plan: Plan = { ...sample, levels: [{ ...level, fixtures: [] }] };
    await open.page.evaluate((each) => window.__stillspot?.store.getState().openPlan(each), plan);
    const verdictOf = async () => {
      await selectIds(editor, ['d1']);
      return editor.verdict();
    };
    await expect.poll(verdictOf).toBe('blocked');
    const ends: readonly XY[] = [
      [150, 4000],
      [4000, 150],
      [150, 150],
    ];
    for (const [x, y] of ends) {
      await editor.take('What closes the room?', 'Wall after wall');
      await editor.press(4000, 4000);
      await editor.press(x, y);
      await pressKeys(editor, ['Enter', 'Escape']);
      await expect.poll(async () => (await editor.level()).walls.length).toBeGreaterThan(6);
      await expect.poll(verdictOf).toBe('blocked');
      await open.page.evaluate(() => window.__stillspot?.store.getState().undo());
      await expect.poll(async () => (await editor.level()).walls).toHaveLength(6);
    }
    open.expectNoTroubles();
  });
});
