import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { Level, XY } from '../../geometry/plan/model.ts';
import { type Editor, editorOf } from './editor.ts';
import { accessibilityFindings, type OpenPage, openPage } from './harness.ts';

/** A room of 20 by 12 ft face to face in walls of 8 in, a window in its upper wall, a desk. */
async function room(page: Page): Promise<void> {
  await page.evaluate(() => {
    const state = window.__stillspot?.store.getState();
    if (!state) return;
    state.newPlan();
    const wall = (id: string, from: readonly [number, number], to: readonly [number, number]) => ({
      id,
      from,
      to,
      thickness: 203.2,
      side: 'auto' as const,
    });
    const [w, h] = [6299.2, 3860.8];
    state.run((plan) => ({
      ...plan,
      levels: plan.levels.map((level) => ({
        ...level,
        walls: [
          wall('n', [0, 0], [w, 0]),
          wall('e', [w, 0], [w, h]),
          wall('s', [w, h], [0, h]),
          wall('v', [0, h], [0, 0]),
        ],
        openings: [
          { id: 'o1', wall: 'n', kind: 'window' as const, offset: 1625.6, width: 914.4, bottom: 900, top: 2000 },
        ],
        rooms: [{ id: 'r1', name: 'Den', use: 'den' as const, at: [3000, 2500] as const }],
        objects: [
          {
            id: 't1',
            name: 'Desk',
            shape: { box: { center: [3000, 1800] as const, width: 1219.2, depth: 609.6, turn: 0 } },
            bottom: 0,
            top: 762,
          },
        ],
      })),
    }));
    state.fit();
  });
}

/** Returns the longest side of the drawing, mm. */
const widthOf = ({ walls }: Level) => Math.max(...walls.flatMap(({ from, to }) => [from[0], to[0]]));
const leftOf = ({ walls }: Level) => Math.min(...walls.flatMap(({ from, to }) => [from[0], to[0]]));
const deskAt = ({ objects: [desk] }: Level): XY => (desk && 'box' in desk.shape ? desk.shape.box.center : [0, 0]);

/** Returns whether a pixel of the page has the accent color. */
async function isAccent(page: Page, x: number, y: number): Promise<boolean> {
  const png = await page.screenshot({ clip: { x: Math.round(x), y: Math.round(y), width: 1, height: 1 } });
  return page.evaluate(async (data) => {
    const image = new Image();
    image.src = `data:image/png;base64,${data}`;
    await image.decode();
    const pen = document.createElement('canvas').getContext('2d');
    if (!pen) throw new Error('no canvas');
    pen.drawImage(image, 0, 0);
    const [r, g, b] = pen.getImageData(0, 0, 1, 1).data;
    pen.fillStyle = getComputedStyle(document.documentElement).getPropertyValue('--accent').trim();
    pen.fillRect(0, 0, 1, 1);
    const wanted = pen.getImageData(0, 0, 1, 1).data;
    return r === wanted[0] && g === wanted[1] && b === wanted[2];
  }, png.toString('base64'));
}

/** Returns where the length of the room is written, page px: outside the wall, below its middle. */
async function underRoom(editor: Editor): Promise<{ x: number; y: number }> {
  const point = await editor.at([6299.2 / 2, 3860.8 + 101.6]);
  return { x: point.x, y: point.y + 22 };
}

