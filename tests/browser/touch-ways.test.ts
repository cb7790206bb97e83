import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import type { Level, Plan } from '../../geometry/plan/model.ts';
import { DESK, sample, sampleLevel } from './hands.ts';
import { type OpenPage, openPage, settled } from './harness.ts';
import { openStage } from './samples.ts';

/** The plain basement with other things on its level. */
const withLevel = (change: Partial<Level>): Plan => ({ ...sample, levels: [{ ...sampleLevel, ...change }] });
const TABLET = { width: 820, height: 1180 };
const PHONE = { width: 390, height: 844 };

const levelOf = (page: Page) =>
  page.evaluate(() => window.__stillspot?.store.getState().plan.levels[0]) as Promise<Level>;
const show = async (page: Page, plan: Plan) => {
  await page.evaluate((each) => window.__stillspot?.store.getState().openPlan(each), plan);
  await settled(page);
};
/** Taps the button of a hint in the list of what is still to do. */
async function tapHint(page: Page, name: string): Promise<void> {
  const list = page.locator('.to-do');
  if ((await list.getAttribute('open')) === null) await list.locator('summary').tap();
  await list.getByRole('button', { name, exact: true }).first().tap();
}
/** Returns the label of the field that has the focus, and whether nothing covers it. */
const focused = (page: Page) =>
  page.evaluate(() => {
    const field = document.activeElement as HTMLInputElement;
    const { top, bottom, left } = field.getBoundingClientRect();
    const hit = document.elementFromPoint(left + 5, (top + bottom) / 2);
    return { label: field.labels?.[0]?.textContent, isInSight: hit === field };
  });

describe.each([
  ['a tablet', TABLET],
  ['a phone', PHONE],
])('what a hint asks for, on %s', (_, viewport) => {
  let page: Page;
  let open: OpenPage;
  beforeAll(async () => {
    open = await openPage({ viewport, touch: true });
    page = open.page;
  });

  it('"Enter its height" leads to the field of the height', async () => {
    const objects = sampleLevel.objects.map((each) => (each.id === DESK ? { ...each, topAnswered: false } : each));
    await show(page, withLevel({ objects }));
    await tapHint(page, 'Enter its height');
    await expect.poll(() => focused(page)).toEqual({ label: 'Top', isInSight: true });
    open.expectNoTroubles();
  });

  it('"Enter it" leads to the field of the thickness', async () => {
    const walls = sampleLevel.walls.map((each) => ({ ...each, thicknessAnswered: false }));
    await show(page, withLevel({ walls, detectors: [] }));
    await tapHint(page, 'Enter it');
    await expect.poll(() => focused(page)).toEqual({ label: 'Thickness', isInSight: true });
    open.expectNoTroubles();
  });

  it('"Name this room" keeps the view in which the whole room lies', async () => {
    await show(page, withLevel({ rooms: [], detectors: [] }));
    const scale = () => page.evaluate(() => window.__stillspot?.store.getState().viewport.scale);
    const before = await scale();
    await tapHint(page, 'Name this room');
    await page.getByRole('region', { name: 'What is this room used for?' }).waitFor();
    expect(await scale()).toBe(before);
    open.expectNoTroubles();
  });

  it('a pair above the desk is set on it by one press', async () => {
    const detectors = sampleLevel.detectors.map((each) => ({ ...each, base: 800 }));
    await show(page, withLevel({ detectors }));
    await tapHint(page, 'Enter what carries it');
    await page.getByRole('button', { name: 'On the desk, top at 2 ft 6 in' }).first().tap();
    await expect.poll(async () => (await levelOf(page)).detectors.map(({ base }) => base)).toEqual([762, 762]);
    await page.getByText('Carried by: Desk.').first().waitFor();
    await page.getByRole('button', { name: 'Undo' }).tap();
    await expect.poll(async () => (await levelOf(page)).detectors.map(({ base }) => base)).toEqual([800, 800]);
    open.expectNoTroubles();
  });
});

it('a field for a number of 0 or more opens the number pad of a phone, one that takes a minus or a letter does not', async () => {
  const { page } = await openPage({ viewport: TABLET, touch: true });
  await show(page, sample);
  const pad = (label: string) => page.getByLabel(label, { exact: true }).getAttribute('inputmode');
  await openStage(page, 'Time');
  expect(await pad('Laboratory must have it within')).toBe('decimal');
  expect(await pad('At least')).toBe('text'); // hours, or "2 days"
  await openStage(page, 'Property');
  expect(await pad('Latitude')).toBe('text');
  expect(await pad('The tape may be off by')).toBe('text');
});
