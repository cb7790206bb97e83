import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { type Editor, editorOf } from './editor.ts';
import { accessibilityFindings, type OpenPage, openPage, pixelAt } from './harness.ts';
import { openSample, openStage } from './samples.ts';

let open: OpenPage;
let page: Page;
let editor: Editor;

async function openHouse(on: Page): Promise<void> {
  await openSample(on, 'Plain basement');
  await on.getByRole('heading', { name: 'Clear of what is drawn', exact: true }).waitFor();
}
const names = (on: Page) =>
  on.evaluate(() => {
    const { plan } = window.__stillspot?.store.getState() ?? {};
    return [...(plan?.levels ?? [])].sort((a, b) => a.order - b.order).map(({ name }) => name);
  });
const switcher = (on: Page) => on.getByRole('group', { name: 'Levels, lowest first' });

beforeAll(async () => {
  open = await openPage();
  page = open.page;
  editor = await editorOf(page);
  await openHouse(page);
});

describe('by mouse', () => {
  it('adds a level above, shows the one below faintly, and copies its outline with one press', async () => {
    await switcher(page).getByRole('button', { name: 'Add level' }).click();
    await page.getByText('Main floor is added above Basement. Enter whether it is lived in.').waitFor();
    await page.getByRole('button', { name: 'Copy the outline of Basement' }).click();
    await page.getByText(/^4 walls copied from Basement/).waitFor();
    await expect.poll(async () => (await editor.level()).walls).toHaveLength(4);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Copy the outline of Basement' }).waitFor();
    await expect.poll(async () => (await editor.level()).walls).toEqual([]);
  });

  it('draws on the ends of the walls below, and takes hold of none of them', async () => {
    const { basement, bare } = await page.evaluate(() => {
      const levels = window.__stillspot?.store.getState().plan.levels ?? [];
      return { basement: levels[0]?.walls[0], bare: levels[1]?.walls.length };
    });
    if (!basement) throw new Error('the sample has walls');
    expect(bare).toBe(0);
    await editor.press(...basement.from);
    await expect.poll(() => editor.selection()).toEqual([]);
    await page.getByRole('button', { name: 'Type the lengths' }).click();
    const off = 60; // mm: within the snap distance, and off every grid
    await editor.press(basement.from[0] + off, basement.from[1] + off);
    const [corner] = await page.evaluate(() => window.__stillspot?.store.getState().chain.corners ?? []);
    const ends = await page.evaluate(() =>
      (window.__stillspot?.store.getState().plan.levels[0]?.walls ?? []).flatMap(({ from, to }) => [from, to]),
    );
    const held = ends.some(([x, y]) => corner && Math.hypot(corner[0] - x, corner[1] - y) < 200);
    expect(held).toBe(true);
    expect(corner?.[0]).not.toBe(basement.from[0] + off);
    await page.keyboard.press('Escape');
    await page.keyboard.press('Escape');
  });

  it('hides and shows the level below', async () => {
    const toggle = page.getByRole('button', { name: 'Level below' });
    await expect.poll(() => toggle.getAttribute('aria-pressed')).toBe('true');
    const wall = await page.evaluate(() => window.__stillspot?.store.getState().plan.levels[0]?.walls[0]);
    if (!wall) throw new Error('the sample has walls');
    const along = (share: number) =>
      [0, 1].map((axis) => (wall.from[axis] ?? 0) * (1 - share) + (wall.to[axis] ?? 0) * share);
    const [x = 0, y = 0] = along(0.03); // between the corner and the first window
    const spot = await editor.at([x, y]);
    const shown = await pixelAt(page, spot);
    await toggle.click();
    await expect.poll(() => pixelAt(page, spot)).not.toEqual(shown);
    await expect.poll(() => toggle.getAttribute('aria-pressed')).toBe('false');
    await toggle.click();
    await expect.poll(() => pixelAt(page, spot)).toEqual(shown);
  });

  it('puts levels met, and the verdicts follow', async () => {
    await openStage(page, 'Draw');
    await page.locator('summary', { hasText: 'Levels:' }).click();
    await page.getByRole('button', { name: 'Move it down' }).click();
    await page.getByText('Main floor is the lowest level now. It is a level to test.').waitFor();
    await expect.poll(() => names(page)).toEqual(['Main floor', 'Basement']);
    await switcher(page).getByRole('button', { name: 'Basement, blocked' }).waitFor();
    expect(await accessibilityFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Move it up' }).click();
    await switcher(page).getByRole('button', { name: 'Basement, clear' }).waitFor();
  });

  it('deletes a level, says what went, and undo brings it back; the last one stays', async () => {
    await page
      .getByRole('list', { name: 'Levels, highest first' })
      .getByRole('button', { name: /^Basement/ })
      .click();
    await page.getByRole('button', { name: 'Delete Basement' }).click();
    await page.getByText(/^Basement with \d+ things is deleted\. Undo restores it\.$/).waitFor();
    await expect.poll(() => names(page)).toEqual(['Main floor']);
    await expect.poll(() => page.getByRole('button', { name: /^Delete / }).count()).toBe(0);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => names(page)).toEqual(['Basement', 'Main floor']);
    await expect.poll(async () => (await editor.level()).name).toBe('Basement');
  });
});

