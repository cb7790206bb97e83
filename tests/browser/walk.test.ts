import { beforeAll, describe, expect, it } from 'vitest';
import { checkPlan } from '../../geometry/check/check-detector.ts';
import type { Level, Plan, Shape, XY } from '../../geometry/plan/model.ts';
import { shapeRing } from '../../geometry/plane/body.ts';
import { parsePlan } from '../../geometry/planfile/parse.ts';
import { someOf } from '../helpers/how-many.ts';
import { sampleText } from '../helpers/sample-files.ts';
import { type OpenPage, openPage } from './harness.ts';
import { openStage } from './samples.ts';
import { Walker } from './walker.ts';

/** Greatest number of scrolls of the column of questions, which is longer than a small screen. */
const MOST_SCROLLS = 8;

/** Half an inch, mm. */
const CLOSE = 12.7;

/** Items of the plain basement that the walk does not draw: water heater, sofa, bookcase and stairs. */
const LEFT_OUT = new Set(['f2', 't2', 't3', 't4']);
const parsed = parsePlan(sampleText('01-plain-basement'));
if (!parsed.ok) throw new Error('the sample is no plan');
const [whole] = parsed.plan.levels;
if (!whole) throw new Error('the sample has no level');
const stays = ({ id }: { readonly id: string }) => !LEFT_OUT.has(id);
const wanted: Level = { ...whole, fixtures: whole.fixtures.filter(stays), objects: whole.objects.filter(stays) };
const wantedPlan: Plan = { ...parsed.plan, levels: [wanted] };

/** Position of the basement's inside corner on the sheet, mm: in the sample it is at 0. */
const ORIGIN: XY = [1016, 1016];
/** Returns a point near another one, because a hand is some inches off, in varying directions. */
const near = (x: number, y: number): XY => {
  const off = (seed: number) => Math.sin(seed * 12.9898) * 70;
  return [ORIGIN[0] + x + off(x + 3 * y), ORIGIN[1] + y + off(y + 7 * x)];
};

const WAYS = [
  { how: 'by mouse and numbers', byFinger: false, most: 72, viewport: { width: 1440, height: 900 } },
  { how: 'by finger', byFinger: true, most: 75, viewport: { width: 1024, height: 768 } },
  { how: 'by finger, upright', byFinger: true, most: 75, viewport: { width: 820, height: 1180 } },
] as const;

describe.each(someOf(WAYS, 1))('the plain basement from an empty page, $how', ({ byFinger, most, viewport }) => {
  let open: OpenPage;
  let walker: Walker;
  beforeAll(async () => {
    open = await openPage({ viewport, touch: byFinger });
    walker = await Walker.on(open.page, { byFinger });
  });

  it(`is drawn at true sizes in at most ${most} actions`, async () => {
    await drawBasement(open, walker, byFinger);
    const { actions, corrections, scrolls, seconds, shifted } = walker;
    const count = (kind: string) => actions.filter((each) => each.kind === kind).length;
    console.log(
      `${actions.length} actions: ${count('click')} clicks, ${count('drag')} drags, ${count('field')} fields, ${count('key')} keys alone; about ${Math.round(seconds)} s of a person's time; ${scrolls} scrolls, ${corrections.length} refused, ${shifted.length} moved`,
    );
    expect(corrections).toEqual([]);
    expect(shifted).toEqual([]);
    expect(scrolls).toBeLessThanOrEqual(MOST_SCROLLS);
    expect(actions.length).toBeLessThanOrEqual(most);
  }, 120_000);

  it('is the sample: every wall, opening and thing within half an inch, every room as it is used', async () => {
    const drawn = await level(open);
    const corner = lowest(drawn.walls.flatMap(({ from, to }) => [from, to]));
    const asked = lowest(wanted.walls.flatMap(({ from, to }) => [from, to]));
    const moved = (at: XY): XY => [at[0] - corner[0] + asked[0], at[1] - corner[1] + asked[1]];
    expect(missing(wallsOf(drawn, moved), wallsOf(wanted))).toEqual([]);
    expect(missing(openingsOf(drawn, moved), openingsOf(wanted))).toEqual([]);
    expect(missing(thingsOf(drawn, moved), thingsOf(wanted))).toEqual([]);
    expect(missing(detectorsOf(drawn, moved), detectorsOf(wanted))).toEqual([]);
    expect(drawn.rooms.map(({ use }) => use).sort()).toEqual(wanted.rooms.map(({ use }) => use).sort());
    expect([drawn.ceiling, drawn.living, drawn.ground]).toEqual([wanted.ceiling, wanted.living, wanted.ground]);
  });

  it('has the verdicts of the sample, rule by rule, once it is said why and for whom the house is tested', async () => {
    const { page } = open;
    await openStage(page, 'Property');
    await page.getByLabel('Why it is tested', { exact: true }).selectOption('own-household');
    await page.getByLabel(/^People on /).selectOption('lived-in');
    const plan = await open.page.evaluate(() => window.__stillspot?.store.getState().plan);
    if (!plan) throw new Error('the page has no plan');
    expect(verdicts(plan)).toEqual(verdicts(wantedPlan));
    open.expectNoTroubles();
  });
});

