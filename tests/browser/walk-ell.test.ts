import { describe, expect, it } from 'vitest';
import { wallLengths } from '../../geometry/dimension/wall-lengths.ts';
import { buildLevel } from '../../geometry/level/build-level.ts';
import type { Level, XY } from '../../geometry/plan/model.ts';
import { someOf } from '../helpers/how-many.ts';
import { editorOf } from './editor.ts';
import { openPage } from './harness.ts';
import { keptSetting } from './samples.ts';
import { Walker } from './walker.ts';

const FT = 304.8;
const IN = 25.4;
/** Greatest number of scrolls of the column of questions, which is longer than a small screen. */
const MOST_SCROLLS = 8;
/** Position of the outer corner at the upper left, mm. */
const O: XY = [1016, 1016];
const at = (feet: number, down: number): XY => [O[0] + feet * FT, O[1] + down * FT];

/**
 * An L-shaped basement, 34 ft 2 in by 26 ft 5 in outside, walls of 10 in, two partitions, three rooms, and the items in it. Every wall
 * is taped outside, the partitions inside.
 */
async function drawEll(
  walker: Walker,
  page: Awaited<ReturnType<typeof openPage>>['page'],
  byFinger: boolean,
): Promise<void> {
  const button = (name: string) => page.getByRole('button', { name, exact: true });
  const answer = (name: string) => page.locator('.answers').getByRole('button', { name }).first();
  const ask = async (name: string) => {
    const panel = page.getByRole('button', { name: 'Draw panel' });
    if (await panel.isVisible()) await walker.click(panel, 'the panel');
    await walker.click(button(name), name);
  };
  const take = (name: string) => walker.click(answer(name), name);
  /** Draws a wall in a direction: pointed at by the mouse and typed, or placed by a finger and corrected. */
  const leg = async (toward: XY, text: string) => {
    if (byFinger) {
      await walker.press(toward, 'the next corner');
      await walker.asked();
    } else await walker.aim(toward);
    await walker.type(text, 'a wall');
  };
  const put = async (what: string, where: XY, ...lengths: readonly string[]) => {
    await walker.press(where, what);
    for (const [i, text] of lengths.entries())
      await walker.length(text, what, i < lengths.length - 1 ? 'Tab' : 'Enter');
  };

  await take('Wall after wall');
  await walker.press(O, 'the outer corner');
  if (byFinger) {
    await walker.press(at(30, 0), 'the next corner');
    await walker.asked();
  } else {
    await walker.aim(at(30, 0));
    await walker.key('3', 'begins to type');
  }
  await walker.click(button('Outside'), 'taped outside');
  await walker.click(page.getByLabel('Thickness'), 'thickness');
  await walker.type('10', 'thickness');
  await walker.type(byFinger ? '34 2' : '4 2', 'a wall');
  await leg(at(34.17, 16), '16 5');
  await leg(at(22, 16.42), '12');
  await leg(at(22.17, 26), '10');
  await leg(at(1, 26.42), '22 2');
  if (byFinger) await walker.press(O, 'the first corner closes it');
  else await walker.key('c', 'closes it');

  await take('Wall after wall');
  await walker.press(at(0.4, 19), 'a partition begins');
  if (byFinger) await walker.press(at(22.2, 19), 'and ends at the wall');
  else {
    await walker.aim(at(15, 19));
    await walker.key('2', 'begins to type');
    await walker.click(button('Inside'), 'taped inside');
    await walker.type('0 6', 'to the wall');
  }
  if (byFinger) {
    await walker.asked();
    await walker.click(button('Inside'), 'taped inside');
  }
  await walker.length('18', 'from the upper wall');
  await take('Wall after wall');
  await walker.press(at(12.5, 0.4), 'a partition begins');
  await walker.press(at(12.5, 18.9), 'and ends');
  await walker.length('12', 'from the left wall');

  const [room] = buildLevel(await levelOf(page)).rooms;
  if (!room) throw new Error('no room is drawn');
  await walker.press(room.labelPoint, 'the words in the room');
  // Each answer leads to the next room.
  for (const use of ['Family room', 'Bedroom', 'Utility room']) {
    await walker.click(page.getByRole('region', { name: /used for/ }).getByRole('button', { name: use }), use);
  }

  await ask('What opens it?');
  await take('Window');
  await put('window', at(5, 0.4), '4', '36 x 56 x 80');
  await put('window', at(22, 0.4), '6');
  await put('window', at(33.8, 8), '5');
  await put('window', at(0.4, 22), '3');
  await take('Door');
  await put('door', at(8, 26), '6', '36');
  await put('door', at(13.1, 8), '5', '30');
  await put('door', at(8, 19), '5');

  await ask('What heats?');
  await take('Furnace');
  await put('furnace', at(18, 22.5), '3 x 2', '22 x 28');
  await take('Water heater');
  await put('water heater', at(15, 22.5), '6 x 2');

  await ask('What is wet or open to the soil?');
  await take('Sump pit');
  await put('sump', at(20.5, 25), '9 in x 9 in');
  await take('Floor drain');
  await put('drain', at(11, 22), '10 x 3');
  await take('Washer');
  await put('washer', at(3, 24.2), '2 x 6 in');

  await ask('What moves air?');
  await take('Supply register');
  await put('register', at(6, 1.4), '5 x 1', '12 x 4', '90 x 88');
  await take('Supply register');
  await put('register', at(20, 1.4), '6 x 1');
  await take('Return grille');
  await put('grille', at(13.3, 13), '3');

  await ask('What stands here?');
  await take('Desk');
  await put('desk', at(5, 8), '3 x 8', '60 x 30');
  await take('Stairs');
  await put('stairs', at(28, 10), '4 x 1');

  await walker.click(button('Place'), 'Place');
  const panel = page.getByRole('button', { name: 'Place panel' });
  if (await panel.isVisible()) await walker.click(panel, 'the panel');
  await take('Detector');
  await put('detector', at(5.5, 8.5), '4 x 9');
  if (await panel.isVisible()) await walker.click(panel, 'the panel');
  await walker.click(page.getByRole('button', { name: /companion/ }), 'a second one beside it');
  await walker.length('4 9 x 9', 'from the walls');
}

