import type { Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { type Editor, editorOf } from './editor.ts';
import { accessibilityFindings, openPage, touchDrag } from './harness.ts';
import { openStage } from './samples.ts';

/** Opens a page with one room of a use and one detector in its middle: nothing else is drawn, and nothing answered. */
async function roomWithDetector(options: Parameters<typeof openPage>[0] = {}): Promise<{ page: Page; editor: Editor }> {
  const { page } = await openPage(options);
  const editor = await editorOf(page);
  const way = page.getByLabel('Where to start').getByRole('button', { name: 'Four walls in one drag' });
  await (options.touch ? way.tap() : way.click());
  if (options.touch) await touchDrag(page, await editor.at([1000, 1000]), await editor.at([7000, 5000]));
  else await editor.pull([1000, 1000], [7000, 5000]);
  await expect.poll(async () => (await editor.level()).walls).toHaveLength(4);
  await page.evaluate(() => {
    const store = window.__stillspot?.store.getState();
    store?.addItem('rooms', { name: 'Family room', use: 'family-room', at: [2000, 2000] });
    store?.addDetector([4000, 3000]);
  });
  return { page, editor };
}

const slip = (page: Page) => page.locator('.verdict-panel');
const word = (page: Page) => slip(page).locator('.verdict-panel__word').textContent();
/** Returns the names in the verdict that link to their questions. */
const open = (page: Page) => slip(page).locator('.open-rows__way').allTextContents();
const none = (page: Page, what: string) => page.getByRole('button', { name: `None here: ${what}`, exact: true });

const ASKED = [
  ['Exterior doors and windows', 'no exterior door, window or passage'],
  ['Moving air', 'no register, grille, fan or other air-moving device'],
  ['Heat', 'no heat source'],
  ['Sump pit', 'no sump pit'],
  ['Floor drain', 'no floor drain'],
] as const;

it('has the words of the trade beside each question, which keeps its name', async () => {
  const { page } = await roomWithDetector();
  const question = (name: string) => page.getByRole('button', { name, exact: true });
  await question('What moves air?').getByText('Airflow: HVAC, fans, filters').waitFor();
  expect(await question('What heats?').getAttribute('aria-describedby')).toBe(
    'question-heats-trade question-heats-state',
  );
  expect(await page.locator('#question-heats-trade').textContent()).toBe('Heat sources');
});

describe('a room in which nothing was looked for', () => {
  it('is clear of what is drawn, turns green only with the last answer, and each answer is one step back', async () => {
    const { page, editor } = await roomWithDetector();
    await expect.poll(() => word(page)).toBe('Clear of what is drawn');
    await expect.poll(() => editor.verdict()).toBe('clear-of-drawn');
    await expect.poll(() => open(page)).toEqual([...ASKED.map(([name]) => name), 'Level']);
    expect(await accessibilityFindings(page)).toEqual([]);
    for (const [name, what] of ASKED) {
      await slip(page).getByRole('button', { name, exact: true }).click();
      // The press leads to the answer itself, which then has the focus.
      await expect.poll(() => none(page, what).evaluate((at) => at === document.activeElement)).toBe(true);
      await none(page, what).click();
      await expect.poll(() => none(page, what).getAttribute('aria-pressed')).toBe('true');
      await expect.poll(() => open(page)).not.toContain(name);
      await expect.poll(() => word(page)).toBe('Clear of what is drawn');
    }
    // Without an opening to the outside, no sun comes in.
    await expect.poll(() => open(page)).toEqual(['Level']);
    await slip(page).getByRole('button', { name: 'On a stand', exact: true }).click();
    await slip(page).getByRole('button', { name: 'Level', exact: true }).click();
    await page.getByLabel('Why it is tested', { exact: true }).selectOption('own-household');
    await expect.poll(() => word(page)).toBe('Clear of what is drawn');
    await page.getByLabel('People on Basement', { exact: true }).selectOption('lived-in');
    await expect.poll(() => word(page)).toBe('Clear');
    await expect.poll(() => editor.verdict()).toBe('clear');
    expect(await accessibilityFindings(page)).toEqual([]);
    await page.getByRole('button', { name: 'Undo', exact: true }).click();
    await expect.poll(() => word(page)).toBe('Clear of what is drawn');
    await page.getByRole('button', { name: 'Redo', exact: true }).click();
    await expect.poll(() => word(page)).toBe('Clear');
  }, 120_000);

  it('draws a sump pit beside "none here": the pit counts, and the answer is taken back with a word', async () => {
    const { page, editor } = await roomWithDetector();
    await slip(page).getByRole('button', { name: 'Sump pit', exact: true }).click();
    await none(page, 'no sump pit').click();
    await editor.take('What is wet or open to the soil?', 'Sump pit');
    await editor.press(1600, 1600);
    await expect.poll(async () => (await editor.level()).fixtures).toHaveLength(1);
    await expect.poll(async () => (await editor.level()).lookedFor).toBeUndefined();
    await expect.poll(() => editor.message()).toContain('"No sump pit" is taken back');
    await expect.poll(() => none(page, 'no sump pit').count()).toBe(0);
  });

  it('comes into view by its digit', async () => {
    const { page } = await roomWithDetector({ viewport: { width: 1440, height: 600 } });
    await openStage(page, 'Draw');
    const last = page.getByRole('button', { name: /^What stands here/ });
    await last.click();
    await last.evaluate((each) => each.closest('.stage__work')?.parentElement?.scrollTo(0, 10_000));
    await page.keyboard.press('2');
    const name = page.getByRole('button', { name: /^What opens it/ });
    await expect.poll(() => name.getAttribute('aria-expanded')).toBe('true');
    const inView = () =>
      name.evaluate((each) => {
        const [own, pane] = [each.getBoundingClientRect(), each.closest('.stage__work')?.parentElement];
        const box = pane?.getBoundingClientRect();
        return box !== undefined && own.top >= box.top - 1 && own.bottom <= box.bottom + 1;
      });
    await expect.poll(inView).toBe(true);
  });

  it('is answered by keyboard: a digit opens the question, X leads to "none here", Enter answers', async () => {
    const { page, editor } = await roomWithDetector();
    await page.locator('body').evaluate((body) => (body.ownerDocument.activeElement as HTMLElement | null)?.blur());
    for (const [digit, what] of [
      ['2', ASKED[0][1]],
      ['4', ASKED[1][1]],
      ['5', ASKED[2][1]],
    ] as const) {
      await page.keyboard.press(digit);
      await page.keyboard.press('x');
      await expect.poll(() => none(page, what).evaluate((at) => at === document.activeElement)).toBe(true);
      await page.keyboard.press('Enter');
      await expect.poll(() => none(page, what).getAttribute('aria-pressed')).toBe('true');
    }
    await expect.poll(async () => (await editor.level()).lookedFor).toEqual(['outside-opening', 'moving-air', 'heat']);
  });

  it('is answered by touch on a tablet, with who and when put on it', async () => {
    const { page, editor } = await roomWithDetector({ viewport: { width: 1024, height: 768 }, touch: true });
    await expect.poll(() => word(page)).toBe('Clear of what is drawn');
    await slip(page).getByRole('button', { name: 'Heat', exact: true }).tap();
    await none(page, 'no heat source').tap();
    await expect.poll(async () => (await editor.level()).lookedFor).toEqual(['heat']);
    const box = await none(page, 'no heat source').boundingBox();
    expect(box?.height).toBeGreaterThanOrEqual(44);
    await page.getByText('Inspected by, and when').tap();
    const who = page.getByLabel('Inspected by', { exact: true });
    await who.fill('R. Alder');
    await who.press('Enter');
    await page.getByRole('button', { name: 'Put name on 1 answer' }).tap();
    await expect
      .poll(async () => (await editor.level()).lookedForBy)
      .toEqual([{ rule: 'heat', by: 'R. Alder', at: null }]);
    expect(await accessibilityFindings(page)).toEqual([]);
  });
});