async function drawBasement({ page }: OpenPage, walker: Walker, byFinger: boolean): Promise<void> {
  const button = (name: string) => page.getByRole('button', { name, exact: true });
  const answer = (name: string) => page.locator('.answers').getByRole('button', { name }).first();
  const unfold = async () => {
    const panel = page.getByRole('button', { name: /^(?:Draw|Place) panel$/ });
    if (await panel.isVisible()) await walker.click(panel, 'the panel');
  };
  const ask = async (name: string) => {
    await unfold();
    await walker.click(button(name), name);
  };
  const take = (name: string) => walker.click(answer(name), name);
  /** Places the tool's item near a point, and types its distances from both walls. */
  const put = async (what: string, at: XY, gaps: readonly string[], last: 'Enter' | 'Tab' = 'Enter', shift = false) => {
    await walker.press(at, what, shift && !byFinger);
    for (const [index, gap] of gaps.entries()) {
      await walker.length(gap, `${what} from the wall`, index === gaps.length - 1 ? last : 'Enter');
    }
  };

  await take('Four walls in one drag');
  await walker.drag(ORIGIN, [ORIGIN[0] + 9000, ORIGIN[1] + 6500], 'the four walls');
  await walker.length('34 x 24', 'across and down inside');
  await take('Wall after wall');
  await walker.press(near(6400, -100), 'the inner wall begins');
  await walker.press(near(6400, 7400), 'and ends');
  await walker.length('20 9 3/4', 'from the left wall');

  await walker.press([ORIGIN[0] + 3172, ORIGIN[1] + 3658], 'the words in the room');
  // The answer leads to the next room.
  for (const use of ['Family room', 'Utility room']) {
    await walker.click(page.getByRole('region', { name: /used for/ }).getByRole('button', { name: use }), use);
  }

  await ask('What opens it?');
  await take('Window');
  await put('window', near(1700, -100), ['4 ft'], 'Tab');
  await walker.length('36 x 56 x 80', 'its width, sill and head');
  await put('window', near(4300, -100), ['5 3 3/4']);
  await put('window', near(10460, 3400), ['10'], 'Tab');
  await walker.length('32', 'its width');
  await take('Door');
  await put('door', near(1200, 7400), ['2 6'], 'Tab');
  await walker.length('36', 'its width');
  await put('door', near(6400, 5500), ['4 10'], 'Tab');
  await walker.length('30', 'its width');

  await ask('What heats?');
  await take('Furnace');
  // A finger snaps to the partition from farther away, and the distance to it would come last.
  await put('furnace', near(byFinger ? 7900 : 7366, 2540), ['2 0 3/4 x 7 2'], 'Tab');
  await walker.length('22 x 28', 'its width and depth');

  await ask('What is wet or open to the soil?');
  await take('Sump pit');
  await put('sump', near(7000, 6700), ['8 3/4 in x 9 in']);
  await take('Floor drain');
  await put('drain', near(8382, 3556), ['5 11 3/4 x 11 4'], 'Tab');
  await walker.length('8', 'across');

  await ask('What moves air?');
  await take('Supply register');
  await put('register', near(1676, 400), ['5 x 1'], 'Tab', true);
  await walker.length('12', 'its width', 'Tab');
  await walker.next('its depth stays');
  await walker.length('90 x 88', 'its top and underside');
  if (byFinger) await take('Supply register');
  await put('register', near(4267, 400), ['6 3 3/4 x 1'], 'Enter', true);
  if (byFinger) await take('Supply register');
  await put('register', near(100, 5080), ['6 10 x 1']);
  await take('Return grille');
  await put('grille', near(6270, 1016), ['2 9'], 'Tab');
  await walker.next('it stands against the wall');
  await walker.next('its width stays');
  await walker.length('4 x 20 x 6', 'its depth, top and underside');

  await ask('What stands here?');
  await take('Desk');
  await put('desk', near(2743, 4267), ['6 6 x 8 9'], 'Tab');
  // Its height decides the height of the detectors.
  await walker.length('60 x 30 x 30', 'its width, depth and top');

  await walker.click(button('Place'), 'Place');
  await unfold();
  await take('Detector');
  await put('detector', near(2616, 4216), ['8 5 x 10']);
  await unfold();
  await walker.click(page.getByRole('button', { name: /companion/ }), 'a second one beside it');
  await walker.length('9 2 1/2 x 10', 'from the left and the lower wall');
}