describe('figures on the sheet', () => {
  let opened: OpenPage;
  let page: Page;
  let editor: Editor;
  beforeAll(async () => {
    opened = await openPage();
    page = opened.page;
    editor = await editorOf(page);
  });
  afterAll(() => opened.context.close());
  beforeEach(() => room(page));

  it('a length of a room is pressed, typed, and the wall at its end moves; undo puts it back', async () => {
    const at = await underRoom(editor);
    await page.mouse.click(at.x, at.y);
    const field = page.getByLabel('Face to face');
    await expect.poll(() => field.inputValue()).toBe('20 ft');
    await field.fill("21'6");
    await field.press('Enter');
    await expect.poll(async () => widthOf(await editor.level())).toBeCloseTo(6299.2 + 457.2, 3);
    await expect.poll(async () => leftOf(await editor.level())).toBe(0);
    await page.keyboard.press('Control+z');
    await expect.poll(async () => widthOf(await editor.level())).toBeCloseTo(6299.2, 3);
  });

  it('or the wall at the other end, when that is said', async () => {
    const at = await underRoom(editor);
    await page.mouse.click(at.x, at.y);
    await page.getByRole('button', { name: 'Left wall' }).click();
    await page.getByLabel('Face to face').fill('18');
    await page.getByLabel('Face to face').press('Enter');
    const level = await editor.level();
    expect(widthOf(level)).toBeCloseTo(6299.2, 3);
    expect(leftOf(level)).toBeCloseTo(609.6, 3);
    // The window keeps its position on the page.
    expect(level.openings[0]?.offset).toBeCloseTo(1625.6 - 609.6, 3);
  });

  it('what cannot stand is refused in words, and the field stays', async () => {
    const at = await underRoom(editor);
    await page.mouse.click(at.x, at.y);
    const field = page.getByLabel('Face to face');
    await field.fill('2');
    await field.press('Enter');
    await page
      .locator('.length-box')
      .getByText(/window/)
      .waitFor();
    await expect.poll(async () => widthOf(await editor.level())).toBeCloseTo(6299.2, 3);
    await field.fill('soon');
    await field.press('Enter');
    await page.getByText(/"soon" is not a length/).waitFor();
    expect(await accessibilityFindings(page)).toEqual([]);
    await field.press('Escape');
    await field.waitFor({ state: 'detached' });
  });

  it('a window is placed from its corner, and Tab goes along the string', async () => {
    await editor.press(1625.6 + 457.2, 0);
    await expect.poll(() => editor.selection()).toEqual(['o1']);
    await page.keyboard.press('l');
    const field = page.getByLabel('Left corner to window, facing the wall');
    await expect.poll(() => field.inputValue()).toBe('5 ft'); // 1625.6 minus half a wall of 203.2
    await field.fill('4');
    await field.press('Tab');
    const width = page.locator('.length-box').getByLabel('Width of the window');
    await width.fill('40"');
    await width.press('Enter');
    const [window] = (await editor.level()).openings;
    expect(window?.offset).toBeCloseTo(1219.2 + 101.6, 3);
    expect(window?.width).toBeCloseTo(1016, 3);
  });

  it('a door in the lower wall is taped facing it from inside: its left corner is on the right of the page, and marked', async () => {
    await page.evaluate(() => {
      const door = { wall: 's', kind: 'door' as const, offset: 1000, width: 812.8, bottom: 0, top: 2032 };
      window.__stillspot?.store.getState().addItem('openings', door);
    });
    const left = page.getByLabel('Left corner, facing the wall');
    await expect.poll(() => left.inputValue()).toBe('≈ 2 ft 11 1/4 in'); // 1000 minus half a wall of 203.2
    const [inner, lower] = [101.6, 3860.8 - 101.6];
    // On the disc beside its letter, a finger's width from the corner.
    const marked = async (x: number, way: number) => {
      const at = await editor.at([x, lower]);
      return isAccent(page, at.x + way * 26, at.y - 9);
    };
    const corners = async () => [await marked(inner, 1), await marked(6299.2 - inner, -1)];
    await expect.poll(corners).toEqual([false, false]);
    await left.focus();
    await expect.poll(corners).toEqual([false, true]);
    await page.getByLabel('Right corner, facing the wall').focus();
    await expect.poll(corners).toEqual([true, false]);
    await page.locator('.plan-canvas').focus();
    await expect.poll(corners).toEqual([false, false]);
    await page.keyboard.press('l');
    await page.getByLabel('Right corner to door, facing the wall').waitFor();
    await page.keyboard.press('Escape');
  });

  it('a desk is put so far from the wall as the tape says, by a press on the figure', async () => {
    await editor.press(3000, 1800);
    await expect.poll(() => editor.selection()).toEqual(['t1']);
    // The figure is in the middle between the desk's left edge and the wall's face.
    const left = (3000 - 609.6 + 101.6) / 2;
    await editor.press(left, 1800);
    const field = page.getByLabel('From the left wall');
    const stood = deskAt(await editor.level());
    await field.fill('2 ft');
    await editor.press(5500, 3300); // a press elsewhere may be unintended
    await field.waitFor({ state: 'detached' });
    expect(await editor.message()).toMatch(/^2 ft was not set: From the left wall stays /);
    expect(deskAt(await editor.level())).toEqual(stood);
    await editor.press(3000, 1800);
    await editor.press(left, 1800);
    await field.fill('2 ft');
    await page.locator('.typed-length').getByRole('button', { name: 'Set', exact: true }).click();
    await field.waitFor({ state: 'detached' });
    await expect.poll(async () => deskAt(await editor.level())[0]).toBeCloseTo(101.6 + 609.6 + 609.6, 3);
    opened.expectNoTroubles();
  });

  it('what was put down waits for its lengths: typed at once, set once each, and its size keeps them', async () => {
    await editor.take('What is wet or open to the soil?', 'Sump pit');
    await editor.press(4000, 2400);
    const steps = await editor.steps();
    await page.keyboard.type('3 2');
    await page.keyboard.press('Enter');
    await page.keyboard.type('2 ft');
    await page.keyboard.press('Tab');
    await page.keyboard.type('24');
    await page.keyboard.press('Enter');
    // Three lengths, three undo steps: leaving the field sets none of them again.
    await expect.poll(() => editor.steps()).toBe(steps + 3);
    const [sump] = (await editor.level()).fixtures;
    if (!sump || !('circle' in sump.shape)) throw new Error('the pit is round');
    const { center, radius } = sump.shape.circle;
    expect(radius).toBeCloseTo(304.8, 3);
    // 3 ft 2 in from the right face at 6299.2 - 101.6, 2 ft from the lower one at 3860.8 - 101.6.
    expect(center[0]).toBeCloseTo(6197.6 - 965.2 - 304.8, 3);
    expect(center[1]).toBeCloseTo(3759.2 - 609.6 - 304.8, 3);
  });

  it('a waiting length is given up by doing anything else, and an unfinished one by Escape', async () => {
    await editor.take('What is wet or open to the soil?', 'Floor drain');
    await editor.press(4500, 2600);
    await page.locator('.typed-length').waitFor();
    const before = (await editor.level()).fixtures;
    await page.keyboard.type('1');
    await page.keyboard.press('Escape');
    await page.locator('.typed-length').waitFor({ state: 'detached' });
    await expect.poll(async () => (await editor.level()).fixtures).toEqual(before);
    await editor.take('What is wet or open to the soil?', 'Floor drain');
    await editor.press(5000, 2600);
    await page.locator('.typed-length').waitFor();
    await editor.press(2000, 3300);
    await page.locator('.typed-length').waitFor({ state: 'detached' });
  });

  it('a thing is not typed through the wall on the other side', async () => {
    await editor.press(3000, 1800);
    await page.keyboard.press('l');
    const field = page.getByLabel('From the left wall');
    await field.fill('40 ft');
    await field.press('Enter');
    await page.getByText(/There are only 16 ft to the right wall/).waitFor();
    await expect.poll(async () => deskAt(await editor.level())).toEqual([3000, 1800]);
    await field.press('Escape');
  });

  it('a key that follows a selection before the sheet has been painted opens a length of what is selected now', async () => {
    await page.locator('.plan-canvas').focus();
    await page.evaluate(() => {
      window.__stillspot?.store.getState().select(['t1']);
      document.body.dispatchEvent(new KeyboardEvent('keydown', { key: 'l', bubbles: true }));
    });
    await page.locator('.typed-length').waitFor();
    await expect.poll(() => page.locator('.typed-length label').textContent()).toMatch(/^From the (left|upper) wall$/);
    await page.keyboard.press('Escape');
  });

  it('is reached by keyboard alone: every length of the room, one after another', async () => {
    await page.locator('.plan-canvas').focus();
    await page.keyboard.press('Escape');
    await page.keyboard.press('l');
    const field = page.getByLabel('Face to face');
    await field.waitFor();
    await page.keyboard.press('Escape');
    await page.keyboard.press('l'); // continuing from there: the other way across
    await field.fill('13 ft');
    await field.press('Enter');
    const level = await editor.level();
    const tall = Math.max(...level.walls.map(({ to }) => to[1]));
    const wide = widthOf(level) - leftOf(level);
    expect([Math.round(tall), Math.round(wide)]).not.toEqual([3861, 6299]);
  });
});

