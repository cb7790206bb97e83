import type { Locator, Page } from 'playwright-core';
import { describe, expect, it } from 'vitest';
import { someOf } from '../helpers/how-many.ts';
import { announcerReady, settled } from './harness.ts';
import { broughtIntoView, pressedShift } from './pressed.ts';
import { openPair, stageButton } from './samples.ts';

const WAYS = [
  { how: 'by finger', touch: true, most: 40, viewport: { width: 1024, height: 768 } },
  { how: 'by mouse', touch: false, most: 40, viewport: { width: 1440, height: 900 } },
  { how: 'by finger, upright', touch: true, most: 40, viewport: { width: 820, height: 1180 } },
] as const;

/** A user who does a job on the pages of the stages. All actions are counted. */
class Worker {
  actions = 0;
  /** Number of presses for which the page had to be scrolled first. */
  scrolls = 0;
  readonly refused: string[] = [];
  readonly shifted: string[] = [];
  private readonly page: Page;
  private readonly touch: boolean;

  constructor(page: Page, touch: boolean) {
    this.page = page;
    this.touch = touch;
  }

  /** Presses a button, which may not move away. */
  async press(target: Locator): Promise<void> {
    await this.bringIntoView(target);
    const name = await target.textContent();
    const moved = await pressedShift(this.page, target, () => (this.touch ? target.tap() : target.click()));
    await this.done();
    if (moved > 0) this.shifted.push(`${name}: ${moved} px`);
  }

  async type(target: Locator, text: string): Promise<void> {
    await this.bringIntoView(target);
    await (this.touch ? target.tap() : target.click());
    await this.page.keyboard.type(text);
    await this.page.keyboard.press('Enter');
    await this.done();
  }

  async choose(target: Locator, value: string): Promise<void> {
    await this.bringIntoView(target);
    await target.selectOption(value);
    await this.done();
  }

  private async bringIntoView(target: Locator): Promise<void> {
    if (await broughtIntoView(this.page, target)) this.scrolls += 1;
  }

  private async done(): Promise<void> {
    this.actions += 1;
    await settled(this.page);
    const invalid = this.page.locator('[aria-invalid="true"]');
    if ((await invalid.count()) > 0) this.refused.push((await invalid.first().getAttribute('id')) ?? 'a field');
  }
}

/** Goes from the drawn basement with its pair to the printed report. */
async function doJob(page: Page, worker: Worker): Promise<void> {
  const button = (name: string | RegExp) =>
    page.getByRole('button', typeof name === 'string' ? { name, exact: true } : { name }).first();
  const field = (name: string) => page.locator('.stage-page, .visit-page').getByLabel(name, { exact: true }).first();
  const stage = (name: string) => worker.press(stageButton(page, name));

  await stage('Property');
  await worker.choose(page.getByLabel('Why it is tested', { exact: true }), 'own-household');
  await worker.choose(page.getByLabel(/^People on /), 'lived-in');
  await stage('Time');
  await worker.press(button('Closed-building conditions since: now'));
  await page.clock.setFixedTime(Date.now() + 13 * 3_600_000);

  await worker.press(button('Visit'));
  await worker.press(button('Placed now'));
  for (const [name, serial] of [
    ['A1', 'C-1001'],
    ['A2', 'C-1002'],
  ] as const)
    await worker.type(field(name), serial);
  await worker.type(field('Placed by'), 'R. Alder');
  for (const group of await page.locator('.visit-page .condition__answers').all())
    await worker.press(group.getByRole('button', { name: 'Met', exact: true }));
  await page.clock.setFixedTime(Date.now() + (13 + 49) * 3_600_000);

  await worker.press(button('Pick-up'));
  await worker.type(field('Picked up by'), 'R. Alder');
  await worker.press(button('Picked up now'));
  for (const name of ['A1', 'A2'])
    await worker.press(
      page.getByRole('group', { name, exact: true }).getByRole('button', { name: 'As it was', exact: true }),
    );
  for (const name of ['Sealed now', 'Mailed now']) await worker.press(button(name));

  await stage('Results');
  for (const name of ['Result of A1', 'Result of A2']) await worker.type(field(name), '3.2');
  await stage('Plan sheet');
  await worker.press(button('Preview the report'));
  await page.keyboard.press('Escape');
}

describe('the job on the pages of the stages, from the drawn plan to the report', () => {
  it.each(someOf(WAYS, 1))(
    '$how: nothing is refused, nothing that is pressed moves',
    async ({ how, touch, most, viewport }) => {
      const { page, expectNoTroubles } = await openPair({ viewport, touch });
      await announcerReady(page);
      const worker = new Worker(page, touch);
      await doJob(page, worker);
      console.log(
        `${how}: ${worker.actions} actions, ${worker.scrolls} scrolls, ${worker.refused.length} refused, ${worker.shifted.length} moved`,
      );
      const plan = await page.evaluate(() => window.__stillspot?.store.getState().plan);
      expect(plan?.visit.posted).not.toBeNull();
      expect(plan?.log?.map(({ serial, tampering }) => [serial, tampering])).toEqual([
        ['C-1001', 'none'],
        ['C-1002', 'none'],
      ]);
      expect(plan?.readings.map(({ value }) => value)).toEqual([3.2, 3.2]);
      expect(worker.refused).toEqual([]);
      expect(worker.shifted).toEqual([]);
      expect(worker.actions).toBeLessThanOrEqual(most);
      expectNoTroubles();
    },
  );
});
