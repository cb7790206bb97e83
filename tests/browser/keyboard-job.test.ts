import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Editor, editorOf } from './editor.ts';
import { announcerReady, type OpenPage, openPage, settled } from './harness.ts';

/** Key presses and typed fields of the whole job; a field counts once with the key that ends it. */
const MOST_ACTIONS = 100;

let open: OpenPage;
let page: Page;
let editor: Editor;
const actions: string[] = [];
const stray: string[] = [];
const refused: string[] = [];

beforeAll(async () => {
  open = await openPage();
  page = open.page;
  editor = await editorOf(page);
  await announcerReady(page);
});

/** What the app says against the last action: at a field, or over the sheet. */
const refusal = () =>
  page.evaluate(() => {
    const { message = '' } = window.__stillspot?.store.getState() ?? {};
    const field = document.querySelector('[aria-invalid="true"]');
    const words = document.querySelector('.message > p')?.textContent ?? message;
    const isRefusal = /too small|goes into a wall|does not fit|no closed room|no wall|only|cannot|longer than/i.test(
      words,
    );
    return field || isRefusal ? words || 'a field is refused' : '';
  });

async function done(what: string): Promise<void> {
  actions.push(what);
  await settled(page);
  if (await page.evaluate(() => document.activeElement === document.body)) stray.push(what);
  const words = await refusal();
  if (words) refused.push(`${what}: ${words}`);
}
async function keys(what: string, ...pressed: readonly string[]): Promise<void> {
  for (const key of pressed) {
    await page.keyboard.press(key);
    await done(`${what}: ${key}`);
  }
}
const times = (what: string, key: string, count: number) => keys(what, ...Array.from({ length: count }, () => key));
/** Types into what has the keyboard. */
async function type(what: string, text: string, end = 'Enter'): Promise<void> {
  await page.keyboard.type(text);
  await page.keyboard.press(end);
  await done(`${what}: ${text}`);
}
/** Goes by Tab to what is called so. */
async function tabTo(name: RegExp, key = 'Tab'): Promise<void> {
  for (let press = 0; press < 60; press++) {
    const words = await page.evaluate(() => {
      const at = document.activeElement;
      const labels =
        at instanceof HTMLInputElement ? [...(at.labels ?? [])].map((label) => label.textContent).join(' ') : '';
      return `${labels} ${at?.getAttribute('aria-label') ?? ''} ${at?.textContent ?? ''}`.replace(/\s+/g, ' ').trim();
    });
    if (name.test(words)) return;
    await keys(`to ${name.source}`, key);
  }
  throw new Error(`Tab does not come to ${name.source}`);
}
/** Goes to a stage from wherever the keyboard is. */
async function toStage(name: string): Promise<void> {
  for (let press = 0; press < 6; press++) {
    if (await page.evaluate(() => document.activeElement?.closest('.stage-bar') !== null)) break;
    await keys('to the stages', 'F6');
  }
  await tabTo(new RegExp(`^${name}`));
  await keys(name, 'Enter');
}

describe('the whole job by keyboard alone', () => {
  it('a rectangular basement is drawn to its sizes, opened, named and furnished', async () => {
    await keys('to the plan', 'Tab', 'Enter');
    await keys('four walls', '1', '1', 'Enter');
    await times('across', 'Control+ArrowRight', 3);
    await times('down', 'Control+ArrowDown', 3);
    await keys('the opposite corner', 'Enter');
    await page.locator('.length-box').waitFor();
    await type('across inside', '34');
    await type('down inside', '24');
    const walls = (await editor.level()).walls;
    expect(walls).toHaveLength(4);
    await keys('the whole level', '0');
    await keys('door', '2', '1');
    await times('to the wall', 'Control+ArrowLeft', 4);
    await keys('puts it in', 'Enter');
    await expect.poll(async () => (await editor.level()).openings.length).toBe(1);
    await keys('leaves its length, puts it back', 'Escape', 'Escape');
    await keys('family room', '3', '1', 'Control+ArrowRight', 'Control+ArrowRight', 'Control+ArrowRight', 'Enter');
    await expect.poll(async () => (await editor.level()).rooms.length).toBe(1);
    await keys('sump pit', '6', '1', 'Control+ArrowRight', 'Enter');
    await page.locator('.length-box').waitFor();
    await type('from the wall', '4 ft');
    await type('from the other wall', '5 ft');
    const [pit] = (await editor.level()).fixtures;
    expect(pit?.kind).toBe('sump-pit');
  });

  it('a detector is placed where it may be placed, and none is looked for elsewhere', async () => {
    await keys('lets go', 'Escape', 'Escape');
    await keys('detector', '8', '1');
    await times('to the middle', 'Control+ArrowRight', 12);
    await keys('places it', 'Enter');
    await expect.poll(async () => (await editor.level()).detectors.length).toBe(1);
    await expect.poll(() => editor.verdict()).toMatch(/clear|unknown|tight/);
    await keys('lets go', 'Escape', 'Escape');
  });

  it('its log and its result are written', async () => {
    await toStage('Log');
    await keys('to the page', 'F6');
    await tabTo(/\bA1\b/);
    await type('serial number', 'K-1001');
    await expect
      .poll(() => page.evaluate(() => window.__stillspot?.store.getState().plan.log?.map(({ serial }) => serial)))
      .toEqual(['K-1001']);
    await toStage('Results');
    await keys('to the page', 'F6');
    await tabTo(/Result of A1/);
    await type('result', '3.2');
    await expect
      .poll(() => page.evaluate(() => window.__stillspot?.store.getState().plan.readings.map(({ value }) => value)))
      .toEqual([3.2]);
    await toStage('Place');
    await keys('to the work, the plan', 'F6', 'F6');
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('sheet-of-plan');
  });

  it('no focus strayed, nothing was refused, and it took no more actions than were counted', () => {
    console.log(`${actions.length} actions by keyboard alone; ${stray.length} stray, ${refused.length} refused`);
    expect(stray).toEqual([]);
    expect(refused).toEqual([]);
    expect(actions.length).toBeLessThanOrEqual(MOST_ACTIONS);
    open.expectNoTroubles();
  });
});
