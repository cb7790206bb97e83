import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Editor, editorOf } from './editor.ts';
import { accessibilityFindings, type OpenPage, openPage, touchDrag } from './harness.ts';
import { openSample, openStage, stageButton, takeMachinesAway } from './samples.ts';

let open: OpenPage;
let page: Page;
let editor: Editor;

beforeAll(async () => {
  open = await openPage();
  page = open.page;
  editor = await editorOf(page);
});

const wayIn = (on: Page, name: string) => on.getByLabel('Where to start').getByRole('button', { name });
const toDo = (on: Page) => on.locator('.to-do');
/** Opens the list, which closes after one of its lines was followed. */
async function openToDo(on: Page): Promise<void> {
  if ((await toDo(on).getAttribute('open')) === null) await toDo(on).locator('summary').click();
}
/** Returns whether a point of the plan is on the stage. */
const inView = (on: Page, at: readonly [number, number]) =>
  on.evaluate(([x, y]) => {
    const { viewport, stageSize } = window.__stillspot?.store.getState() ?? {};
    if (!viewport || !stageSize) return false;
    const [px, py] = [x * viewport.scale + viewport.x, y * viewport.scale + viewport.y];
    return px > 0 && py > 0 && px < stageSize.width && py < stageSize.height;
  }, at);

describe('the bare sheet', () => {
  it('says what to do first, and axe finds nothing', async () => {
    await page.getByRole('heading', { name: 'Start with the room that you are in.' }).waitFor();
    const ways = page.getByLabel('Where to start').locator('button');
    await expect
      .poll(() => ways.allTextContents())
      .toEqual([
        'Four walls in one drag',
        'One kit, one room: quick card',
        'Type the lengths',
        'Draw over a photo',
        'Look at a sample',
      ]);
    expect(await accessibilityFindings(page)).toEqual([]);
  });

  it('is worked by keyboard: Tab comes to each way, Enter takes it, Escape comes back', async () => {
    await wayIn(page, 'Four walls in one drag').focus();
    await page.keyboard.press('Tab');
    await page.keyboard.press('Tab');
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Type the lengths');
    await page.keyboard.press('Enter');
    await expect.poll(() => page.evaluate(() => window.__stillspot?.store.getState().tool.kind)).toBe('wall');
    await expect.poll(() => page.getByLabel('Where to start').count()).toBe(0);
    await page.keyboard.press('Escape');
    await wayIn(page, 'Look at a sample').focus();
    await page.keyboard.press('Enter');
    await page.getByRole('dialog', { name: 'Plans' }).waitFor();
    await page.keyboard.press('Escape');
  });

  it('draws four walls by one drag of the mouse, and asks at once what the room is used for', async () => {
    await wayIn(page, 'Four walls in one drag').click();
    await editor.pull([1000, 1000], [7000, 5000]);
    await expect.poll(async () => (await editor.level()).walls).toHaveLength(4);
    await page.getByText('The room is closed. Enter what it is used for.').waitFor();
  });

  it('draws four walls by one finger', async () => {
    const tablet = await openPage({ viewport: { width: 1024, height: 768 }, touch: true });
    const touched = await editorOf(tablet.page);
    await wayIn(tablet.page, 'Four walls in one drag').tap();
    await touchDrag(tablet.page, await touched.at([1000, 1000]), await touched.at([7000, 5000]));
    await expect.poll(async () => (await touched.level()).walls).toHaveLength(4);
    tablet.expectNoTroubles();
    await tablet.context.close();
  });
});

