import type { Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { someOf } from '../helpers/how-many.ts';
import { accessibilityFindings, type OpenPage, type PageOptions } from './harness.ts';
import { openPair, openStage, saved } from './samples.ts';

const visit = (page: Page) => page.evaluate(() => window.__stillspot?.store.getState().plan.visit);
const type = async (page: Page, label: string, text: string) => {
  const field = page.getByLabel(label, { exact: true });
  await field.fill(text);
  await field.press('Enter');
};
const check = (page: Page, name: string) => page.locator('.timing__check').filter({ hasText: name });

async function opened(options: PageOptions = {}): Promise<OpenPage> {
  const open = await openPair(options);
  await openStage(open.page, 'Time');
  await open.page.getByLabel('Placed', { exact: true }).waitFor();
  return open;
}

/** The sample's house is in America/New_York: clocks go forward on 8 March 2026, back on 1 November. */
describe('the times of a test, at a desk', () => {
  let open: OpenPage;
  let page: Page;
  beforeAll(async () => {
    open = await opened();
    page = open.page;
  });
  afterAll(() => open.context.close());

  it('the next starts are read on where they were asked for by keyboard, and one is taken', async () => {
    await page.getByRole('button', { name: 'When could it start?' }).focus();
    await page.keyboard.press('Enter');
    const list = page.getByRole('region', { name: 'When it could start' });
    await expect.poll(() => list.evaluate((each) => each === document.activeElement)).toBe(true);
    await page.keyboard.press('Tab');
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await visit(page))?.start ?? '').toMatch(/:(?:00|30):00[+-]/);
    await list
      .getByText(/^\w{3}, \w{3} \d+, \d+:\d\d [ap]m to /)
      .first()
      .waitFor();
  });

  it('a day without a start is named with its date, and says why', async () => {
    // Work on Mondays alone: 48 to 96 h after a start then, no detector can be picked up.
    await page.evaluate(() =>
      window.__stillspot?.store.getState().run((plan) => ({
        ...plan,
        practice: { days: [{ day: 'mon', from: '08:00', to: '17:00' }], daysOff: [] },
      })),
    );
    await page
      .getByRole('region', { name: 'When it could start' })
      .getByText(/^Monday, [A-Z][a-z]+ \d+: the (?:whole pick-up window|house will not)/)
      .first()
      .waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
  });

  it('a minute that the clock shows twice is asked about by keyboard, and nothing is recorded before the answer', async () => {
    await type(page, 'Placed', '2026-10-31T09:00');
    await expect.poll(async () => (await visit(page))?.start).toBe('2026-10-31T09:00:00-04:00');
    await type(page, 'Placed', '2026-11-01T01:30');
    await page
      .getByText('The clocks go back on Sunday, November 1 and show 1:30 am twice. Which one was it?')
      .waitFor();
    await expect.poll(async () => (await visit(page))?.start).toBe('2026-10-31T09:00:00-04:00');
    const [first, second] = [/1:30 am before/, /1:30 am after/].map((name) => page.getByRole('button', { name }));
    await second?.focus();
    await page.keyboard.press('Enter');
    await expect.poll(async () => (await visit(page))?.start).toBe('2026-11-01T01:30:00-05:00');
    await page.getByText('Sunday, November 1, 1:30 am (after the clocks go back)').first().waitFor();
    await expect.poll(() => second?.getAttribute('aria-pressed')).toBe('true');
    // The other instant, an hour earlier: the same time of day, but another instant in the plan.
    await first?.focus();
    await page.keyboard.press('Space');
    await expect.poll(async () => (await visit(page))?.start).toBe('2026-11-01T01:30:00-04:00');
    await expect.poll(() => first?.getAttribute('aria-pressed')).toBe('true');
  });

  it('a minute that the clock skips is refused in words and not shifted; half a date does not wipe out what stands', async () => {
    await type(page, 'Placed', '2026-03-08T02:30');
    await page
      .getByText(/The clocks go forward from 2:00 am to 3:00 am on Sunday, March 8, so 2:30 am never comes/)
      .waitFor();
    await expect.poll(async () => (await visit(page))?.start).toBe('2026-11-01T01:30:00-04:00');
    await type(page, 'Placed', '2026-03-07T18:00');
    await page.getByLabel('Placed', { exact: true }).focus();
    await page.keyboard.press('Delete'); // the month alone
    await page.keyboard.press('Enter');
    await page.getByText('Enter a day and a time').waitFor();
    await expect.poll(async () => (await visit(page))?.start).toBe('2026-03-07T18:00:00-05:00');
    await page.keyboard.press('Escape');
  });

  it('what has not come yet is refused in its field, with where a plan goes; the plan and what was typed stay', async () => {
    const before = await visit(page);
    const stage = page.locator('#stage-time');
    for (const label of ['Picked up', 'House opened again', 'Mailed', 'At the laboratory']) {
      const field = page.getByLabel(label, { exact: true });
      await type(page, label, '2099-01-02T20:30');
      await stage
        .getByText(
          /^Friday, January 2, 2099, 8:30 pm has not come yet: by this device it is .*\. Record it once it has happened\. A planned pick-up is entered under Time, in "Pick-up planned"\.$/,
        )
        .waitFor();
      await expect.poll(() => field.inputValue()).toBe('2099-01-02T20:30');
      expect(await visit(page)).toEqual(before);
      await field.press('Escape');
      await expect.poll(() => stage.getByText('has not come yet').count()).toBe(0);
    }
    // Plans may be in the future, and then their year is shown.
    await type(page, 'Closed-building conditions since', '2099-01-01T08:00');
    await stage.getByText('Thursday, January 1, 2099, 8:00 am', { exact: true }).waitFor();
    await type(page, 'Closed-building conditions since', '2026-03-06T18:00');
  });

  it('a pick-up that is not after the placement is refused in its field, in local time; nothing of it stays', async () => {
    const placed = (await visit(page))?.start;
    await type(page, 'Picked up', '2026-03-07T18:00');
    const refusal = page.getByText(/^The detectors are recorded as placed at Saturday, March 7, .*6:00 pm: a pick-up/);
    await refusal.waitFor();
    await expect.poll(() => refusal.count()).toBe(1);
    expect(await visit(page)).toMatchObject({ start: placed, end: null });
    await page.getByLabel('Picked up', { exact: true }).press('Escape');
    await expect.poll(() => refusal.count()).toBe(0);
  });

  it('a pick-up of a file that lies ahead is only planned: the test is unknown, and says so', async () => {
    const change = (end: string | null) =>
      page.evaluate((at) => {
        window.__stillspot?.store
          .getState()
          .run((plan) => ({ ...plan, visit: { ...plan.visit, start: '2098-12-31T20:30:00-05:00', end: at } }));
      }, end);
    await change('2099-01-02T20:30:00-05:00');
    await page
      .getByRole('region', { name: 'The whole test' })
      .getByText(
        /^Recorded for later than now, and not known before then: "Picked up" \(Friday, January 2, 2099, 8:30 pm\)\./,
      )
      .waitFor();
    await check(page, 'Exposure')
      .getByText(/^Planned exposure of 48 h/)
      .waitFor();
    await page.getByRole('button', { name: 'Undo' }).click();
    await expect.poll(async () => (await visit(page))?.start).toBe('2026-03-07T18:00:00-05:00');
  });

  it('a limit of the kit that cannot be is refused in plain words, in its field', async () => {
    await page.locator('summary', { hasText: 'The kit' }).click();
    const refused = async (label: string, text: string, words: string) => {
      await type(page, label, text);
      await page.locator('#stage-time').getByText(words).waitFor();
      await page.getByLabel(label, { exact: true }).press('Escape');
      await expect.poll(() => page.locator('#stage-time').getByText(words).count()).toBe(0);
    };
    await refused('At least', '-5', '-5 h is too low. Enter 1 to 8760 h.');
    await refused('At least', '', 'Enter a number, 1 to 8760 h.');
    await refused('At least', '97', 'That is more than "At most", 96 h. Correct "At most" first.');
    await refused('At most', '1', 'That is less than "At least", 48 h. Correct "At least" first.');
    await refused('Laboratory must have it within', '-1', '-1 days is too low. Enter 0 to 365 days.');
    // The message line does not mention it.
    expect(await page.locator('.stage-page .message > p:first-child').textContent()).not.toContain('too low');
    await page.locator('summary', { hasText: 'The kit' }).click();
  });

  it('the forecast: nothing is a pass before all of it is noted; 29 mph is clear, 30 mph is not', async () => {
    const weather = check(page, 'Weather');
    await expect.poll(() => weather.textContent()).toContain('Not run');
    await page.locator('summary', { hasText: 'Forecast' }).click();
    await type(page, 'Sustained wind', '29');
    await weather.getByText(/Not noted yet: whether a severe storm was forecast/).waitFor();
    await expect.poll(() => weather.getAttribute('data-verdict')).toBe('unknown');
    await page.getByLabel('Severe storm').selectOption('no');
    await type(page, 'Where it was read', 'Valley weather office');
    await type(page, 'Looked up', '2026-03-07T08:00');
    await weather.getByText(/sustained wind of 29 mph, no severe storm\. Looked up 10 h before the start/).waitFor();
    await expect.poll(() => weather.getAttribute('data-verdict')).toBe('clear');
    await type(page, 'Sustained wind', '30');
    await expect.poll(() => weather.getAttribute('data-verdict')).toBe('blocked');
    await expect.poll(async () => (await visit(page))?.forecast?.sustained).toBeCloseTo(48.28, 2);
    await type(page, 'Sustained wind', '12 mph');
    await page.getByLabel('Severe storm').selectOption('yes');
    await expect.poll(() => weather.getAttribute('data-verdict')).toBe('blocked');
    await page.getByLabel('Severe storm').selectOption('no');
    await expect.poll(() => weather.getAttribute('data-verdict')).toBe('clear');
  });

  it('what is left of the radon, with the limit of the laboratory, the last moment to mail, and what was recorded', async () => {
    const decay = page.getByRole('region', { name: 'Radon left at the laboratory' });
    await decay.getByText(/If it is picked up Monday, March 9, 7:00 pm, the first possible moment/).waitFor();
    await type(page, 'Picked up', '2026-03-10T09:00');
    await decay.getByText('At the laboratory by Sunday, March 15, 9:00 am: 40% left.').waitFor();
    await decay.getByText('Mail by Friday, March 13, 9:00 am: 58% left.').waitFor();
    await type(page, 'Mailed', '2026-03-10T21:00');
    await decay.getByText('Mailed Tuesday, March 10, 9:00 pm: 91% left.').waitFor();
    await expect.poll(() => decay.locator('.decay__point').count()).toBe(3);
    // The laboratory cannot have it before the pick-up: no pass.
    await type(page, 'At the laboratory', '2026-03-09T09:00');
    await expect.poll(() => check(page, 'Laboratory').getAttribute('data-verdict')).toBe('unknown');
    await type(page, 'At the laboratory', '2026-03-12T09:00');
    await expect.poll(() => check(page, 'Laboratory').getAttribute('data-verdict')).toBe('clear');
    await page.locator('summary', { hasText: 'The kit' }).click();
    await page.getByLabel('What it is').selectOption('monitor');
    await decay.waitFor({ state: 'detached' });
    await expect.poll(() => page.getByLabel('Mailed', { exact: true }).count()).toBe(0);
    await page.getByLabel('What it is').selectOption('passive');
    await decay.waitFor();
  });

  it('the visit in time is a list in words too: each limit with its times and its why', async () => {
    const bars = page.getByRole('region', { name: 'Timeline of the visit' }).getByRole('listitem');
    const words = (await bars.allTextContents()).join('\n');
    expect(words).toContain('Closed before, required 12 h');
    expect(words).toContain('Closed for 12 h before a test of less than 96 h.');
    expect(words).toContain('Mon, Mar 9, 7:00 pm to Wed, Mar 11, 7:00 pmThe kit requires 48 to 96 h.');
    expect(words).toContain('The laboratory must have it within 5 days of the pick-up.');
  });

  it.each(someOf(['sun', 'paper', 'dark'], 1))(
    'axe finds nothing in the colors %s, with all of it open',
    async (theme) => {
      await page.getByLabel('Colors').selectOption(theme);
      expect(await accessibilityFindings(page)).toEqual([]);
    },
  );

  it('the shelf says what is overdue, by the hours of the kit', async () => {
    await type(page, 'Picked up', '');
    await saved(page);
    await page.getByRole('banner').getByRole('button', { name: 'Plans' }).click();
    await page.locator('.plan-card', { hasText: 'Overdue: past its window since Wed, Mar 11, 7:00 pm' }).waitFor();
    await page.getByLabel('Sort by', { exact: true }).selectOption('due');
    await page.getByRole('heading', { name: /^Overdue/ }).waitFor();
    open.expectNoTroubles();
  });
});

