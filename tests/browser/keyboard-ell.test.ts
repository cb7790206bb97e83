import type { Page } from 'playwright-core';
import { beforeAll, describe, expect, it } from 'vitest';
import { wallLengths } from '../../geometry/dimension/wall-lengths.ts';
import { buildLevel } from '../../geometry/level/build-level.ts';
import type { Editor } from './editor.ts';
import { download } from './harness.ts';
import { expectByKeyboard, type KeyHand, openByKeyboard } from './key-hand.ts';

/** Greatest number of key presses and typed fields in the whole job, including the Tab presses to each field. */
const MOST_ACTIONS = 360;
/** Greatest number of actions added later: the furniture, every question about the house, the paper and the file. */
const MOST_MORE = 120;
/** Greatest number of scrolls: on pages longer than the screen, the browser scrolls the focused control into view. */
const MOST_SCROLLS = 32;

let opened: Awaited<ReturnType<typeof openByKeyboard>>;
let page: Page;
let editor: Editor;
let hand: KeyHand;
/** Number of actions for the furniture and the house. */
let more = 0;
beforeAll(async () => {
  opened = await openByKeyboard();
  ({ page, editor, hand } = opened);
});

const plan = () => page.evaluate(() => window.__stillspot?.store.getState().plan);
const right = 'Control+ArrowRight';
const left = 'Control+ArrowLeft';
const up = 'Control+ArrowUp';
const down = 'Control+ArrowDown';

