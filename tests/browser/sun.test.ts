import { describe, expect, it } from 'vitest';
import type { Plan } from '../../geometry/plan/model.ts';
import { houseOf } from '../helpers/sun-room.ts';
import { editorOf } from './editor.ts';
import { accessibilityFindings, openPage, type PageOptions } from './harness.ts';
import { openStage } from './samples.ts';

const detector = {
  id: 'd1',
  label: 'A1',
  at: [2500, 2600],
  base: 762,
  radius: 50.8,
  tall: 25.4,
  pair: null,
  support: 'stand',
};
const rooms = [{ id: 'r', name: 'Den', use: 'den', at: [3000, 4500] }];
const visit = { start: '2003-10-17T06:00:00-07:00', end: '2003-10-19T20:00:00-07:00' };
/** A room whose one window lets the sun in, and a detector near the sun. */
const SUNNY = houseOf({ visit, site: { timeZone: 'America/Denver' }, more: { rooms, detectors: [detector] } as never });

async function sunnyPage(options: PageOptions = {}) {
  const { page } = await openPage(options);
  const editor = await editorOf(page);
  await page.evaluate((plan) => window.__stillspot?.store.getState().openPlan(plan), SUNNY as Plan);
  const select = (id: string) => page.evaluate((each) => window.__stillspot?.store.getState().select([each]), id);
  await select('d1');
  return { page, editor, select };
}

