import { readFileSync } from 'node:fs';
import type { CDPSession } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import type { Level, Plan, XY } from '../../geometry/plan/model.ts';
import { type Editor, editorOf } from './editor.ts';
import { accessibilityFindings, inputSession, type OpenPage, openPage, type PagePoint } from './harness.ts';

const sample = JSON.parse(readFileSync('samples/01-plain-basement.plan.json', 'utf8')) as Plan;
const sampleLevel = sample.levels[0] as Level;
/** Free floor of the family room, within the limit of the register on the left. */
const BLOCKED: XY = [1100, 4600];
const wallMiddle = ({ walls }: Level, index: number): XY => {
  const wall = walls[index] ?? { from: [0, 0], to: [0, 0] };
  return [wall.from[0] * 0.7 + wall.to[0] * 0.3, wall.from[1] * 0.7 + wall.to[1] * 0.3];
};
const deskMiddle: XY = (() => {
  const desk = sampleLevel.objects.find(({ name }) => name === 'Desk');
  return desk && 'box' in desk.shape ? desk.shape.box.center : [0, 0];
})();

async function fresh(open: OpenPage): Promise<void> {
  await open.page.evaluate((plan) => window.__stillspot?.store.getState().openPlan(plan), sample);
}

describe('the list of acts, by mouse and keyboard', () => {
  let open: OpenPage;
  let editor: Editor;
  const menu = () => open.page.getByRole('menu');
  const names = () => open.page.getByRole('menuitem').locator('span').allTextContents();
  const keys = async (...pressed: readonly string[]) => {
    for (const key of pressed) await open.page.keyboard.press(key);
  };
  const rightPress = async (at: XY) => {
    const { x, y } = await editor.at(at);
    await open.page.mouse.click(x, y, { button: 'right' });
    await menu().waitFor();
  };
  const focused = () => open.page.evaluate(() => document.activeElement?.querySelector('span')?.textContent ?? '');

  beforeAll(async () => {
    open = await openPage();
    editor = await editorOf(open.page);
    await fresh(open);
  });
  afterAll(() => open.expectNoTroubles());

  it('on bare floor tells why not, and how far the nearest white is', async () => {
    await rightPress(BLOCKED);
    const head = await open.page.locator('.command-head').textContent();
    expect(head).toMatch(/^Blocked: /);
    expect(head).toMatch(/ from .*, needs .*\. The nearest allowed area is .* (toward|to) /);
    await expect
      .poll(() => names())
      .toEqual(
        expect.arrayContaining([
          'Place a detector here',
          'Name and use of Family room',
          'Paste here',
          'Center this spot',
        ]),
      );
    await keys('Escape');
  });

  it.each<{ on: string; at: XY; has: string }>([
    { on: 'a thing', at: deskMiddle, has: 'Turn by a right angle' },
    { on: 'a wall', at: wallMiddle(sampleLevel, 0), has: 'Split the wall here' },
    { on: 'open paper', at: [400, -900], has: 'Select in a frame: two presses' },
  ])('on $on has "$has", and stands on the page and off the spot', async ({ at, has }) => {
    // There are detectors over the middle of the desk: presses 400 mm beside them.
    await rightPress([at[0] - 400, at[1] + 20]);
    await expect.poll(() => names()).toContain(has);
    const box = await open.page.locator('.command-menu').boundingBox();
    const spot = await editor.at([at[0] - 400, at[1] + 20]);
    if (!box) throw new Error('the list has no place');
    const covers = spot.x > box.x && spot.x < box.x + box.width && spot.y > box.y && spot.y < box.y + box.height;
    expect(covers).toBe(false);
    expect(box.x >= 0 && box.y >= 0 && box.x + box.width <= 1440 && box.y + box.height <= 900).toBe(true);
    await keys('Escape');
  });

  it('on several has lines and spreading', async () => {
    const ids = sampleLevel.fixtures.slice(0, 3).map(({ id }) => id);
    await open.page.evaluate((each) => window.__stillspot?.store.getState().select(each), ids);
    await open.page.getByRole('button', { name: 'More…' }).first().click();
    await expect
      .poll(() => names())
      .toEqual(expect.arrayContaining(['Align left edges', 'Distribute from left to right']));
    await keys('Escape', 'Escape');
  });

  it('is worked by keys: arrows go round, a letter leaps, Escape gives the keyboard back and changes nothing', async () => {
    await open.page.evaluate(
      (id) => window.__stillspot?.store.getState().select([id]),
      sampleLevel.objects[0]?.id ?? '',
    );
    await open.page.locator('.plan-canvas').focus();
    await keys('Shift+F10');
    const [first, second] = await names();
    await expect.poll(() => focused()).toBe(first);
    await keys('ArrowDown');
    await expect.poll(() => focused()).toBe(second);
    await keys('ArrowUp', 'ArrowUp');
    await expect.poll(() => focused()).toBe('Delete');
    await keys('Home', 'c', 'c');
    await expect.poll(() => focused()).toBe((await names()).filter((name) => name.startsWith('C'))[1]);
    const steps = await editor.steps();
    await keys('Escape');
    await expect.poll(() => menu().count()).toBe(0);
    await expect.poll(() => open.page.evaluate(() => document.activeElement?.className)).toBe('plan-canvas');
    await expect.poll(() => editor.selection()).toHaveLength(1);
    await expect.poll(() => editor.steps()).toBe(steps);
  });

  it('does what is chosen, as one step that can be taken back', async () => {
    const { length } = (await editor.level()).objects;
    await keys('ContextMenu', 'd', 'Enter');
    await expect.poll(async () => (await editor.level()).objects.length).toBe(length + 1);
    await keys('Control+z');
    await expect.poll(async () => (await editor.level()).objects).toHaveLength(length);
  });

  it('is there for a row of the list beside the sheet too', async () => {
    await open.page.getByText('Everything on this level').click();
    const row = open.page.locator('.item', { hasText: 'Furnace' });
    await row.click({ button: 'right' });
    await expect.poll(() => open.page.locator('.command-title').textContent()).toBe('Furnace');
    await keys('Escape');
    await row.focus();
    await keys('Shift+F10');
    await expect.poll(() => open.page.locator('.command-title').textContent()).toBe('Furnace');
    await keys('Escape');
    await expect.poll(() => row.evaluate((each) => each === document.activeElement)).toBe(true);
    await open.page.getByText('Everything on this level').click();
  });

  it('a press beside it closes it and does nothing else', async () => {
    await rightPress(BLOCKED);
    const before = await editor.level();
    const away = await editor.at([5000, 1500]);
    await open.page.mouse.click(away.x, away.y);
    await expect.poll(() => menu().count()).toBe(0);
    await expect.poll(() => editor.level()).toEqual(before);
  });

  it('axe finds nothing on it, in the three sets of colors', async () => {
    for (const theme of ['paper', 'sun', 'dark'] as const) {
      await open.page.evaluate((each) => window.__stillspot?.store.getState().setTheme(each), theme);
      await rightPress(BLOCKED);
      expect(await accessibilityFindings(open.page)).toEqual([]);
      await keys('Escape');
    }
  });
});