describe('the times of a test, by finger on a tablet', () => {
  let open: OpenPage;
  let page: Page;
  beforeAll(async () => {
    open = await opened({ touch: true, viewport: { width: 1024, height: 768 } });
    page = open.page;
  });
  afterAll(() => open.context.close());

  it('"Now" writes down the minute, and what comes next is said', async () => {
    await page.getByRole('button', { name: 'Placed: now' }).tap();
    await expect.poll(async () => (await visit(page))?.start).toMatch(/:00[+-]\d\d:\d\d$/);
    const start = (await visit(page))?.start ?? '';
    expect(Math.abs(Date.parse(start) - Date.now())).toBeLessThan(3 * 60_000);
    await page.getByRole('region', { name: 'Radon left at the laboratory' }).waitFor();
  });

  it('"Now" asks before it writes over a time that is recorded; a planned pick-up is no pick-up', async () => {
    const field = page.getByLabel('Placed', { exact: true });
    await field.fill('2026-03-07T18:00');
    await field.press('Enter');
    const start = (await visit(page))?.start;
    await page.getByRole('button', { name: 'Placed: now' }).tap();
    await page.getByText(/Saturday, March 7, 6:00 pm is recorded\. Write .* in its place\?/).waitFor();
    expect((await visit(page))?.start).toBe(start);
    await page.getByRole('button', { name: 'Placed: keep what is recorded' }).tap();
    expect((await visit(page))?.start).toBe(start);
    await page.getByLabel('Pick-up planned', { exact: true }).fill('2026-03-10T09:00');
    await page.getByLabel('Pick-up planned', { exact: true }).press('Enter');
    await page
      .locator('#stage-time')
      .getByText(/Planned exposure of 62 h/)
      .waitFor();
    expect((await visit(page))?.end ?? null).toBeNull();
    // A second press hits the same button: the planned time stays where it is, to be read.
    const planned = page.getByLabel('Pick-up planned', { exact: true });
    const button = page.getByRole('button', { name: 'Picked up: now' });
    await button.scrollIntoViewIfNeeded();
    const before = await button.boundingBox();
    await button.tap();
    await expect.poll(async () => (await visit(page))?.end ?? null).not.toBeNull();
    expect(await button.boundingBox()).toEqual(before);
    expect([await planned.isEditable(), await planned.inputValue()]).toEqual([false, '2026-03-10T09:00']);
    await page.getByRole('button', { name: 'Undo' }).tap();
    await planned.fill('');
    await planned.press('Enter');
    await page.getByRole('button', { name: 'Placed: now' }).tap();
    await page.getByRole('button', { name: 'Placed: write now in its place' }).tap();
    await expect.poll(async () => (await visit(page))?.start).not.toBe(start);
  });

  it('nothing of the stage reaches beyond its column, and a finger finds every button', async () => {
    // The picture ends a minute after a midnight: its line is at the very edge, whatever the hour of this run.
    await page.evaluate(() => {
      const change = { start: '2026-05-04T00:01:00-04:00', end: null, plannedEnd: null };
      window.__stillspot?.store.getState().run((plan) => ({ ...plan, visit: { ...plan.visit, ...change } }));
    });
    await expect.poll(async () => (await visit(page))?.start).toBe('2026-05-04T00:01:00-04:00');
    await page.locator('summary', { hasText: 'Forecast' }).tap();
    await page.locator('summary', { hasText: 'The kit' }).tap();
    const found = await page.evaluate(() => {
      const stage = document.querySelector('#stage-time');
      const right = stage?.getBoundingClientRect().right ?? 0;
      const all = [...(stage?.querySelectorAll('*') ?? [])].map(
        (each) => [each, each.getBoundingClientRect()] as const,
      );
      return {
        beyond: all.filter(([, box]) => box.right > right + 0.5).map(([each]) => each.outerHTML.slice(0, 80)),
        small: all
          .filter(
            ([each, { height }]) =>
              each.matches('button, input:not([type=checkbox]), select, summary, label:has(input)') &&
              height > 0 &&
              height < 24,
          )
          .map(([each]) => each.outerHTML.slice(0, 80)),
        low: all
          .filter(([each, { height }]) => each.matches('.instant__now, .instant input') && height < 44)
          .map(([each]) => each.outerHTML.slice(0, 80)),
      };
    });
    expect(found).toEqual({ beyond: [], small: [], low: [] });
    open.expectNoTroubles();
  });
});
