import { createHash } from 'node:crypto';
import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Level } from '../../geometry/plan/model.ts';
import { someOf } from '../helpers/how-many.ts';
import { type Editor, editorOf } from './editor.ts';
import { accessibilityFindings, type OpenPage, openPage } from './harness.ts';
import { openStage } from './samples.ts';

let open: OpenPage;
let page: Page;
let editor: Editor;

async function openSample(name: RegExp): Promise<void> {
  await page.getByRole('banner').getByRole('button', { name: 'Plans' }).click();
  await page.getByRole('dialog').getByRole('button', { name }).click();
  await page.getByRole('dialog').waitFor({ state: 'detached' });
  await openStage(page, 'Place');
}

beforeAll(async () => {
  open = await openPage();
  page = open.page;
  editor = await editorOf(page);
  await openSample(/^Plain basement/);
});

const spots = () => page.getByRole('list', { name: 'Best spots, the most to spare first' });
const rows = () => spots().getByRole('button');
const detectors = async (): Promise<Level['detectors']> => (await editor.level()).detectors;
const verdicts = () =>
  page.locator('.chip').evaluateAll((chips) => chips.map((chip) => chip.getAttribute('data-verdict')));
const undo = () => page.getByRole('button', { name: 'Undo' }).click();
/** Returns the picture of the sheet around a point of the plan, as a hash. */
async function picture(x: number, y: number): Promise<string> {
  const { x: left, y: top } = await editor.at([x, y]);
  const clip = { x: left - 30, y: top - 30, width: 60, height: 60 };
  return createHash('sha256')
    .update(await page.screenshot({ clip }))
    .digest('hex');
}

describe('the best spot', () => {
  it('is listed with its room, what there is to spare and at what, four others after it', async () => {
    await expect.poll(() => rows().count()).toBe(5);
    await expect.poll(() => rows().first().textContent()).toMatch(/^1Family room.*to spare at /);
    for (const row of await rows().all())
      await expect.poll(() => row.getAttribute('data-verdict')).toBe('clear-of-drawn');
  });

  it('is shown on the sheet when one comes upon it by keyboard', async () => {
    await page.getByRole('button', { name: 'On furniture first' }).focus();
    await page.keyboard.press('Tab');
    await expect.poll(() => rows().first().getAttribute('aria-pressed')).toBe('true');
    await page.keyboard.press('Tab');
    await expect.poll(() => rows().first().getAttribute('aria-pressed')).toBe('false');
    await expect.poll(() => rows().nth(1).getAttribute('aria-pressed')).toBe('true');
    await page.getByRole('button', { name: 'Set one at spot 2' }).waitFor();
  });

  it('is set by one press, selected and clear, in one step of history', async () => {
    await rows().first().click();
    const before = await editor.steps();
    await page.getByRole('button', { name: 'Set one at spot 1' }).click();
    await expect.poll(() => detectors()).toHaveLength(3);
    await expect.poll(() => editor.steps()).toBe(before + 1);
    await expect.poll(() => editor.selection()).toEqual([(await detectors()).at(-1)?.id]);
    await page.getByRole('heading', { name: 'Clear of what is drawn', exact: true }).waitFor();
    await expect.poll(() => rows().first().textContent()).toContain('A3 stands here now');
    await expect.poll(() => rows().first().getAttribute('data-verdict')).toBe('clear-of-drawn');
  });

  it('takes the selected detector when asked to move it', async () => {
    await rows().nth(3).click();
    await page.getByRole('button', { name: 'Move A3 to spot 4' }).click();
    await expect.poll(() => detectors()).toHaveLength(3);
    await expect.poll(() => rows().nth(3).textContent()).toContain('A3 stands here');
    await undo();
    await undo();
    await expect.poll(() => detectors()).toHaveLength(2);
  });

  it('is looked for on furniture first when asked', async () => {
    await page.getByRole('button', { name: 'On furniture first' }).click();
    await expect.poll(() => rows().first().textContent()).toContain('on the desk');
    await page.getByRole('button', { name: 'On furniture first' }).click();
    await expect.poll(() => rows().first().textContent()).not.toContain('on the desk');
  });
});

