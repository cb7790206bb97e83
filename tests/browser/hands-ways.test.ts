import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import type { XY } from '../../geometry/plan/model.ts';
import { type Editor, editorOf, pressedByHand } from './editor.ts';
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
import { type OpenPage, openPage, settled } from './harness.ts';
import { keptSetting } from './samples.ts';

let open: OpenPage;
let editor: Editor;
const keys = (...pressed: readonly string[]) => pressKeys(editor, pressed);
const select = (...ids: readonly string[]) => selectIds(editor, ids);
const tool = () => toolOf(editor);
const act = (name: string) => chooseAct(editor, name);
const press = (at: XY) => editor.press(at[0], at[1]);
const fixture = async (id: string) => (await editor.level()).fixtures.find((each) => each.id === id);

beforeAll(async () => {
  open = await openPage();
  editor = await editorOf(open.page);
});
beforeEach(() => freshSample(editor));
afterAll(() => open.expectNoTroubles());

describe('Escape always gets out, and nothing that was committed is lost', () => {
  const take = (kind: string) => () =>
    open.page.evaluate((each) => window.__stillspot?.store.getState().setTool(each), { kind } as { kind: 'ask' });
  it.each<{ state: string; enter: () => Promise<unknown>; presses: number }>([
    {
      state: 'the list of acts',
      enter: async () => {
        await open.page.getByRole('button', { name: 'More…' }).last().click();
        // The list is loaded on first use.
        await open.page.getByRole('menu').waitFor();
      },
      presses: 1,
    },
    { state: 'a dialog', enter: () => keys('?'), presses: 1 },
    { state: 'a detector in hand', enter: take('detector'), presses: 1 },
    {
      state: 'the cross with a thing in hand',
      enter: async () => {
        await take('detector')();
        await keys('ArrowRight', 'Control+ArrowLeft');
      },
      presses: 1,
    },
    {
      state: 'a move by press',
      enter: async () => {
        await select(FURNACE);
        await keys('m', 'Control+ArrowUp');
      },
      presses: 2,
    },
    {
      state: 'a grip taken by press',
      enter: async () => {
        await select(DESK);
        await act('Change its shape by two presses');
        const [x, y] = middleOf(sampleLevel, DESK);
        await press([x - 600, y - 300]);
        await editor.move(x - 900, y - 900);
      },
      presses: 3,
    },
    {
      state: 'a frame begun',
      enter: async () => {
        await take('frame')();
        await press(WHITE);
      },
      presses: 2,
    },
    {
      state: 'why not here',
      enter: async () => {
        await keys('w', 'ArrowRight');
      },
      presses: 1,
    },
    {
      state: 'a drag',
      enter: async () => {
        const from = await editor.at(middleOf(sampleLevel, FURNACE));
        await open.page.mouse.move(from.x, from.y);
        await open.page.mouse.down();
        await open.page.mouse.move(from.x + 60, from.y + 40, { steps: 4 });
      },
      presses: 2,
    },
    {
      state: 'a field with half a length in it',
      enter: async () => {
        await select(FURNACE);
        await open.page.getByLabel('Name, if it needs one').fill('Half');
      },
      presses: 3,
    },
  ])('from $state', async ({ enter, presses }) => {
    await enter();
    for (let count = 0; count < presses; count++) {
      await keys('Escape');
      await settled(open.page);
    }
    await open.page.mouse.up();
    await expect.poll(() => tool()).toBe('select');
    await expect.poll(() => open.page.locator('[role="menu"], dialog[open]').count()).toBe(0);
    const left = await open.page.evaluate(() => {
      const { previewPlan, draggedDetector, selection } = window.__stillspot?.store.getState() ?? {};
      return { previewPlan, draggedDetector, selection, typing: document.activeElement?.tagName === 'INPUT' };
    });
    expect(left).toEqual({ previewPlan: null, draggedDetector: null, selection: [], typing: false });
    await expect.poll(() => editor.level()).toEqual(sampleLevel);
    await expect.poll(() => editor.steps()).toBe(0);
  });

  it('from a run of walls: what was drawn stays', async () => {
    await open.page.evaluate(() => window.__stillspot?.store.getState().newPlan());
    await take('wall')();
    await press([1000, 1000]);
    await press([4000, 1000]);
    await press([4000, 3000]);
    await keys('Escape', 'Escape');
    await expect.poll(async () => (await editor.level()).walls).toHaveLength(2);
    await expect.poll(() => tool()).toBe('select');
  });
});

describe('letters as keys (WCAG 2.2, 2.1.4)', () => {
  it('can be kept to the sheet, and that is remembered', async () => {
    const tick = open.page.getByRole('checkbox', { name: /^Letters and digits are keys/ });
    const more = open.page.getByRole('button', { name: 'More…' }).last();
    await keys('?');
    await tick.uncheck();
    await keys('Escape');
    await keptSetting(open.page, 'letterKeys', false);
    await open.page.reload();
    await open.page.waitForFunction(() => (window.__stillspot?.store.getState().stageSize.width ?? 0) > 0);
    await pressedByHand(open.page);
    await more.focus();
    await keys('w', '1', '2', 'n');
    await expect.poll(() => tool()).toBe('select');
    await expect.poll(() => editor.selection()).toEqual([]);
    await open.page.locator('.plan-canvas').focus();
    await keys('w');
    await expect.poll(() => tool()).toBe('ask');
    await keys('Escape', '?');
    await tick.check();
    await keys('Escape');
    await more.focus();
    await keys('n');
    await expect.poll(() => editor.selection()).toHaveLength(1);
  });
});