/** The same basement as in walk-ell.test.ts: 34 ft 2 in by 26 ft 5 in outside, walls of 10 in, two partitions. */
describe('an L-shaped basement by keyboard alone, from an empty page to the report', () => {
  it('is drawn to what was taped: outside the outline, inside the partitions', async () => {
    await hand.keys('to the plan', 'Tab', 'Enter');
    await hand.keys('wall after wall', '1', '2');
    await hand.times('to the upper left', left, 6);
    await hand.times('to the upper left', up, 4);
    await hand.keys('the outer corner', 'Enter', right, '3', 'Tab', 'Tab');
    await hand.type('thickness', '10');
    await hand.keys('taped outside', 'Tab', 'Tab', 'Tab', 'Tab', 'Enter', 'Control+a');
    await hand.type('a wall', '34 2');
    for (const [toward, length] of [
      [down, '16 5'],
      [left, '12'],
      [down, '10'],
      [left, '22 2'],
    ] as const) {
      await hand.keys('toward', toward);
      await hand.type('a wall', length);
    }
    await hand.keys('closes it', 'c');

    await hand.keys('a partition', '1', '2', 'ArrowRight', up, up, up, 'Enter', right, '2');
    await hand.keys('taped inside', 'Tab', 'Tab', 'Tab', 'Enter', 'Control+a');
    await hand.type('to the wall', '20 6');
    await hand.type('from the upper wall', '18');
    await hand.keys('a partition', '1', '2');
    await hand.times('up to the first one', up, 5);
    await hand.times('along it', left, 9);
    await hand.keys('begins', 'Enter', up);
    await hand.type('to the upper wall', '18');
    await hand.type('from the left wall', '12');

    const level = await editor.level();
    const model = buildLevel(level);
    const inches = (by: 'inside' | 'outside', walls: typeof level.walls) =>
      walls.map((wall) => Math.round((wallLengths(model, wall)[by] / 25.4) * 100) / 100);
    const outline = inches('outside', level.walls.slice(0, 6));
    expect(outline.sort((a, b) => a - b)).toEqual([120, 144, 197, 266, 317, 410]);
    expect(inches('inside', level.walls.slice(6, 7))).toEqual([246]);
    expect(model.rooms).toHaveLength(3);
  });

  it('its rooms are named one after another, each by a letter', async () => {
    await hand.keys('lets go', 'Escape');
    await hand.times('into the left room', left, 4);
    await hand.times('into the left room', down, 4);
    await hand.keys('asks what it is used for', 'Enter', 'Enter');
    await hand.keys('utility room', 'u', 'u', 'Enter');
    await hand.keys('bedroom', 'b', 'Enter');
    const { rooms } = await editor.level();
    expect(buildLevel(await editor.level()).notices).toEqual([]);
    expect(rooms.map(({ use }) => use).sort()).toEqual(['bedroom', 'family-room', 'utility']);
    expect(await page.evaluate(() => document.activeElement?.id)).toBe('sheet-of-plan');
  });

  it('a window and a sump pit are put in, and a pair of detectors is placed', async () => {
    await hand.keys('a window', '2', '2');
    await hand.times('to the right wall', right, 3);
    await hand.keys('puts it in', 'Enter', 'Escape', 'Escape');
    expect((await editor.level()).openings.map(({ kind }) => kind)).toEqual(['window']);
    await hand.keys('a sump pit', '6', '1');
    await hand.times('off the wall', left, 2);
    await hand.keys('sets it', 'Enter', 'Escape', 'Escape');
    expect((await editor.level()).fixtures.map(({ kind }) => kind)).toEqual(['sump-pit']);
    await hand.toStage('Place');
    await hand.keys('to the plan', 'F6', 'F6');
    await hand.keys('a detector', '8', '1');
    await hand.times('well away from it', left, 12);
    await hand.keys('places it', 'Enter');
    await expect.poll(async () => (await editor.level()).detectors.length).toBe(1);
    await hand.keys('lets its length be, selects it', 'Escape', 'Enter');
    await hand.keys('to the panel', 'Shift+F6');
    await hand.tabTo(/companion/i);
    await hand.keys('a second one beside it', 'Enter');
    await expect
      .poll(async () => (await editor.level()).detectors.map(({ pair }) => pair !== null))
      .toEqual([true, true]);
  });

  it('the room is furnished: what stands in it is set where the tape says', async () => {
    const before = hand.actions.length;
    await hand.toStage('Draw');
    await hand.keys('to the plan', 'F6', 'F6');
    for (const [what, answer] of [
      ['a desk', '1'],
      ['a table', '2'],
    ] as const) {
      await hand.keys(what, '7', answer);
      await hand.times('aside', up, 2);
      await hand.keys('sets it', 'Enter');
      await hand.type('from the wall', '2 6');
      await hand.keys('leaves the other length', 'Escape', 'Escape');
    }
    const { objects } = await editor.level();
    expect(objects.map(({ name }) => name)).toEqual(['Desk', 'Table']);
    more += hand.actions.length - before;
  });

  it('the property, the times and both visits are written', async () => {
    await hand.toStage('Property');
    await hand.keys('to the page', 'F6');
    await hand.tabTo(/Why it is tested/);
    await hand.keys('own household', 'ArrowDown');
    await hand.tabTo(/People on /);
    await hand.keys('lived in', 'ArrowDown');
    await hand.toStage('Time');
    await hand.keys('to the page', 'F6');
    await hand.tabTo(/Closed-building conditions since: now/);
    await hand.keys('since now', 'Enter');
    await page.clock.setFixedTime(Date.now() + 13 * 3_600_000);
    await hand.keys('to the bar of the stages', 'F6');
    await hand.tabTo(/^Visit/);
    await hand.keys('to the visits', 'Enter');
    await hand.tabTo(/Placed now/);
    await hand.keys('placed', 'Enter');
    for (const [label, serial] of [
      ['A1', 'C-1001'],
      ['A2', 'C-1002'],
    ] as const) {
      await hand.tabTo(new RegExp(`^${label}`));
      await hand.type('serial number', serial);
    }
    await hand.tabTo(/^Placed by/);
    await hand.type('placed by', 'R. Alder');
    await page.clock.setFixedTime(Date.now() + (13 + 49) * 3_600_000);
    const conditions = await page.locator('.visit-page .condition__answers').count();
    for (let condition = 0; condition < conditions; condition++) {
      await hand.tabTo(/^Met$/);
      await hand.keys('met', 'Enter', 'Tab');
    }
    await hand.keys('to the head of the page', 'F6', 'F6');
    await hand.tabTo(/^Pick-up/);
    await hand.keys('pick-up', 'Enter');
    await hand.tabTo(/^Picked up by/);
    await hand.type('picked up by', 'R. Alder');
    await hand.tabTo(/^Picked up now/);
    await hand.keys('picked up', 'Enter');
    for (let detector = 0; detector < 2; detector++) {
      await hand.tabTo(/^As it was/);
      await hand.keys('as it was', 'Enter', 'Tab');
    }
    for (const act of ['Sealed now', 'Mailed now']) {
      await hand.tabTo(new RegExp(`^${act}`));
      await hand.keys(act, 'Enter');
    }
    const done = await plan();
    expect(done?.visit.posted).not.toBeNull();
    expect(done?.log?.map(({ serial, tampering }) => [serial, tampering])).toEqual([
      ['C-1001', 'none'],
      ['C-1002', 'none'],
    ]);
  });

  it('every question about the house is answered on its page', async () => {
    const before = hand.actions.length;
    await hand.toStage('House');
    await hand.keys('to the page', 'F6');
    await hand.tabTo(/^Inspected by/);
    await hand.type('inspected by', 'R. Alder');
    await hand.tabTo(/^Time of the inspection: now/);
    await hand.keys('now', 'Enter');
    const questions = await page.locator('.stage-page').getByRole('button', { name: 'Met', exact: true }).count();
    for (let question = 0; question < questions; question++) {
      await hand.tabTo(/^Met$/);
      await hand.keys('met', 'Enter', 'Tab');
    }
    const conditions = (await plan())?.conditions ?? [];
    expect(conditions.map(({ state, by }) => [state, by])).toEqual(Array(questions).fill(['kept', 'R. Alder']));
    expect(await page.locator('.house-whole__word > span').textContent()).toBe('The house: Met');
    more += hand.actions.length - before;
  });

  it('the results are written, and the report is looked at', async () => {
    await hand.toStage('Results');
    await hand.keys('to the page', 'F6');
    for (const label of ['A1', 'A2']) {
      await hand.tabTo(new RegExp(`^Result of ${label}`));
      await hand.type('result', '3.2');
    }
    expect((await plan())?.readings.map(({ value }) => value)).toEqual([3.2, 3.2]);
    await hand.toStage('Plan sheet');
    await hand.keys('to the page', 'F6');
    await hand.tabTo(/^Preview the report/);
    await hand.keys('looks at it', 'Enter');
    await page.getByRole('img', { name: /^Sheet 1 of / }).waitFor();
    await hand.tabTo(/^Print/, 'Shift+Tab');
    await page.evaluate(() => {
      window.print = () => document.documentElement.setAttribute('data-printed', 'yes');
    });
    await hand.keys('prints it', 'Enter');
    await expect.poll(() => page.locator('html').getAttribute('data-printed')).toBe('yes');
    await hand.keys('back', 'Escape');
    expect(await page.evaluate(() => document.activeElement?.textContent)).toBe('Preview the report');
    const { bytes } = await download(page, () => hand.keys('saves the plan', 'Control+s'));
    expect(JSON.parse(bytes.toString('utf8'))).toMatchObject({ levels: [{ objects: [{ name: 'Desk' }, {}] }] });
  });

  it('no focus strayed or hid, nothing moved or was refused, and it took no more actions than were counted', () => {
    expect(more).toBeLessThanOrEqual(MOST_MORE);
    expectByKeyboard(opened, { actions: MOST_ACTIONS + MOST_MORE, scrolls: MOST_SCROLLS });
  });
});
