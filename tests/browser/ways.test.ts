import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Level, Plan } from '../../geometry/plan/model.ts';
import { type Editor, editorOf } from './editor.ts';
import { download, type OpenPage, openPage } from './harness.ts';

const FOOT = 304.8;
/** Half the thickness of the outer walls, mm: they are 8 in thick, and taped lengths begin at the face. */
const FACE = 101.6;

/** Returns the distance of the left jamb of the first door from the corner of the room, seen facing the wall at the top of the sheet, mm. */
function leftOfDoor({ walls, openings }: Level): number {
  const [door] = openings;
  const wall = walls.find(({ id }) => id === door?.wall);
  if (!door || !wall) throw new Error('no wall holds a door');
  const [from, to] = [wall.from[0], wall.to[0]];
  return from < to ? door.offset - FACE : from - to - door.offset - door.width - FACE;
}

const told = (page: Page) => page.locator('output[aria-live]').textContent();
const planIn = (bytes: Buffer) => JSON.parse(bytes.toString('utf8')) as Plan;

describe('a job by keyboard alone', () => {
  let open: OpenPage;
  let page: Page;
  let editor: Editor;
  const keys = async (...pressed: readonly string[]) => {
    for (const key of pressed) await page.keyboard.press(key);
  };
  const times = (key: string, count: number) => keys(...Array.from({ length: count }, () => key));
  /** Presses Tab until the focused control has this name: reaching it is part of the test. */
  async function tabTo(name: string | RegExp): Promise<void> {
    for (let count = 0; count < 160; count++) {
      await page.keyboard.press('Tab');
      const here = await page.evaluate(() => {
        const at = document.activeElement as HTMLInputElement | null;
        const named = document.getElementById(at?.getAttribute('aria-labelledby') ?? '');
        return (
          at?.getAttribute('aria-label') ??
          named?.textContent ??
          at?.labels?.[0]?.textContent ??
          at?.textContent ??
          ''
        ).trim();
      });
      if (typeof name === 'string' ? here === name : name.test(here)) return;
    }
    throw new Error(`Tab never comes to ${name}`);
  }

  beforeAll(async () => {
    open = await openPage();
    page = open.page;
    editor = await editorOf(page);
    await keys('1', '1'); // Four walls; the crosshair begins in the middle.
    await times('Control+ArrowLeft', 10);
    await times('Control+ArrowUp', 8);
    await keys('Enter');
    await times('Control+ArrowRight', 20);
    await times('Control+ArrowDown', 15);
    await keys('Enter', 'Escape');
  });

  it('sets a door 2 ft from the corner', async () => {
    await keys('2', '1'); // The crosshair is still in the corner at the lower right.
    await times('Control+ArrowLeft', 10);
    await times('Control+ArrowUp', 15);
    await keys('Enter', 'Escape');
    await page.getByLabel('Left corner, facing the wall').waitFor();
    await tabTo('Left corner, facing the wall');
    await page.keyboard.type('2 ft');
    await keys('Enter');
    await expect.poll(async () => leftOfDoor(await editor.level())).toBeCloseTo(2 * FOOT, 3);
  });

  it('takes a furnace out of the palette and sets it down', async () => {
    await tabTo('What heats?');
    await keys('Enter');
    await tabTo(/^Furnace/);
    await keys('Enter');
    await times('Control+ArrowDown', 7);
    await times('Control+ArrowRight', 7);
    await keys('Enter', 'Escape');
    await expect.poll(async () => (await editor.level()).fixtures.map(({ kind }) => kind)).toEqual(['furnace']);
  });

  it('says what the room is used for, and names it', async () => {
    await keys('3', '1');
    await times('Control+ArrowLeft', 7);
    await keys('Enter');
    await page.locator('.side').getByLabel('Name', { exact: true }).waitFor();
    await tabTo('Name');
    await keys('Control+a');
    await page.keyboard.type('Den');
    await keys('Enter');
    await expect.poll(async () => (await editor.level()).rooms.map(({ name }) => name)).toEqual(['Den']);
  });

  it('sets a detector by the furnace, takes the way out, and hears both verdicts', async () => {
    await tabTo(/^Plan of /); // out of the field, where digits would be typed
    await keys('8', '1');
    await times('Control+ArrowRight', 5);
    await keys('Enter', 'Escape');
    await expect.poll(() => editor.verdict()).toBe('blocked');
    await expect.poll(() => told(page)).toMatch(/: blocked\./);
    await tabTo(/^Move it .* with tape to spare$/);
    await keys('Enter');
    await expect.poll(() => editor.verdict()).toBe('clear-of-drawn');
    await expect.poll(() => told(page)).toMatch(/: clear of what is drawn\..* Not looked for: /);
  });

  it('adds a level and goes back to the one below', async () => {
    const below = (await editor.level()).id;
    await tabTo('Add level');
    await keys('Enter');
    await expect.poll(async () => (await editor.level()).id).not.toBe(below);
    await tabTo(/, clear of what is drawn$/);
    await keys('Enter');
    await expect.poll(async () => (await editor.level()).id).toBe(below);
  });

  it('looks at the sheet and saves the plan', async () => {
    await tabTo('Plan sheet');
    await keys('Enter');
    await page.getByRole('button', { name: 'Preview the plan sheet' }).waitFor();
    await tabTo('Preview the plan sheet');
    await keys('Enter');
    await page.getByRole('img', { name: /^Sheet 1 of / }).waitFor();
    await keys('Escape');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Preview the plan sheet');
    const { bytes } = await download(page, () => keys('Control+s'));
    expect(planIn(bytes).levels.flatMap(({ detectors }) => detectors)).toHaveLength(1);
    open.expectNoTroubles();
  });
});