describe('the list of acts by finger', () => {
  let open: OpenPage;
  let editor: Editor;
  let session: CDPSession;
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', ...touchPoints: PagePoint[]) =>
    session.send('Input.dispatchTouchEvent', { type, touchPoints });
  const menu = () => open.page.getByRole('menu');

  beforeAll(async () => {
    open = await openPage({ viewport: { width: 1024, height: 768 }, touch: true });
    editor = await editorOf(open.page);
    session = await inputSession(open.page);
    await fresh(open);
  });
  afterAll(() => open.expectNoTroubles());

  it('held on the floor tells why not, follows the finger, and moves nothing', async () => {
    const view = () => open.page.evaluate(() => window.__stillspot?.store.getState().viewport);
    const [before, on] = [await view(), await editor.at(BLOCKED)];
    await touch('touchStart', on);
    await open.page.waitForFunction(() => window.__stillspot?.store.getState().hover);
    await touch('touchMove', { x: on.x + 60, y: on.y });
    const hover = () => open.page.evaluate(() => window.__stillspot?.store.getState().hover?.at ?? [0, 0]);
    await expect.poll(async () => (await editor.at((await hover()) as XY)).x).toBeCloseTo(on.x + 60, 0);
    await touch('touchEnd');
    await expect.poll(() => menu().count()).toBe(0);
    await expect.poll(() => view()).toEqual(before);
  });

  it("held and let go on one spot opens it: targets of a finger's size, none over the spot", async () => {
    const on = await editor.at(BLOCKED);
    await touch('touchStart', on);
    await open.page.waitForFunction(() => window.__stillspot?.store.getState().hover);
    await touch('touchEnd');
    await menu().waitFor();
    for (const item of await open.page.getByRole('menuitem').all()) {
      const box = await item.boundingBox();
      expect(box?.height).toBeGreaterThanOrEqual(44);
      expect((box?.x ?? 0) > on.x || (box?.x ?? 0) + (box?.width ?? 0) < on.x).toBe(true);
    }
    await open.page.getByRole('menuitem', { name: 'Place a detector here' }).tap();
    await expect.poll(async () => (await editor.level()).detectors.length).toBe(sampleLevel.detectors.length + 1);
  });

  it('held on a thing shows that it is held, and let go opens what can be done with it; sliding on moves it', async () => {
    const furnace = sampleLevel.fixtures.find(({ kind }) => kind === 'furnace');
    const middle = furnace && 'box' in furnace.shape ? furnace.shape.box.center : ([0, 0] as XY);
    const on = await editor.at(middle);
    const hold = async () => {
      await touch('touchStart', on);
      await expect.poll(() => editor.selection()).toEqual([furnace?.id]);
    };
    await hold();
    await touch('touchEnd');
    await menu().waitFor();
    await expect.poll(() => open.page.locator('.command-title').textContent()).toBe('Furnace');
    await open.page.keyboard.press('Escape');
    await open.page.evaluate(() => window.__stillspot?.store.getState().select([]));
    const steps = await editor.steps();
    await hold();
    for (const step of [20, 40, 60]) await touch('touchMove', { x: on.x, y: on.y - step });
    await touch('touchEnd');
    await expect.poll(() => menu().count()).toBe(0);
    await expect.poll(() => editor.steps()).toBe(steps + 1);
  });
});
