/** Steps that tests take with the quick card. */
import type { Page } from 'playwright-core';
import type { Plan } from '../../geometry/plan/model.ts';
import { emptyPlan } from '../../geometry/planfile/empty.ts';
import type { CardAnswers } from '../../src/quick-card/answers.ts';
import { quickPlan } from '../../src/quick-card/make-plan.ts';
import { ANSWERED as FAMILY_ROOM } from '../src/quick-card/answered.ts';
import { type OpenPage, openPage, type PageOptions } from './harness.ts';

const DAY = 86_400_000;
export const PHONE = { viewport: { width: 390, height: 844 }, touch: true } as const;

/** The answers that the walk of the first test gives: only direct sun is left open. */
export const ANSWERED: CardAnswers = {
  ...FAMILY_ROOM,
  inside: ['right'],
  things: [{ kind: 'window', square: '1,-1' }],
  none: ['moving-air', 'heat', 'sump', 'floor-drain', 'washer-dryer'],
  closing: null,
};

export const planOf = (page: Page) => page.evaluate(() => window.__stillspot?.store.getState().plan) as Promise<Plan>;
export const verdictOf = (page: Page) => page.locator('.quick-card__verdict').textContent();
export const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name });
export const shot = (page: Page, name: string) =>
  process.env.STILLSPOT_SHOTS ? page.screenshot({ path: `${process.env.STILLSPOT_SHOTS}/${name}.png` }) : null;

/** Opens the quick card from the open plan, through Plans. */
async function openQuickCard(page: Page): Promise<void> {
  const plans = page.getByRole('dialog', { name: 'Plans' });
  if (!(await plans.isVisible())) await page.getByRole('banner').getByRole('button', { name: 'Plans' }).click();
  await plans
    .getByRole('button', { name: /quick card/i })
    .first()
    .click();
  await page.getByRole('heading', { name: 'Quick card' }).waitFor();
}

/** Opens a new page with the card for these answers, the house to be closed tomorrow. */
export async function openCard(answers: CardAnswers = ANSWERED, options: PageOptions = PHONE): Promise<OpenPage> {
  const open = await openPage(options);
  const closing = new Date(Date.now() + DAY).toISOString();
  const plan = quickPlan(emptyPlan(), { ...answers, closing }, Date.now());
  await open.page.evaluate((made) => window.__stillspot?.store.getState().openPlan(made), plan);
  await openQuickCard(open.page);
  await button(open.page, 'Change the answers').waitFor();
  return open;
}

/** Goes from a first visit to the card, with every question answered. Returns the number of taps. */
export async function walkToCard(page: Page): Promise<number> {
  let taps = 0;
  const tap = async (name: string | RegExp, group?: string | RegExp) => {
    const within = group === undefined ? page : page.getByRole('group', { name: group });
    await within.getByRole('button', { name }).first().tap();
    taps += 1;
  };
  await shot(page, 'quick-0');
  await tap('One kit, one room: quick card');
  await page.getByRole('heading', { name: '1. The leaflet of your kit' }).waitFor();
  await shot(page, 'quick-1');
  await tap('48 to 96 hours');
  await tap(/^5$/);
  await tap('Basement that we live in');
  await tap('Family room');
  await shot(page, 'quick-2');
  await tap('16 ft', 'From the left wall to the right wall: round lengths');
  await tap('20 ft', 'From your wall to the far wall: round lengths');
  await tap(/^Right wall/);
  await shot(page, 'quick-3');
  await tap(/^far wall, 2 of 5 from the left/);
  await tap(/^I looked on this whole floor: no /);
  await shot(page, 'quick-4');
  await tap('A small table that I can move');
  await tap('No', /^Pets/);
  await tap(/evening: /);
  await shot(page, 'quick-5');
  await tap('Make the card');
  await page.getByRole('heading', { name: /measure with a tape/ }).waitFor();
  await shot(page, 'quick-card');
  return taps;
}
