import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { type OpenPage, openPage } from './harness.ts';
import { openSample, openStage } from './samples.ts';

let open: OpenPage;
let page: Page;

beforeAll(async () => {
  open = await openPage();
  page = open.page;
  await openSample(page, 'Plain basement');
  await page.getByRole('heading', { name: 'Clear of what is drawn', exact: true }).waitFor();
});

const field = (name: string) => page.getByLabel(name, { exact: true });
const level = () => page.evaluate(() => window.__stillspot?.store.getState().plan.levels[0]);
async function select(id: string): Promise<void> {
  await page.evaluate((each) => window.__stillspot?.store.getState().select([each]), id);
}

describe('a length field', () => {
  it('takes feet, inches and fractions, echoes what it understood, and is one step of history', async () => {
    await select('o1');
    await field('Width').fill('2 ft 8 1/2 in');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await level())?.openings[0]?.width).toBeCloseTo(32.5 * 25.4, 6);
    await expect.poll(() => field('Width').inputValue()).toBe('2 ft 8 1/2 in');
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(async () => (await level())?.openings[0]?.width).toBe(914.4);
    await expect.poll(() => field('Width').inputValue()).toBe('3 ft');
  });

  it('takes centimeters and meters as well, and says them in the units of the plan', async () => {
    await field('Width').fill('81 cm');
    await page.locator('.field__echo').waitFor();
    await expect.poll(() => page.locator('.field__echo').textContent()).toContain('2 ft 7');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await level())?.openings[0]?.width).toBeCloseTo(810, 6);
    await page.getByRole('button', { name: 'Undo' }).click();
  });

  it('refuses what is no length beside the field, in words, and the old value stays', async () => {
    await field('Width').fill('about a yard');
    await page.keyboard.press('Enter');
    const refusal = page.locator('.field__trouble');
    await refusal.waitFor();
    await expect.poll(() => refusal.textContent()).toMatch(/"about a yard" is not a length.*The plan keeps 3 ft\./);
    await expect.poll(() => field('Width').getAttribute('aria-invalid')).toBe('true');
    await expect.poll(async () => (await level())?.openings[0]?.width).toBe(914.4);
    await page.keyboard.press('Escape');
    await expect.poll(() => field('Width').inputValue()).toBe('3 ft');
    await expect.poll(() => refusal.count()).toBe(0);
  });

  it('refuses a window that would leave its wall, with how far and the way out', async () => {
    await field('Left corner, facing the wall').fill('32 ft 8 in');
    await page.keyboard.press('Enter');
    const refusal = page.locator('.field__trouble');
    await refusal.waitFor();
    // From the inside corner of 8 in walls: 33 ft from the end of the wall, which is 34 ft 8 in long; the window is 3 ft wide.
    await expect
      .poll(() => refusal.textContent())
      .toContain('The window would reach 1 ft 4 in past the end of its wall. Slide it back or make it narrower.');
    await expect.poll(async () => (await level())?.openings[0]?.offset).toBe(1320.8);
    await page.keyboard.press('Escape');
  });

  it('forgets what was half typed when another thing is selected', async () => {
    await field('Width').fill('9 ft');
    await select('o2');
    await expect.poll(async () => (await level())?.openings[1]?.width).toBe(914.4);
    await expect.poll(() => field('Width').inputValue()).toBe('3 ft');
  });
});

