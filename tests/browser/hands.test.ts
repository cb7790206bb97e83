import type { CDPSession } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { XY } from '../../geometry/plan/model.ts';
import { type Editor, editorOf } from './editor.ts';
import {
  chooseAct,
  DESK,
  FURNACE,
  freshSample,
  middleOf,
  pressKeys,
  SUMP,
  sampleLevel,
  selectIds,
  toolOf,
  WALL,
  WHITE,
  WINDOW,
} from './hands.ts';
import { inputSession, type OpenPage, openPage, type PagePoint, pixelAt } from './harness.ts';

let open: OpenPage;
let editor: Editor;
const keys = (...pressed: readonly string[]) => pressKeys(editor, pressed);
const select = (...ids: readonly string[]) => selectIds(editor, ids);
const tool = () => toolOf(editor);
const act = (name: string) => chooseAct(editor, name);
const press = (at: XY) => editor.press(at[0], at[1]);
let session: CDPSession;

beforeAll(async () => {
  open = await openPage();
  editor = await editorOf(open.page);
  session = await inputSession(open.page);
});
beforeEach(() => freshSample(editor));
afterAll(() => open.expectNoTroubles());

describe('copy, cut and paste', () => {
  const pasteText = (text: string) =>
    open.page.evaluate((each) => {
      const clipboardData = new DataTransfer();
      clipboardData.setData('text/plain', each);
      window.dispatchEvent(new ClipboardEvent('paste', { clipboardData, cancelable: true }));
    }, text);

  it('a foot aside on the same level, in its place on another one and in another plan, one step each', async () => {
    await select(FURNACE);
    await keys('Control+c', 'Control+v');
    const [x, y] = middleOf(sampleLevel, FURNACE);
    const [pasted] = await editor.selection();
    await expect.poll(async () => middleOf(await editor.level(), pasted ?? '')).toEqual([x + 304.8, y + 304.8]);
    await expect.poll(() => editor.steps()).toBe(1);
    for (const next of ['addLevel', 'newPlan'] as const) {
      await open.page.evaluate((each) => window.__stillspot?.store.getState()[each](), next);
      await keys('Control+v');
      const [there] = await editor.selection();
      await expect.poll(async () => middleOf(await editor.level(), there ?? '')).toEqual([x, y]);
    }
  });

  it('a wall takes its openings along into another tab; an opening alone stays', async () => {
    await select(WINDOW);
    await keys('Control+c');
    await expect.poll(() => editor.message()).toMatch(/goes with its wall/);
    await select(WALL);
    await keys('Control+x');
    await expect.poll(async () => (await editor.level()).walls.some(({ id }) => id === WALL)).toBe(false);
    const other = await open.context.newPage();
    await other.goto(open.page.url());
    const second = await editorOf(other);
    await other.evaluate(() => window.__stillspot?.store.getState().newPlan());
    await other.keyboard.press('Control+v');
    const level = await second.level();
    const own = sampleLevel.openings.filter(({ wall }) => wall === WALL);
    expect(level.walls).toHaveLength(1);
    expect(level.openings.map(({ offset, wall }) => [offset, wall])).toEqual(
      own.map(({ offset }) => [offset, level.walls[0]?.id]),
    );
    await other.close();
  });

  it('says plainly what foreign text is not, and changes nothing', async () => {
    await pasteText('Dear owner, thank you');
    await expect
      .poll(() => editor.message())
      .toMatch(/^What was copied is not a thing from a plan: it reads "Dear owner/);
    await expect.poll(() => editor.steps()).toBe(0);
  });

  it('by the list of acts with the clipboard closed: within this tab, and at the spot that was pressed', async () => {
    await open.page.evaluate(() => {
      const closed = () => Promise.reject(new Error('closed'));
      Object.defineProperty(navigator, 'clipboard', {
        configurable: true,
        value: { writeText: closed, readText: closed },
      });
    });
    await select(SUMP);
    await act('Copy');
    await expect.poll(() => editor.message()).toMatch(/for this tab alone/);
    const at = await editor.at(WHITE);
    await open.page.mouse.click(at.x, at.y, { button: 'right' });
    await open.page.getByRole('menuitem', { name: 'Paste here' }).click();
    await expect.poll(async () => (await editor.level()).fixtures.length).toBe(sampleLevel.fixtures.length + 1);
    const [pasted] = await editor.selection();
    const [x, y] = middleOf(await editor.level(), pasted ?? '');
    expect(Math.hypot(x - WHITE[0], y - WHITE[1])).toBeLessThan(40);
  });
});

describe('many at once', () => {
  it('four registers every 6 ft along a wall, by numbers, in one step', async () => {
    await select(FURNACE);
    await act('Duplicate in a row…');
    await open.page.getByLabel('How many more').fill('3');
    await open.page.getByLabel('Middle to middle').last().fill('6 ft');
    await open.page.getByLabel('Direction').fill('270');
    await open.page.keyboard.press('Enter');
    await open.page.getByRole('button', { name: 'Place the row' }).click();
    const [x, y] = middleOf(sampleLevel, FURNACE);
    const level = await editor.level();
    const ids = await editor.selection();
    expect(ids.map((id) => middleOf(level, id))).toEqual(
      [0, 1, 2, 3].map((n) => [x, expect.closeTo(y - n * 1828.8, 6)]),
    );
    await expect.poll(() => editor.steps()).toBe(1);
    await open.page.getByRole('button', { name: 'Close', exact: true }).click();
  });

  it('lines up, and again by one key with others selected', async () => {
    await select(FURNACE, SUMP);
    await act('Center vertically in line');
    await expect.poll(async () => middleOf(await editor.level(), SUMP)[0]).toBe(middleOf(sampleLevel, FURNACE)[0]);
    await select(FURNACE, DESK);
    await keys('a');
    await expect.poll(async () => middleOf(await editor.level(), DESK)[0]).toBe(middleOf(sampleLevel, FURNACE)[0]);
  });

  it('a double press keeps a thing in hand: four ducts are four presses; A takes the last thing again', async () => {
    const { length } = sampleLevel.fixtures;
    await open.page.getByRole('button', { name: 'What moves air?' }).click();
    await open.page.locator('.answers').getByRole('button', { name: 'Supply register' }).dblclick();
    for (const x of [2000, 2800, 3600, 4400]) await press([x, 2000]);
    await expect.poll(async () => (await editor.level()).fixtures).toHaveLength(length + 4);
    await keys('Escape', 'Escape');
    await expect.poll(() => tool()).toBe('select');
    await keys('a');
    await press([2000, 2800]);
    await expect.poll(async () => (await editor.level()).fixtures).toHaveLength(length + 5);
    await expect.poll(() => tool()).toBe('select');
    await open.page.getByRole('button', { name: 'What closes the room?' }).click();
  });
});

describe('why not here, with nothing in hand', () => {
  it('by keyboard: the cross is told aloud, Enter lists what can be done there', async () => {
    await keys('w', 'ArrowRight');
    for (let step = 0; step < 9; step++) await keys('Control+ArrowRight');
    await expect
      .poll(() => open.page.locator('output.unseen').textContent())
      .toMatch(/Blocked: .* (needs|No detector in) /);
    await keys('Enter');
    await expect.poll(() => open.page.locator('.command-title').textContent()).toMatch(/^Blocked: /);
    await keys('Escape', 'Escape');
  });

  it('by mouse over the hatch: a card beside the pointer, off the spot', async () => {
    const at = await editor.at([1100, 4600]);
    // As close to the pointer as the names of the detectors allow.
    const corner = { x: Math.round(at.x) + 66, y: Math.round(at.y) + 66 };
    await press([-600, -600]);
    const bare = await pixelAt(open.page, corner);
    await editor.move(1100, 4600);
    // Inside the card's border, before its text begins: the card's color, #f5f7f5, with a trace of what is below it.
    const farFromCard = async () => {
      const [red, green, blue] = await pixelAt(open.page, corner);
      return Math.abs(red - 245) + Math.abs(green - 247) + Math.abs(blue - 245);
    };
    // White has a distance of 28.
    await expect.poll(farFromCard).toBeLessThan(15);
    expect(await pixelAt(open.page, corner)).not.toEqual(bare);
  });
});

describe('a pen', () => {
  const pen = (type: 'mousePressed' | 'mouseMoved' | 'mouseReleased', { x, y }: PagePoint, buttons: number) =>
    session.send('Input.dispatchMouseEvent', {
      type,
      x,
      y,
      pointerType: 'pen',
      button: type === 'mouseMoved' ? 'none' : 'left',
      buttons,
      clickCount: 1,
    });
  const palm = (type: 'pointerdown' | 'pointermove' | 'pointerup', { x, y }: PagePoint) =>
    open.page.evaluate(
      ([name, clientX, clientY]) => {
        const sheet = document.querySelector('.plan-canvas') as HTMLElement;
        // The browser has no pointer with this id to capture.
        sheet.setPointerCapture = () => undefined;
        const init = { pointerId: 77, pointerType: 'touch', clientX, clientY, bubbles: true, cancelable: true };
        sheet.dispatchEvent(new PointerEvent(name, init));
      },
      [type, x, y] as const,
    );

  it('hovers as a mouse does, drags without pressure, and the palm that rests beside it does nothing', async () => {
    const from = await editor.at(middleOf(sampleLevel, FURNACE));
    await pen('mouseMoved', from, 0);
    await expect.poll(() => open.page.evaluate(() => window.__stillspot?.store.getState().hover?.id)).toBe(FURNACE);
    const view = () => open.page.evaluate(() => window.__stillspot?.store.getState().viewport);
    const before = await view();
    await pen('mousePressed', from, 1);
    await palm('pointerdown', { x: from.x + 90, y: from.y + 120 });
    for (const share of [0.3, 0.6, 1]) {
      // Away from the partition: a thing dragged into a wall stays at its face.
      await pen('mouseMoved', { x: from.x + 60 * share, y: from.y - 60 * share }, 1);
      await palm('pointermove', { x: from.x + 90, y: from.y + 130 });
    }
    await palm('pointerup', { x: from.x + 90, y: from.y + 130 });
    await pen('mouseReleased', { x: from.x + 60, y: from.y - 60 }, 0);
    await expect.poll(() => view()).toEqual(before);
    await expect.poll(() => editor.steps()).toBe(1);
    const [fx, fy] = middleOf(await editor.level(), FURNACE);
    const moved = await editor.at([fx, fy]);
    expect(Math.hypot(moved.x - from.x - 60, moved.y - from.y + 60)).toBeLessThan(12);
  });

  it('that rests on a thing opens what can be done with it', async () => {
    const at = await editor.at(middleOf(sampleLevel, FURNACE));
    await pen('mousePressed', at, 1);
    await expect.poll(() => editor.selection()).toEqual([FURNACE]);
    await pen('mouseReleased', at, 0);
    await open.page.getByRole('menu').waitFor();
    await expect.poll(() => open.page.locator('.command-title').textContent()).toBe('Furnace');
    await keys('Escape');
  });
});