describe('direct sun', () => {
  it('blocks a detector, is covered with one press, and comes back with undo', async () => {
    const { page, editor } = await sunnyPage();
    const panel = page.locator('.verdict-panel');
    await expect.poll(() => editor.verdict()).toBe('blocked');
    await expect.poll(() => panel.textContent()).toContain('the sun through the window');
    await expect
      .poll(() => panel.textContent())
      .toMatch(/The sun comes too near from \d+:\d\d [ap]m to \d+:\d\d [ap]m, on 3 days of 3\./);
    expect(await panel.textContent()).toContain('Clouds are not counted on.');
    await expect
      .poll(() => panel.textContent())
      .toContain('Direct sun: a start 1 to 7 days later, at the same time of day, changes nothing.');
    const cover = panel.getByRole('button', { name: 'Keep the window covered during the test' });
    await cover.click();
    await expect.poll(() => editor.verdict()).not.toBe('blocked');
    expect((await editor.level()).openings[0]?.shade).toBe('covered');
    await page.keyboard.press('Control+z');
    await expect.poll(() => editor.verdict()).toBe('blocked');
  });

  it('shows a fault of the engine while a later start is worked out, and leaves the verdict', async () => {
    const { page, editor } = await sunnyPage();
    await expect.poll(() => page.locator('.sun-line').textContent()).toContain('a start 1 to 7 days later');
    await page.evaluate(() => {
      const { toISOString } = Date.prototype;
      // A fault that occurs only in the later starts.
      Date.prototype.toISOString = function () {
        if (new Error().stack?.includes('late-start')) throw new Error('no later day');
        return toISOString.call(this);
      };
      window.__stillspot?.store.getState().updateItem('d1', { base: 800 });
    });
    await page.getByText(/A fault of Stillspot: something did not work.*no later day/).waitFor();
    expect(await editor.verdict()).toBe('blocked');
  });

  it('waits for north, and leads to its field', async () => {
    const { page, editor, select } = await sunnyPage({ viewport: { width: 1440, height: 900 } });
    await expect.poll(() => editor.verdict()).toBe('blocked');
    const level = { ...SUNNY.levels[0], lookedFor: ['moving-air', 'heat', 'sump', 'floor-drain'] };
    const open = { ...SUNNY, site: { ...SUNNY.site, northAnswered: false }, levels: [level] } as Plan;
    await page.evaluate((plan) => window.__stillspot?.store.getState().openPlan(plan), open);
    await select('d1');
    await expect.poll(() => page.locator('.verdict-panel').textContent()).toContain('North is not given.');
    expect(await editor.verdict()).not.toBe('blocked');
    await page.getByRole('button', { name: /^Property/ }).click();
    await page.getByRole('button', { name: 'Enter north' }).first().click({ timeout: 5000 });
    const field = page.getByLabel('North, from up the page');
    await expect.poll(() => field.evaluate((each) => each === document.activeElement)).toBe(true);
    await page.keyboard.type('321');
    await page.keyboard.press('Enter');
    await expect
      .poll(() => page.evaluate(() => window.__stillspot?.store.getState().plan.site))
      .toMatchObject({ north: 321, northAnswered: true });
    await expect.poll(() => page.locator('.verdict-panel').textContent()).not.toContain('North is not given.');
  });

  it('has what shades a window in its fields, by mouse and by keyboard', async () => {
    const { page, editor, select } = await sunnyPage({ viewport: { width: 1440, height: 900 } });
    await expect.poll(() => editor.verdict()).toBe('blocked');
    await select('glass');
    const shade = async () => (await editor.level()).openings[0]?.shade;
    const press = (name: string) => page.getByRole('button', { name, exact: true });
    await press('Window well').click();
    await expect.poll(shade).toBe('well');
    await press('Overhang').focus();
    await page.keyboard.press('Enter');
    // It is not measured, so it keeps no sun out yet.
    await expect.poll(shade).toEqual({ overhang: { depth: 0, above: 3048 } });
    expect(await editor.verdict()).toBe('blocked');
    // Computed without an end at its sides: said beside it.
    await page.getByText('sun comes in past its end').waitFor();
    await press('Something outside').click();
    await expect.poll(shade).toEqual({ overhang: { depth: 0, above: 3048 }, obstruction: 0 });
    expect(await editor.verdict()).toBe('blocked');
    expect(await press('Overhang').getAttribute('aria-pressed')).toBe('true');
    expect(await accessibilityFindings(page)).toEqual([]);
    await press('Overhang').click();
    await press('Something outside').click();
    await expect.poll(shade).toBe(null);
    await page.getByLabel('It lets light in while it is shut').uncheck();
    await expect.poll(async () => (await editor.level()).openings[0]?.glazed).toBe(false);
    await expect.poll(() => editor.verdict()).not.toBe('blocked');
  });

  it('is played over the day on the plan, by keyboard too, and its openings are told by what they take', async () => {
    const { page, editor } = await sunnyPage({ viewport: { width: 1440, height: 900 } });
    await expect.poll(() => editor.verdict()).toBe('blocked');
    await openStage(page, 'Place');
    const shown = () => page.evaluate(() => document.querySelector('.sun__moment')?.textContent ?? '');
    const covers = page.getByRole('button', { name: /^Keep the window covered: .* more$/ });
    await expect.poll(() => covers.count()).toBe(1);
    expect(await page.getByRole('slider', { name: 'Time of the day that is played' }).count()).toBe(0);
    await page.getByRole('button', { name: 'Play the day on the plan' }).click();
    const slider = page.getByRole('slider', { name: 'Time of the day that is played' });
    await slider.focus();
    await page.keyboard.press('Home');
    const first = await shown();
    await page.keyboard.press('ArrowRight');
    await expect.poll(shown).not.toBe(first);
    expect(await slider.getAttribute('aria-valuetext')).toMatch(/\d:\d\d/);
    expect(await accessibilityFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Play', exact: true }).click();
    const playing = await shown();
    await expect.poll(shown).not.toBe(playing);
    await page.getByRole('button', { name: 'Stop', exact: true }).click();
    await covers.click();
    expect((await editor.level()).openings[0]?.shade).toBe('covered');
    await expect.poll(() => covers.count()).toBe(0);
  });

  it('is shown for a test from now on, with the days that are assumed, where none are planned', async () => {
    const { page, editor } = await sunnyPage({ viewport: { width: 1440, height: 900 } });
    const open = { ...SUNNY, visit: { ...SUNNY.visit, start: null, end: null } } as Plan;
    await page.evaluate((plan) => window.__stillspot?.store.getState().openPlan(plan), open);
    await openStage(page, 'Place');
    await page.getByRole('button', { name: 'Show a test from now on' }).click();
    await expect.poll(() => page.locator('.sun__day').textContent()).toMatch(/Assumed: .* No verdict counts it\./);
    expect(await editor.verdict()).not.toBe('blocked');
  });

  it('goes on below the plan of a phone while the panel that covers the plan is folded', async () => {
    const { page } = await sunnyPage({ viewport: { width: 390, height: 844 }, touch: true });
    await openStage(page, 'Place');
    await page.getByRole('button', { name: 'Place panel' }).tap();
    const play = page.getByRole('button', { name: 'Play the day on the plan' });
    await play.tap();
    const slider = page.getByRole('slider', { name: 'Time of the day that is played' });
    const value = await slider.inputValue();
    expect((await slider.boundingBox())?.height).toBeGreaterThanOrEqual(44);
    await page.getByRole('button', { name: 'Fold away: Place' }).tap();
    // The panel is gone, and the day with its slider is below the plan.
    await expect.poll(() => play.count()).toBe(0);
    const below = page.getByRole('region', { name: 'Sun over the day' });
    await expect.poll(() => below.getByRole('slider').inputValue()).toBe(value);
    expect((await slider.boundingBox())?.height).toBeGreaterThanOrEqual(44);
    const sun = () => page.evaluate(() => document.querySelector('.sun__moment')?.textContent ?? '');
    const before = await sun();
    await slider.focus();
    await page.keyboard.press('ArrowRight');
    await expect.poll(sun).not.toBe(before);
    const moved = await slider.inputValue();
    expect(await accessibilityFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Place panel' }).tap();
    await expect.poll(() => play.getAttribute('aria-pressed')).toBe('true');
    await expect.poll(() => slider.inputValue()).toBe(moved);
    await page.getByRole('button', { name: 'Fold away: Place' }).tap();
    await below.getByRole('button', { name: 'Hide the sun' }).tap();
    await expect.poll(() => below.count()).toBe(0);
  });
});