describe('by keyboard alone', () => {
  it('Page Up and Page Down go through the house, and the level is told aloud', async () => {
    const told = () => page.locator('output[aria-live]').textContent();
    await page.getByRole('application').focus();
    await page.keyboard.press('PageDown');
    // Only changes since the last announcement are announced; until then the text may be about the main floor.
    await expect.poll(told).toContain('Basement is the lowest level.');
    await page.keyboard.press('PageUp');
    await expect.poll(async () => (await editor.level()).name).toBe('Main floor');
    await expect.poll(told).toMatch(/^Main floor is in view\./);
    await page.keyboard.press('PageUp');
    await page.getByText('Main floor is the highest level.').waitFor();
    await page.keyboard.press('PageDown');
    await expect.poll(async () => (await editor.level()).name).toBe('Basement');
  });

  it('adds one below and names it', async () => {
    await page.getByRole('button', { name: 'Add one below' }).focus();
    await page.keyboard.press('Enter');
    await page.getByText(/^Lower basement is added below Basement\./).waitFor();
    await page.getByRole('textbox', { name: 'Name', exact: true }).focus();
    await page.keyboard.press('Control+a');
    await page.keyboard.type('Crawl space');
    await page.keyboard.press('Enter');
    await expect.poll(() => names(page)).toEqual(['Crawl space', 'Basement', 'Main floor']);
    await page.keyboard.press('Control+z');
    open.expectNoTroubles();
  });

  it('stays on its level while a detector is dragged', async () => {
    await openHouse(page);
    await switcher(page).getByRole('button', { name: 'Add level' }).click();
    await switcher(page)
      .getByRole('button', { name: /^Basement/ })
      .click();
    const from = await editor.at(await editor.detectorAt());
    await page.mouse.move(from.x, from.y);
    await page.mouse.down();
    await page.mouse.move(from.x + 40, from.y, { steps: 4 });
    await page.keyboard.press('PageUp');
    await expect.poll(async () => (await editor.level()).name).toBe('Basement');
    await page.mouse.up();
    await page.getByRole('button', { name: 'Undo' }).click();
  });
});

describe('by touch', () => {
  it('switches the level with a tap, each with its verdict, and draws a room over the one below', async () => {
    const tablet = await openPage({ viewport: { width: 1024, height: 768 }, touch: true });
    await openHouse(tablet.page);
    await switcher(tablet.page).getByRole('button', { name: 'Add level' }).tap();
    await tablet.page.getByRole('button', { name: 'Copy the outline of Basement' }).tap();
    await tablet.page.getByText(/^4 walls copied/).waitFor();
    await switcher(tablet.page).getByRole('button', { name: 'Basement, clear' }).tap();
    await tablet.page.getByRole('heading', { name: 'Clear of what is drawn', exact: true }).waitFor();
    const boxes = await switcher(tablet.page)
      .getByRole('button')
      .evaluateAll((all) => all.map((each) => each.getBoundingClientRect().height));
    for (const height of boxes) expect(height).toBeGreaterThanOrEqual(44);
    tablet.expectNoTroubles();
    await tablet.context.close();
  });
});

describe('a ceiling that nobody has measured', () => {
  it('is not run for a detector high up until the height is confirmed or entered', async () => {
    const { page } = await openPage();
    const editor = await editorOf(page);
    await openHouse(page);
    const base = 1700;
    await page.evaluate((high) => {
      const state = window.__stillspot?.store.getState();
      const level = state?.plan.levels[0];
      if (!state || !level) throw new Error('no level');
      const detectors = level.detectors.map((each) => ({ ...each, base: high, support: 'hung' as const }));
      state.openPlan({ ...state.plan, levels: [{ ...level, detectors, ceilingAnswered: false }] });
      state.select([detectors[0]?.id ?? '']);
    }, base);
    await openStage(page, 'Place');
    await page.getByText('The ceiling is not measured.').first().waitFor();
    await openStage(page, 'Draw');
    const fold = page.locator('summary', { hasText: 'Levels:' });
    if (!(await page.getByRole('button', { name: ': measured' }).isVisible())) await fold.click();
    expect(await accessibilityFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'It is 7 ft 6 in: measured' }).click();
    await expect.poll(async () => 'ceilingAnswered' in (await editor.level())).toBe(false);
    await page.getByText('Assumed, not measured').waitFor({ state: 'detached' });
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(async () => (await editor.level()).ceilingAnswered).toBe(false);
    await page.getByRole('textbox', { name: 'Floor to ceiling' }).fill('7 ft');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await editor.level()).ceiling).toBeCloseTo(2133.6, 6);
    expect(await editor.level()).not.toHaveProperty('ceilingAnswered');
  });
});