async function level({ page }: OpenPage): Promise<Level> {
  const found = await page.evaluate(() => window.__stillspot?.store.getState().plan.levels[0]);
  if (!found) throw new Error('the page has no level');
  return found;
}

function lowest(points: readonly XY[]): XY {
  return [Math.min(...points.map(([x]) => x)), Math.min(...points.map(([, y]) => y))];
}

/** An item as rows of numbers that must be close to each other, under a name that must be the same. */
interface Measured {
  readonly name: string;
  readonly numbers: readonly number[];
  readonly drawn?: readonly string[];
}
type Moved = (at: XY) => XY;
const unmoved: Moved = (at) => at;

/** Returns the items that are expected and were not drawn, or drawn more than half an inch off. */
function missing(drawn: readonly Measured[], asked: readonly Measured[]): readonly Measured[] {
  expect(drawn).toHaveLength(asked.length);
  const same = (a: Measured, b: Measured) =>
    a.name === b.name && a.numbers.every((value, index) => Math.abs(value - (b.numbers[index] ?? Number.NaN)) <= CLOSE);
  const lost = asked.filter((each) => !drawn.some((other) => same(each, other)));
  // Each with the drawn items of that name, for comparison by a person.
  return lost.map((each) => ({
    ...each,
    drawn: drawn.filter(({ name }) => name === each.name).map(({ numbers }) => numbers.map(Math.round).join(' ')),
  }));
}

function wallsOf({ walls }: Level, moved = unmoved): readonly Measured[] {
  return walls.map(({ from, to, thickness }) => {
    const ends = [moved(from), moved(to)].sort((a, b) => (Math.abs(a[0] - b[0]) > 1 ? a[0] - b[0] : a[1] - b[1]));
    return { name: 'wall', numbers: [...ends.flat(), thickness] };
  });
}

function openingsOf({ walls, openings }: Level, moved = unmoved): readonly Measured[] {
  return openings.map(({ wall: id, kind, offset, width, bottom, top }) => {
    const wall = walls.find((each) => each.id === id);
    if (!wall) throw new Error(`no wall ${id}`);
    const long = Math.hypot(wall.to[0] - wall.from[0], wall.to[1] - wall.from[1]);
    const at = (far: number): XY => [
      wall.from[0] + ((wall.to[0] - wall.from[0]) * far) / long,
      wall.from[1] + ((wall.to[1] - wall.from[1]) * far) / long,
    ];
    return { name: kind, numbers: [...moved(at(offset + width / 2)), width, bottom, top] };
  });
}

function thingsOf({ fixtures, objects }: Level, moved = unmoved): readonly Measured[] {
  const numbers = (shape: Shape, heights: readonly number[]) => {
    const ring = shapeRing(shape).map(moved);
    const far = (axis: 0 | 1) => [Math.min(...ring.map((at) => at[axis])), Math.max(...ring.map((at) => at[axis]))];
    return [...far(0), ...far(1), ...heights];
  };
  return [
    ...fixtures.map(({ kind, shape, bottom, top }) => ({ name: kind, numbers: numbers(shape, [bottom, top]) })),
    ...objects.map(({ name, shape, bottom, top }) => ({ name, numbers: numbers(shape, [bottom, top]) })),
  ];
}

function detectorsOf({ detectors }: Level, moved = unmoved): readonly Measured[] {
  return detectors.map(({ at, base, radius, tall, pair }) => ({
    name: pair === null ? 'alone' : 'paired',
    numbers: [...moved(at), base, radius, tall],
  }));
}

/** Returns each detector's verdict, and those of the rules with the number of subjects that each was checked against. */
function verdicts(plan: Plan): unknown {
  return checkPlan(plan).levels.flatMap(({ detectors }) =>
    detectors.map(({ verdict, checks }) => ({
      verdict,
      rules: checks.map((check) => `${check.rule} ${check.verdict}`).sort(),
    })),
  );
}
