import { beforeAll, describe, expect, it } from 'vitest';
import type { Plan, XY } from '../../geometry/plan/model.ts';
import { type Editor, editorOf } from './editor.ts';
import { accessibilityFindings, type OpenPage, openPage } from './harness.ts';

const FT = 304.8;
const IN = 25.4;

/** By finger, a corner is placed by a press and then corrected to the taped length. */
it('by touch: length and turn of the wall that was set, no keyboard but the one on the screen', async () => {
  const { page, context, expectNoTroubles } = await openPage({ viewport: { width: 1024, height: 768 }, touch: true });
  const editor = await editorOf(page);
  await page.getByRole('button', { name: 'Wall after wall' }).first().tap();
  for (const at of [
    [1000, 1000],
    [4000, 1000],
    [4100, 3000],
  ] as const) {
    const { x, y } = await editor.at(at);
    await page.touchscreen.tap(x, y);
  }
  await page.getByRole('button', { name: 'Type the length of this wall' }).tap();
  await page.getByRole('textbox', { name: 'Length', exact: true }).fill('6 ft');
  await page.getByLabel('Turns by').fill('60 left');
  await page.keyboard.press('Enter');
  const corners = await page.evaluate(() => window.__stillspot?.store.getState().chain.corners ?? []);
  const [, b, c] = corners;
  expect(corners).toHaveLength(3);
  // Six feet, turned 60° to the left of the wall to the right: up the page.
  expect((c?.[0] ?? 0) - (b?.[0] ?? 0)).toBeCloseTo(3 * FT, 1);
  expect((c?.[1] ?? 0) - (b?.[1] ?? 0)).toBeCloseTo(-3 * FT * Math.sqrt(3), 1);
  expectNoTroubles();
  await context.close();
});