describe('every drag has a way by single presses (WCAG 2.2, 2.5.7)', () => {
  const grip = async (id: string, from: XY, to: XY) => {
    await select(id);
    await act('Change its shape by two presses');
    await press(from);
    await press(to);
  };
  const changed = async () => (await editor.steps()) === 1;
  const view = () => open.page.evaluate(() => window.__stillspot?.store.getState().viewport);
  const [x, y] = middleOf(sampleLevel, DESK);
  const [wall] = sampleLevel.walls;
  const opening = sampleLevel.openings.find(({ id }) => id === WINDOW);

  it.each<{ drag: string; instead: string; does: () => Promise<boolean> }>([
    {
      drag: 'a thing to its place',
      instead: '"Press where it goes", and a press',
      does: async () => {
        await select(FURNACE);
        await open.page.getByRole('button', { name: 'Press where it goes' }).first().click();
        await press(WHITE);
        return changed();
      },
    },
    {
      drag: 'several things',
      instead: 'the same, for all that are selected',
      does: async () => {
        await select(FURNACE, SUMP);
        await open.page.getByRole('button', { name: 'Press where they go' }).click();
        await press(WHITE);
        const level = await editor.level();
        const way = (id: string) => middleOf(level, id)[0] - middleOf(sampleLevel, id)[0];
        return (await changed()) && Math.abs(way(FURNACE) - way(SUMP)) < 0.01;
      },
    },
    {
      drag: 'a wall',
      instead: 'the same, on the wall',
      does: async () => {
        await select(WALL);
        await open.page.getByRole('button', { name: 'Press where it goes' }).first().click();
        await press([5000, -600]);
        return changed();
      },
    },
    {
      drag: 'an opening along its wall',
      instead: 'the same, or its offset as a number',
      does: async () => {
        await select(WINDOW);
        await open.page.getByRole('button', { name: 'Press where it goes' }).first().click();
        await press([(wall?.from[0] ?? 0) + (opening?.offset ?? 0) + 900, wall?.from[1] ?? 0]);
        return changed();
      },
    },
    {
      drag: 'the end of a wall',
      instead: '"Change its shape by two presses"; or its length as a number',
      does: async () => {
        await grip(WALL, wall?.from ?? [0, 0], [-500, -500]);
        return changed();
      },
    },
    {
      drag: 'a corner of a thing',
      instead: 'the same; or its width and depth as numbers',
      does: async () => {
        const desk = sampleLevel.objects.find(({ id }) => id === DESK);
        const box = desk && 'box' in desk.shape ? desk.shape.box : null;
        await grip(DESK, [x - (box?.width ?? 0) / 2, y - (box?.depth ?? 0) / 2], [x - 1200, y - 700]);
        return changed();
      },
    },
    {
      drag: 'a jamb of an opening',
      instead: 'the same; or its width as a number',
      does: async () => {
        const at = (wall?.from[0] ?? 0) + (opening?.offset ?? 0);
        await grip(WINDOW, [at, wall?.from[1] ?? 0], [at - 150, wall?.from[1] ?? 0]);
        return changed();
      },
    },
    {
      drag: 'the tip of a airflow',
      instead: 'the same; or its direction and reach as numbers',
      does: async () => {
        const stream = { direction: 0, spread: 60, reach: 1500 };
        await open.page.evaluate(
          ([id, value]) => window.__stillspot?.store.getState().updateItem(id, { stream: value }),
          [SUMP, stream] as const,
        );
        const [sx, sy] = middleOf(sampleLevel, SUMP);
        await grip(SUMP, [sx + 1500, sy], [sx, sy - 1200]);
        return (await fixture(SUMP))?.stream?.direction === 270;
      },
    },
    {
      drag: 'four walls in one drag',
      instead: 'two presses, at opposite corners',
      does: async () => {
        await open.page.evaluate(() => window.__stillspot?.store.getState().newPlan());
        await open.page.evaluate(() => window.__stillspot?.store.getState().setTool({ kind: 'room-box' }));
        await press([0, 0]);
        await press([4000, 3000]);
        return (await editor.level()).walls.length === 4;
      },
    },
    {
      drag: 'a frame around things',
      instead: '"Select in a frame: two presses"; or rows of the list with Shift',
      does: async () => {
        await act('Select in a frame: two presses');
        await press([x - 1500, y - 900]);
        await press([x + 1500, y + 900]);
        return (await editor.selection()).includes(DESK);
      },
    },
    {
      drag: 'the sheet',
      instead: '"Center the view by a press"; arrow keys with nothing selected',
      does: async () => {
        const before = await view();
        await act('Center the view by a press');
        await press(WHITE);
        const pressed = await view();
        await keys('ArrowRight');
        const arrowed = await view();
        return before?.x !== pressed?.x && arrowed?.x === (pressed?.x ?? 0) - 40;
      },
    },
  ])('$drag: $instead', async ({ does }) => {
    expect(await does()).toBe(true);
  });
});