async function levelOf(page: Awaited<ReturnType<typeof openPage>>['page']): Promise<Level> {
  const found = await page.evaluate(() => window.__stillspot?.store.getState().plan.levels[0]);
  if (!found) throw new Error('the page has no level');
  return found;
}

/** Expects the typed lengths in the plan: the outline outside, the partitions inside, three rooms and no gap. */
function expectDrawn(level: Level): void {
  const model = buildLevel(level);
  const inches = (by: 'inside' | 'outside', walls: Level['walls']) =>
    walls.map((wall) => Math.round((wallLengths(model, wall)[by] / IN) * 100) / 100);
  const exterior = level.walls.slice(0, 6);
  expect(exterior.map(({ thickness }) => Math.round(thickness))).toEqual([254, 254, 254, 254, 254, 254]);
  expect(inches('outside', exterior).sort((a, b) => a - b)).toEqual([120, 144, 197, 266, 317, 410]);
  expect(inches('inside', level.walls.slice(6, 7))).toEqual([246]);
  expect(model.rooms.map(({ label }) => label?.use).sort()).toEqual(['bedroom', 'family-room', 'utility']);
  expect(model.notices).toEqual([]);
  expect(level.openings).toHaveLength(7);
  expect(level.fixtures.length + level.objects.length).toBe(10);
  expect(level.detectors.map(({ pair }) => pair !== null)).toEqual([true, true]);
}

const WAYS = [
  { how: 'by finger, upright', byFinger: true, most: 95, viewport: { width: 820, height: 1180 } },
  { how: 'by finger', byFinger: true, most: 95, viewport: { width: 1024, height: 768 } },
  { how: 'by mouse and keys', byFinger: false, most: 95, viewport: { width: 1440, height: 900 } },
] as const;

describe('an L-shaped basement taped outside, from an empty page', () => {
  it.each(someOf(WAYS, 1))(
    'is drawn $how in at most $most actions, and nothing is refused',
    async ({ byFinger, most, viewport }) => {
      const { page, expectNoTroubles } = await openPage({ viewport, touch: byFinger });
      await editorOf(page);
      const walker = await Walker.on(page, { byFinger });
      await drawEll(walker, page, byFinger);
      const { actions, corrections, scrolls, seconds, shifted } = walker;
      console.log(
        `${actions.length} actions, about ${Math.round(seconds)} s of a person's time; ${scrolls} scrolls, ${corrections.length} refused, ${shifted.length} moved`,
      );
      expect(corrections).toEqual([]);
      expect(shifted).toEqual([]);
      expect(scrolls).toBeLessThanOrEqual(MOST_SCROLLS);
      expectDrawn(await levelOf(page));
      expect(actions.length).toBeLessThanOrEqual(most);
      if (!byFinger) await keptSetting(page, 'wall-settings', { by: 'inside', outer: 254, partition: 114.3 });
      expectNoTroubles();
    },
  );
});
