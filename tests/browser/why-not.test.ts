import { describe, expect, it } from 'vitest';
import { someOf } from '../helpers/how-many.ts';
import { editorOf } from './editor.ts';
import { sample } from './hands.ts';
import { accessibilityFindings, announcerReady, type OpenPage, openPage, settled } from './harness.ts';

/** Hatched floor of the family room, within 3 ft of the register on the west wall. */
const BLOCKED = [1100, 4600] as const;
const WHITE = [3500, 2200] as const;
const WORDS = /Blocked: moving air\. .* from Supply register, west, needs 3 ft\. The nearest allowed area is /;

/** Opens the plain basement with its switch "Why not here?" and the texts that it shows. */
async function basement(options: Parameters<typeof openPage>[0] = {}) {
  const open = await openPage(options);
  const editor = await editorOf(open.page);
  await open.page.evaluate((plan) => window.__stillspot?.store.getState().openPlan(plan), sample);
  await announcerReady(open.page);
  const ask = open.page.getByRole('button', { name: 'Why not here?', exact: true });
  const told = () => open.page.locator('#announcer').textContent();
  const tap = async ([x, y]: readonly [number, number]) => {
    const at = await editor.at([x, y]);
    await open.page.touchscreen.tap(at.x, at.y);
  };
  return { ...open, editor, ask, told, tap };
}

const hover = ({ page }: Pick<OpenPage, 'page'>) =>
  page.evaluate(() => window.__stillspot?.store.getState().hover?.at ?? null);

describe('why not here', () => {
  it.each(
    someOf(
      [
        [390, 844],
        [820, 1180],
        [844, 390],
      ] as const,
      1,
    ),
  )('by finger at %d × %d: a tap tells of the spot and stays, the next tap tells of its own', async (width, height) => {
    const open = await basement({ viewport: { width, height }, touch: true });
    const box = await open.ask.boundingBox();
    expect(Math.min(box?.width ?? 0, box?.height ?? 0)).toBeGreaterThanOrEqual(43.5);
    // Visible, in one row with the other buttons of the plan.
    const rows = await open.page
      .locator('.foot .button:visible')
      .evaluateAll((all) => new Set(all.map((each) => Math.round(each.getBoundingClientRect().top))).size);
    expect(rows).toBe(1);
    await open.ask.tap();
    expect(await open.ask.getAttribute('aria-pressed')).toBe('true');
    await open.tap(BLOCKED);
    await expect.poll(open.told).toMatch(WORDS);
    await settled(open.page);
    expect((await hover(open))?.[0]).toBeCloseTo(BLOCKED[0], 0);
    expect(await open.page.locator('.command-menu').count()).toBe(0);
    expect(await accessibilityFindings(open.page)).toEqual([]);
    await open.tap(WHITE);
    await expect.poll(open.told).toMatch(/Allowed area: no rule that ran excludes this spot/);
    await open.ask.tap();
    expect(await open.ask.getAttribute('aria-pressed')).toBe('false');
    expect(await hover(open)).toBeNull();
    await expect.poll(() => open.editor.steps()).toBe(0);
    open.expectNoTroubles();
  });

  it('by keyboard: the switch gives the plan the keyboard, and arrows ask spot after spot', async () => {
    const open = await basement();
    await open.ask.focus();
    await open.page.keyboard.press('Enter');
    await expect.poll(() => open.page.evaluate(() => document.activeElement?.id)).toBe('sheet-of-plan');
    await expect.poll(open.told).toMatch(/Allowed area|Blocked: |No floor /);
    for (let step = 0; step < 9; step++) await open.page.keyboard.press('Control+ArrowRight');
    await expect.poll(open.told).toMatch(/Blocked: /);
    await open.page.keyboard.press('Escape');
    await expect.poll(() => open.ask.getAttribute('aria-pressed')).toBe('false');
    open.expectNoTroubles();
  });

  it('is not offered where nothing is drawn', async () => {
    const { page } = await openPage();
    await page.getByRole('button', { name: 'Whole level' }).waitFor();
    expect(await page.getByRole('button', { name: 'Why not here?' }).count()).toBe(0);
  });
});

it('a phone that is rotated shows the whole plan again, large', async () => {
  const { page, editor } = await basement({ viewport: { width: 390, height: 844 }, touch: true });
  const width = async () => (await editor.at([12_000, 0])).x - (await editor.at([0, 0])).x;
  const stage = () => page.locator('#sheet-of-plan').evaluate((each) => [each.clientWidth, each.clientHeight] as const);
  const upright = await width();
  await page.setViewportSize({ width: 844, height: 390 });
  await expect.poll(async () => (await stage())[0]).toBeGreaterThan(600);
  const height = (await editor.at([0, 7500])).y - (await editor.at([0, 0])).y;
  expect(height / (await stage())[1]).toBeGreaterThan(0.6);
  await page.setViewportSize({ width: 390, height: 844 });
  await expect.poll(async () => (await stage())[0]).toBe(390);
  await expect.poll(width).toBeCloseTo(upright, 3);
});