/** A level drawn and corrected by taped lengths, by keyboard and by field. */
describe('drawing by numbers', () => {
  let open: OpenPage;
  let editor: Editor;

  beforeAll(async () => {
    open = await openPage();
    editor = await editorOf(open.page);
  });

  const keys = async (...pressed: readonly string[]) => {
    for (const key of pressed) await open.page.keyboard.press(key);
  };
  /** An arrow key for the direction, the length as typed, Enter. */
  const wall = async (arrow: string, length: string) => {
    await keys(arrow);
    await open.page.keyboard.type(length);
    await keys('Enter');
  };
  const begin = async () => {
    await open.page.evaluate(() => window.__stillspot?.store.getState().newPlan());
    await keys('1', '2', 'ArrowRight', 'Enter'); // What closes the room? Wall after wall; the first corner at the crosshair.
  };
  const corners = () => open.page.evaluate(() => window.__stillspot?.store.getState().chain.corners ?? []);
  const relative = async (): Promise<readonly XY[]> => {
    const all = await corners();
    const [x0, y0] = all[0] ?? [0, 0];
    return all.map(([x, y]): XY => [Math.round((x - x0) * 100) / 100, Math.round((y - y0) * 100) / 100]);
  };
  const field = (name: string) => open.page.getByRole('textbox', { name, exact: true });
  const fill = async (name: string, text: string) => {
    await field(name).fill(text);
    await keys('Enter');
  };
  const select = (id: string) => open.page.evaluate((each) => window.__stillspot?.store.getState().select([each]), id);
  const said = () => open.page.locator('.message > p').first().textContent();
  const lengths = async () =>
    (await editor.level()).walls.map(({ from, to }) => Math.round(Math.hypot(to[0] - from[0], to[1] - from[1])));

  it('a chain by keyboard alone: arrows, lengths in every form, a turn with its side', async () => {
    await begin();
    await wall('ArrowRight', `12'6"`);
    await wall('ArrowDown', '12 6 1/2');
    await wall('ArrowLeft', '3.81m');
    const run = await relative();
    expect(run[1]).toEqual([3810, 0]);
    expect(run[2]).toEqual([3810, 3822.7]);
    expect(run[3]).toEqual([0, 3822.7]);
    // Continuing from the wall to the left, 45° to the right of it: up and to the left.
    await keys('<');
    await open.page.keyboard.type('45');
    await keys('Enter');
    await open.page.keyboard.type('3 ft');
    await expect
      .poll(() => open.page.locator('#length-box-echo').textContent())
      .toBe('3 ft, 45° to the right from the wall before: Enter sets it.');
    await keys('Enter');
    const after = await relative();
    const leg = (3 * FT) / Math.SQRT2;
    expect(after[4]?.[0]).toBeCloseTo((run[3]?.[0] ?? 0) - leg, 1);
    expect(after[4]?.[1]).toBeCloseTo((run[3]?.[1] ?? 0) - leg, 1);
    // C closes the room in a straight line from there.
    await keys('c');
    await expect.poll(() => lengths()).toHaveLength(5);
    await expect.poll(() => editor.message()).toMatch(/^The room is closed.* The last wall is .* long\.$/);
    await expect.poll(() => editor.steps()).toBe(1);
  });

  it('what a chain misses its start by is said, and spread in one step with right angles kept', async () => {
    await begin();
    await wall('ArrowRight', '20 ft');
    await wall('ArrowDown', '15 ft');
    await wall('ArrowLeft', '20 ft 2 in');
    await wall('ArrowUp', '14 ft 9 in');
    // 2 in to the right and 3 in up; by Pythagoras 3.6 in, of a total length of 69 ft 11 in.
    await expect
      .poll(said)
      .toBe('The walls miss their start by 3 5/8 in: 2 in to the right and 3 in up, 0.4% of the 69 ft 11 in round.');
    expect(await accessibilityFindings(open.page)).toEqual([]);
    await keys('s');
    await expect.poll(() => editor.message()).toMatch(/Spread over the walls: 1 5\/8 in at most on one of them\.$/);
    const { walls } = await editor.level();
    expect(walls).toHaveLength(4);
    for (const { from, to } of walls)
      expect(Math.min(Math.abs(from[0] - to[0]), Math.abs(from[1] - to[1]))).toBeLessThan(0.01);
    // 20 of the 40 ft 2 in across take 20 / 40.17 of the 2 in; 8 in walls.
    await expect.poll(async () => (await lengths())[0]).toBe(Math.round(20 * FT + (2 * IN * 20 * 12) / 482 + 8 * IN));
    await expect.poll(() => editor.steps()).toBe(1);
    await keys('Control+z');
    await expect.poll(async () => (await editor.level()).walls).toHaveLength(0);
  });

  it('or closed as it is by a press: the last wall takes it all', async () => {
    await begin();
    await wall('ArrowRight', '20 ft');
    await wall('ArrowDown', '15 ft');
    await wall('ArrowLeft', '20 ft');
    await wall('ArrowUp', '14 ft 9 in');
    await open.page.getByRole('button', { name: 'Close as it is' }).click();
    await expect.poll(() => editor.message()).toMatch(/The last wall takes all of it: it is 3 in off the tape\.$/);
    await expect.poll(() => lengths()).toEqual([20, 15, 20, 15].map((feet) => Math.round(feet * FT + 8 * IN)));
  });

  it('a wall is corrected at either end, or both by half', async () => {
    const top = async () => (await editor.level()).walls.find(({ id }) => id === 'w1');
    const xs = async () => [(await top())?.from[0] ?? 0, (await top())?.to[0] ?? 0] as const;
    await select('w1');
    const [left, right] = await xs();
    const correct = async (end: 'from' | 'to' | 'both', length: string) => {
      await open.page.getByLabel('The end that moves').selectOption(end);
      await fill('Inside face to face', length);
    };
    await correct('from', '21 ft');
    await expect.poll(xs).toEqual([expect.closeTo(left - FT, 2), expect.closeTo(right, 2)]);
    await correct('both', '23 ft');
    await expect.poll(xs).toEqual([expect.closeTo(left - 2 * FT, 2), expect.closeTo(right + FT, 2)]);
    await correct('to', '20 ft');
    await expect.poll(xs).toEqual([expect.closeTo(left - 2 * FT, 2), expect.closeTo(right - 2 * FT, 2)]);
    await expect.poll(async () => (await editor.level()).walls).toHaveLength(4);
  });

  it('a wall is split by number and by a press with the cross, and joined again', async () => {
    await select('w1');
    const whole = (await lengths())[0];
    await open.page.getByText('Split it, or join it with another').click();
    await fill('From the left corner, facing the wall', '8 ft');
    await open.page.getByRole('button', { name: 'Split it there' }).click();
    // 8 ft from the face of an 8 in wall: 8 ft 4 in of center-line.
    await expect
      .poll(async () => (await lengths()).slice(0, 2))
      .toEqual([Math.round(8 * FT + 4 * IN), (whole ?? 0) - Math.round(8 * FT + 4 * IN)]);
    await open.page.getByRole('button', { name: 'Press where to split it' }).click();
    await keys('ArrowLeft', 'Enter');
    await expect.poll(() => lengths()).toHaveLength(6);
    for (let parts = 6; parts > 4; parts--) {
      await open.page
        .getByRole('button', { name: /^Join it at its/ })
        .last()
        .click();
      await expect.poll(async () => (await lengths()).length).toBe(parts - 1);
    }
    await expect.poll(async () => (await lengths())[0]).toBe(whole);
  });

  it('two taped diagonals square a room up, and lengths of no room are refused', async () => {
    await open.page.evaluate(() => {
      const state = window.__stillspot?.store.getState();
      state?.run((plan: Plan) => ({
        ...plan,
        levels: plan.levels.map((each) => ({
          ...each,
          rooms: [
            {
              id: 'r1',
              name: 'Den',
              use: 'den' as const,
              at: [
                ((each.walls[0]?.from[0] ?? 0) + (each.walls[0]?.to[0] ?? 0)) / 2,
                (each.walls[0]?.from[1] ?? 0) + 1500,
              ] as const,
            },
          ],
        })),
      }));
      state?.select(['r1']);
    });
    const before = await editor.level();
    await open.page.getByText('Square it up by its diagonals').click();
    const square = open.page.getByRole('button', { name: 'Square the room up' });
    await square.click();
    await expect.poll(() => open.page.getByRole('alert').textContent()).toContain('Type both diagonals first');
    await fill('A-C', '45 ft');
    await fill('B-D', '25 ft');
    await square.click();
    await expect
      .poll(() => open.page.getByRole('alert').textContent())
      .toBe('A-C cannot be 45 ft: A-B and B-C together are 35 ft. Check the tape again.');
    await expect.poll(() => editor.level()).toEqual(before);
    // 20 ft by 15 ft, 4 in out of square: 20 ft 4 in and 19 ft 8 in across, 15 ft down, by Pythagoras.
    await fill('A-C', `25' 3 1/4"`);
    await fill('B-D', `24' 8 3/4"`);
    expect(await accessibilityFindings(open.page)).toEqual([]);
    await square.click();
    await expect.poll(said).toMatch(/^The room is squared up: corner .* A stays\. The lengths agree/);
    const [, , bottom] = (await editor.level()).walls;
    const [, , was] = before.walls;
    const slid = (bottom?.from[0] ?? 0) - (was?.from[0] ?? 0);
    expect(slid).toBeGreaterThan(3.8 * IN);
    expect(slid).toBeLessThan(4.2 * IN);
    await keys('Control+z');
    await expect.poll(() => editor.level()).toEqual(before);
    open.expectNoTroubles();
  });
});