describe('a job by touch alone, on a tablet', () => {
  let open: OpenPage;
  let page: Page;
  let editor: Editor;
  const tap = (name: string | RegExp) =>
    page
      .getByRole('button', typeof name === 'string' ? { name, exact: true } : { name })
      .first()
      .tap();
  async function tapSheet(x: number, y: number): Promise<void> {
    const point = await editor.at([x, y]);
    await page.touchscreen.tap(point.x, point.y);
  }
  /** Types with the on-screen keyboard. */
  async function write(label: string, text: string): Promise<void> {
    const field = page.getByLabel(label, { exact: true });
    await field.tap();
    await field.fill(text);
    await field.press('Enter');
  }
  /** Opens a column that is folded to a strip, by a tap on it. */
  async function openColumn(column: 'job' | 'side'): Promise<void> {
    const rail = page.locator(`.${column} .rail`);
    if ((await rail.count()) > 0) await rail.tap();
  }
  async function take(question: string, answer: RegExp): Promise<void> {
    await openColumn('job');
    const asked = page.getByRole('button', { name: question, exact: true });
    if ((await asked.getAttribute('aria-expanded')) !== 'true') await asked.tap();
    await page.locator('.answers').getByRole('button', { name: answer }).first().tap();
  }

  beforeAll(async () => {
    open = await openPage({ viewport: { width: 1024, height: 768 }, touch: true });
    page = open.page;
    editor = await editorOf(page);
    await tap(/^Four walls in one drag/);
    await tapSheet(0, 0);
    await tapSheet(6000, 4500);
    await page.waitForFunction(() => window.__stillspot?.store.getState().plan.levels[0]?.walls.length === 4);
  });

  it('sets a door 2 ft from the corner', async () => {
    await take('What opens it?', /^Door/);
    const top = Math.min(...(await editor.level()).walls.map(({ from }) => from[1]));
    await tapSheet(3000, top);
    await openColumn('side');
    await write('Left corner, facing the wall', '2 ft');
    await expect.poll(async () => leftOfDoor(await editor.level())).toBeCloseTo(2 * FOOT, 3);
  });

  it('takes a furnace out of the palette and sets it down', async () => {
    await take('What heats?', /^Furnace/);
    await tapSheet(5200, 3000);
    await expect.poll(async () => (await editor.level()).fixtures.map(({ kind }) => kind)).toEqual(['furnace']);
  });

  it('says what the room is used for, and names it', async () => {
    await take('What is it used for?', /^Family room/);
    await tapSheet(2500, 1500);
    await openColumn('side');
    await write('Name', 'Den');
    await expect.poll(async () => (await editor.level()).rooms.map(({ name }) => name)).toEqual(['Den']);
  });

  it('sets a detector by the furnace, and takes the way out', async () => {
    await openColumn('job');
    await tap('Place');
    await page
      .locator('.answers')
      .getByRole('button', { name: /^Detector/ })
      .tap();
    await tapSheet(4400, 3000);
    await openColumn('side');
    await expect.poll(() => editor.verdict()).toBe('blocked');
    await tap(/^Move it .* with tape to spare$/);
    await expect.poll(() => editor.verdict()).toBe('clear-of-drawn');
  });

  it('adds a level and goes back to the one below', async () => {
    const { id, name } = await editor.level();
    await tap('Add level');
    await expect.poll(async () => (await editor.level()).id).not.toBe(id);
    await tap(`${name}, clear of what is drawn`);
    await expect.poll(async () => (await editor.level()).id).toBe(id);
  });

  it('looks at the sheet and saves the plan', async () => {
    await openColumn('job');
    await tap('Plan sheet');
    await tap('Preview the plan sheet');
    await page.getByRole('img', { name: /^Sheet 1 of / }).waitFor();
    await tap('Close');
    await page.getByRole('dialog').waitFor({ state: 'detached' });
    const { bytes } = await download(page, () => tap('Save'));
    expect(planIn(bytes).levels.flatMap(({ detectors }) => detectors)).toHaveLength(1);
    open.expectNoTroubles();
  });
});