describe('a pair', () => {
  it('is set side by side in one press, both passing, under a letter of its own', async () => {
    const before = await editor.steps();
    await page.getByRole('button', { name: 'Set a pair side by side' }).click();
    await expect.poll(async () => (await detectors()).map(({ pair }) => pair)).toEqual(['A', 'A', 'B', 'B']);
    await expect
      .poll(() => verdicts())
      // 5 in from rim to rim, which every published list allows: a margin of 1 in, with a tape tolerance of 1 in.
      .toEqual(['clear-of-drawn', 'clear-of-drawn', 'clear-of-drawn', 'clear-of-drawn']);
    await expect.poll(() => editor.steps()).toBe(before + 1);
    await undo();
    await expect.poll(() => detectors()).toHaveLength(2);
  });

  it('grows from a single detector by its companion', async () => {
    await rows().first().click();
    await page.getByRole('button', { name: 'Set one at spot 1' }).click();
    await page.getByRole('button', { name: 'Place A3 its companion' }).click();
    await expect.poll(async () => (await detectors()).map(({ pair }) => pair)).toEqual(['A', 'A', 'B', 'B']);
    await expect
      .poll(() => verdicts())
      // 5 in from rim to rim, which every published list allows: a margin of 1 in, with a tape tolerance of 1 in.
      .toEqual(['clear-of-drawn', 'clear-of-drawn', 'clear-of-drawn', 'clear-of-drawn']);
    await undo();
    await undo();
  });

  it('may be three or four on request', async () => {
    await page.getByLabel('How many').selectOption('Three');
    await page.getByRole('button', { name: 'Set three side by side' }).click();
    await expect.poll(async () => (await detectors()).map(({ pair }) => pair)).toEqual(['A', 'A', 'B', 'B', 'B']);
    await expect.poll(async () => new Set(await verdicts())).toEqual(new Set(['clear-of-drawn']));
    await undo();
    await page.getByLabel('How many').selectOption('Two, a pair');
  });
});