it('a figure is tapped by finger, a finger broad', async () => {
  const { page, context } = await openPage({ touch: true, viewport: { width: 1024, height: 768 } });
  const editor = await editorOf(page);
  await room(page);
  const at = await underRoom(editor);
  await page.touchscreen.tap(at.x + 12, at.y + 12);
  const field = page.getByLabel('Face to face');
  const box = page.locator('.typed-length');
  const button = (name: string) => box.getByRole('button', { name, exact: true });
  // The on-screen keyboard has only digits: the box has buttons for the rest, and for setting and canceling.
  expect(await field.getAttribute('inputmode')).toBe('decimal');
  for (const name of ['ft', 'in', '1/2', '1/4', '1/8', '3/4', 'Set', 'Cancel']) {
    const { width = 0, height = 0 } = (await button(name).boundingBox()) ?? {};
    expect(Math.min(width, height), name).toBeGreaterThanOrEqual(44);
  }
  await field.fill('21');
  await button('Cancel').tap();
  await box.waitFor({ state: 'detached' });
  expect(widthOf(await editor.level())).toBeCloseTo(6299.2, 3);
  await page.touchscreen.tap(at.x + 12, at.y + 12);
  await page.keyboard.type('22');
  await button('ft').tap();
  await page.keyboard.type('6');
  for (const name of ['1/2', 'in', 'Set']) await button(name).tap();
  await expect.poll(async () => widthOf(await editor.level())).toBeCloseTo((22 * 12 + 6.5) * 25.4 + 203.2, 3);
  await context.close();
});