describe('what is still to do', () => {
  it('is listed over all levels, what matters most first, and axe finds nothing', async () => {
    await openSample(page, 'Crowded utility');
    await page.getByRole('heading', { name: 'Blocked', exact: true }).waitFor();
    await takeMachinesAway(page);
    await page.getByRole('button', { name: 'Add level' }).click();
    await toDo(page).locator('summary').click();
    await toDo(page).locator('.hint').first().waitFor();
    const texts = await toDo(page).locator('.hint').allTextContents();
    const at = (part: RegExp) => texts.findIndex((text) => part.test(text));
    expect(at(/A room has no use yet/)).toBe(0);
    expect(at(/C1 is blocked/)).toBeGreaterThan(0);
    expect(at(/C2 cannot be decided yet/), texts.join('\n')).toBeGreaterThan(at(/C1 is blocked/));
    expect(at(/Direct sun is not worked out/)).toBeGreaterThan(at(/C2 cannot be decided yet/));
    // Another level is in view: each line names the level that it is about.
    const name = await page.evaluate(() => window.__stillspot?.store.getState().plan.levels[0]?.name);
    // The line that asks who lives on the level in view names the level too.
    const others = texts.slice(0, at(/C2 cannot/) + 1).filter((text) => !text.startsWith('Whether people live on '));
    for (const text of others) expect(text.startsWith(`${name}: `)).toBe(true);
    expect(await accessibilityFindings(page)).toEqual([]);
  });

  it('one press goes to the level, selects the thing and brings it into view', async () => {
    await page.evaluate(() => window.__stillspot?.store.getState().setViewport({ scale: 0.05, x: -5000, y: -5000 }));
    await openToDo(page);
    const line = toDo(page).locator('.hint', { hasText: 'C1 is blocked' });
    await line.getByRole('button', { name: 'Show it' }).click();
    const [id] = await editor.selection();
    const c1 = (await editor.level()).detectors.find(({ label }) => label === 'C1');
    expect(id).toBe(c1?.id);
    await expect.poll(() => inView(page, c1?.at ?? [0, 0])).toBe(true);
  });

  it('goes to the room that has no use and asks for it, by keyboard', async () => {
    await page.getByRole('group', { name: 'Levels, lowest first' }).getByRole('button', { name: 'Main floor' }).click();
    await openToDo(page);
    await toDo(page).getByRole('button', { name: 'Name this room' }).first().focus();
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await editor.level()).name).not.toBe('Main floor');
    const box = page.getByRole('region', { name: 'What is this room used for?' });
    await box.waitFor();
    const asked = await page.evaluate(() => window.__stillspot?.store.getState().roomAsked);
    expect(await inView(page, asked ?? [0, 0])).toBe(true);
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Family room');
    const rooms = (await editor.level()).rooms.length;
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await editor.level()).rooms.length).toBe(rooms + 1);
    await box.waitFor({ state: 'detached' });
    await page.keyboard.press('Control+z');
  });

  it('the title is one press away, and the line goes when it is written', async () => {
    await page.getByRole('banner').getByRole('button', { name: 'Plans' }).click();
    await page.getByRole('button', { name: 'New plan' }).click();
    const line = toDo(page).locator('.hint', { hasText: 'The plan has no title yet.' });
    await openToDo(page);
    await line.getByRole('button', { name: 'Write one' }).click();
    await page.keyboard.type('Heron Street');
    await page.keyboard.press('Enter');
    await openToDo(page);
    await expect.poll(() => line.count()).toBe(0);
    open.expectNoTroubles();
  });
});

describe('the stages of the test', () => {
  it('each opens at its heading, in sight, however far the one before was scrolled; its button stays where it is', async () => {
    await openSample(page, 'Plain basement');
    for (const name of ['Time', 'House', 'Log', 'Results', 'Time', 'Property', 'House', 'Place']) {
      const before = await stageButton(page, name).boundingBox();
      await openStage(page, name);
      const heading = page.getByRole('heading', { level: 2, name, exact: true });
      const box = await heading.boundingBox();
      expect(await stageButton(page, name).boundingBox()).toEqual(before);
      expect(box?.y, name).toBeLessThan(160);
      await page.mouse.wheel(0, 2000);
    }
    open.expectNoTroubles();
  });
});