describe('the height', () => {
  const slider = () => page.getByRole('slider', { name: 'Height that the plan is shaded for' });
  const height = () => page.evaluate(() => window.__stillspot?.store.getState().sitHeight ?? 0);

  it('is moved by keyboard, and the shading follows', async () => {
    await page.evaluate(() => window.__stillspot?.store.getState().select([]));
    const [desk] = (await editor.level()).objects.filter(({ name }) => /desk/i.test(name));
    if (!desk || !('box' in desk.shape)) throw new Error('the sample has no desk');
    const [x, y] = desk.shape.box.center;
    // Beside the detectors on it.
    const at = [x + desk.shape.box.width * 0.4, y + desk.shape.box.depth * 0.35] as const;
    const before = await height();
    const white = await picture(...at);
    await slider().focus();
    await page.keyboard.press('ArrowDown');
    // The shading is for the height of the desk's top: an inch lower, the desk is an obstacle.
    await expect.poll(() => height()).toBeCloseTo(before - 25.4, 6);
    await expect.poll(() => picture(...at)).not.toBe(white);
    await expect.poll(() => slider().getAttribute('aria-valuetext')).toContain('2 ft 5 in above the floor');
    await page.keyboard.press('ArrowUp');
    await expect.poll(() => height()).toBeCloseTo(before, 6);
    await expect.poll(() => picture(...at)).toBe(white);
    await page.keyboard.press('PageUp');
    await expect.poll(() => height()).toBeCloseTo(before + 152.4, 6);
    await page.keyboard.press('Home');
    await expect.poll(() => height()).toBe(0);
  });

  it('of a selected detector is told with what bounds it, and set by a press', async () => {
    await page.evaluate(() => window.__stillspot?.store.getState().select(['d1']));
    const heights = page.getByRole('region', { name: 'How high?' });
    await heights.getByText('Not lower: it stands on the desk.').waitFor();
    await expect.poll(() => heights.textContent()).toContain('2 ft 6 in to 5 ft 11 in');
    await slider().focus();
    await page.keyboard.press('ArrowUp');
    await page.getByText('The plan is shaded for 2 ft 7 in. A1 stands at 2 ft 6 in.').waitFor();
    await heights.getByRole('button', { name: 'Set A1 at 2 ft 7 in' }).click();
    await expect.poll(async () => (await detectors())[0]?.base).toBeCloseTo(31 * 25.4, 6);
    await heights.getByRole('button', { name: 'Set A1 on the desk, 2 ft 6 in' }).click();
    await expect.poll(async () => (await detectors())[0]?.base).toBe(762);
  });

  it('under a ceiling that nobody has measured says so, and leads to its height', async () => {
    const heights = page.getByRole('region', { name: 'How high?' });
    const assumed = heights.getByText('The ceiling is not measured: 7 ft 6 in is assumed here.');
    await slider().waitFor();
    expect(await assumed.count()).toBe(0);
    await page.evaluate(() => {
      const { openPlan, plan } = window.__stillspot?.store.getState() ?? {};
      if (plan) openPlan?.({ ...plan, levels: plan.levels.map((each) => ({ ...each, ceilingAnswered: false })) });
    });
    await assumed.waitFor();
    await heights.getByRole('button', { name: 'Enter its height' }).click();
    await expect.poll(() => page.getByLabel('Floor to ceiling').count()).toBeGreaterThan(0);
    await openStage(page, 'Place');
    await slider().waitFor();
  });

  it('is read at the pointer', async () => {
    await editor.move(3200, 2600);
    const heights = page.getByRole('region', { name: 'How high?' });
    // 20 in, and 6 ft minus its own height of an inch: 25 Pa. Code 240.310(a)(1).
    await heights.getByText('Under the pointer: 1 ft 8 in to 5 ft 11 in').waitFor();
  });
});

describe('a level that is not the one to test', () => {
  it('is offered no spot, and says why', async () => {
    await openSample(/^Split level/);
    await page.getByRole('button', { name: 'Upper level', exact: true }).click();
    await page.getByText('No spot is offered here.').waitFor();
    await expect.poll(() => rows().count()).toBe(0);
    await expect.poll(() => page.getByRole('button', { name: /side by side$/ }).count()).toBe(0);
  });

  it('under Illinois each level on the ground needs its location, and the upper one none', async () => {
    await page.evaluate(() => {
      window.__stillspot?.store
        .getState()
        .run((plan) => ({ ...plan, protocol: { profile: 'illinois-422-130', overrides: [] } }));
    });
    const tested = page.getByRole('region', { name: 'Where this house is tested' });
    const levels = await tested.getByRole('listitem').allTextContents();
    expect(levels).toEqual([
      expect.stringContaining('Nobody could live on this level.'),
      expect.stringMatching(/^Lower level1 location needed, 2 placed/),
      expect.stringMatching(/^Main level1 location needed, 1 placed/),
      expect.stringContaining('does not stand on the ground'),
    ]);
  });
});

describe('axe finds nothing', () => {
  it.each(someOf(['dark', 'paper', 'sun'], 1))('in the colors %s, with a spot looked at', async (theme) => {
    await page.getByLabel('Colors').selectOption(theme);
    await page
      .getByRole('group', { name: 'Levels, lowest first' })
      .getByRole('button', { name: /^Lower level/ })
      .click();
    await expect.poll(() => rows().count()).toBe(5);
    await rows().nth(1).click();
    expect(await accessibilityFindings(page)).toEqual([]);
  });

  it('and the page threw nothing', () => open.expectNoTroubles());
});