describe('the numbers of other things', () => {
  it('make a wall longer with the room, so that no room opens', async () => {
    await select('w4');
    const before = await level();
    await field('Inside face to face').fill('25 ft');
    await page.keyboard.press('Enter');
    await expect.poll(() => field('Inside face to face').inputValue()).toBe('25 ft');
    const rooms = page.locator('#tab-draw-state').getByText(/2 rooms/);
    await expect.poll(() => rooms.count()).toBe(1);
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => level()).toEqual(before);
  });

  it('move a thing by its taped gap to a wall', async () => {
    await select('t1');
    const gap = field('On the left');
    const before = (await level())?.objects.find(({ id }) => id === 't1');
    await gap.fill('1 ft');
    await page.keyboard.press('Enter');
    await expect.poll(() => gap.inputValue()).toBe('1 ft');
    await expect.poll(async () => (await level())?.objects.find(({ id }) => id === 't1')).not.toEqual(before);
    await page.getByRole('button', { name: 'Undo' }).click();
  });

  it.each([
    ['a desk', 't1', '999 ft', 'to the right wall'],
    ['a fixture', 'f1', '30 ft', 'to the right wall'],
    ['a detector', 'd1', '40 ft', 'to the right wall'],
    ['a desk below zero', 't1', '-9 ft', 'is below zero'],
  ])('refuse to put %s out of its room: the text stays, with the reason', async (_, id, typed, reason) => {
    const before = await level();
    await select(id);
    if (id === 'd1') await page.locator('summary', { hasText: 'Dimensions' }).click();
    const gap = field('On the left');
    await gap.fill(typed);
    await page.keyboard.press('Enter');
    const refusal = page.locator('.field__trouble');
    await refusal.waitFor();
    await expect.poll(() => refusal.textContent()).toContain(reason);
    await expect.poll(() => gap.inputValue()).toBe(typed);
    expect(await level()).toEqual(before);
    await page.keyboard.press('Escape');
  });

  it('refuse a top under the underside', async () => {
    await select('t1');
    await field('Top').fill('-1 in');
    await page.keyboard.press('Enter');
    const refusal = page.locator('.field__trouble');
    await refusal.waitFor();
    await expect.poll(() => refusal.textContent()).toContain('The top would be 1 in below the underside.');
    await page.keyboard.press('Escape');
  });

  it('take several things at once: counted, moved by numbers, deleted, brought back', async () => {
    await page.evaluate(() => window.__stillspot?.store.getState().select(['t1', 't2', 'd1']));
    await page.getByRole('heading', { name: '3 things selected' }).waitFor();
    await field('Move right by').fill('6 in');
    await page.keyboard.press('Enter');
    const before = await level();
    await page.getByRole('button', { name: 'Move them' }).click();
    const after = await level();
    const x = (each: typeof after) => each?.detectors.find(({ id }) => id === 'd1')?.at[0] ?? Number.NaN;
    expect(x(after) - x(before)).toBeCloseTo(152.4, 6);
    await page.getByRole('button', { name: 'Delete' }).click();
    await expect.poll(async () => (await level())?.objects.some(({ id }) => id === 't1')).toBe(false);
    await page.getByRole('button', { name: 'Undo' }).click();
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(() => level()).toEqual(before);
  });
});

describe('the rules', () => {
  it('do not take a looser distance without the reason, and never keep quiet about it', async () => {
    await openStage(page, 'Property');
    await page.getByText('Change a distance for this plan').click();
    await field('Rule').selectOption('sump');
    await field('Distance').fill('4 ft');
    await page.keyboard.press('Enter');
    await page.getByRole('button', { name: 'Use this distance' }).click();
    await page.getByText('This is looser than published. Enter why that is right here.').waitFor();
    await field('Why').fill('agreed with the county');
    await page.getByRole('button', { name: 'Use this distance' }).click();
    await page.getByText('Looser than published: sump pit. Every plan sheet states it.').waitFor();
    // Beside the verdict, and in the row of the rule.
    const slip = page.getByLabel('Verdict', { exact: true });
    await expect.poll(() => slip.locator('.loosened').textContent()).toMatch(/^Looser than published: sump pit /);
    await expect.poll(() => slip.locator('.rung').getByText('Looser than published').count()).toBe(1);
    await page.getByRole('button', { name: 'Back to the published distance' }).click();
    await expect.poll(() => page.getByText('Looser than published').count()).toBe(0);
    open.expectNoTroubles();
  });
});
