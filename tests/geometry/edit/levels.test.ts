import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { levelBar } from '../../../geometry/check/level.ts';
import {
  type EditResult,
  levelBelow,
  levelsBeside,
  levelsInOrder,
  nextId,
  wallsCopied,
  withLevelAtHeightOf,
  withLevelBeside,
  withLevelMoved,
  withOrdersFromZero,
  withoutLevel,
} from '../../../geometry/edit/index.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import { outsideWallIds } from '../../../geometry/level/outdoors.ts';
import type { Level, Opening, Plan, Wall, XY } from '../../../geometry/plan/model.ts';
import { emptyLevel, emptyPlan } from '../../../geometry/planfile/empty.ts';
import { parsePlan } from '../../../geometry/planfile/parse.ts';
import { writePlan } from '../../../geometry/planfile/write.ts';
import { howMany } from '../../helpers/how-many.ts';
import { planFile } from '../planfile/plans.ts';

function frozen<T>(value: T): T {
  if (typeof value === 'object' && value !== null) for (const each of Object.values(Object.freeze(value))) frozen(each);
  return value;
}
function done(result: EditResult): Plan {
  if (!result.ok) throw new Error(result.reason);
  return result.plan;
}
const named = (id: string, order: number, part: Partial<Level> = {}): Level => ({ ...emptyLevel(id), order, ...part });
const planOf = (...levels: readonly Level[]): Plan => frozen({ ...emptyPlan(), levels });
/** Returns the levels as a stack: those of one height together, the lowest first. */
function stack(plan: Plan): string {
  const stories = new Map<number, string[]>();
  for (const { id, order } of levelsInOrder(plan)) stories.set(order, [...(stories.get(order) ?? []), id]);
  return [...stories].map(([order, ids]) => `${order}:${ids.join('+')}`).join(' ');
}

const HOUSE = planOf(named('main', 1), named('cellar', 0), named('attic', 2));
const SPLIT = planOf(named('den', 0), named('cellar', 0), named('main', 1));

const STACKS = howMany(100, 300);

describe('a new level', () => {
  it.each([
    ['above', 'cellar', '0:cellar 1:new 2:main 3:attic'],
    ['above', 'attic', '0:cellar 1:main 2:attic 3:new'],
    ['below', 'cellar', '0:new 1:cellar 2:main 3:attic'],
    ['below', 'attic', '0:cellar 1:main 2:new 3:attic'],
  ] as const)('%s %s: %s', (where, other, expected) => {
    expect(stack(done(withLevelBeside(HOUSE, named('new', 0), where, other)))).toBe(expected);
  });

  it('goes over or under both halves of a split house', () => {
    expect(stack(done(withLevelBeside(SPLIT, named('new', 0), 'above', 'den')))).toBe('0:den+cellar 1:new 2:main');
  });
});

describe('a level that is moved', () => {
  it.each([
    ['main', 'above', '0:cellar 1:attic 2:main'],
    ['main', 'below', '0:main 1:cellar 2:attic'],
    ['cellar', 'below', '0:cellar 1:main 2:attic'],
    ['attic', 'above', '0:cellar 1:main 2:attic'],
  ] as const)('%s %s: %s', (id, where, expected) => {
    expect(stack(withLevelMoved(HOUSE, id, where))).toBe(expected);
  });

  it('stays the same plan at the top and at the bottom', () => {
    expect(withLevelMoved(HOUSE, 'attic', 'above')).toBe(HOUSE);
    expect(withLevelMoved(HOUSE, 'cellar', 'below')).toBe(HOUSE);
  });

  it('leaves the one that it shares its height with, and can come back to it', () => {
    expect(stack(withLevelMoved(SPLIT, 'den', 'above'))).toBe('0:cellar 1:den 2:main');
    expect(stack(withLevelMoved(SPLIT, 'den', 'below'))).toBe('0:den 1:cellar 2:main');
    const apart = withLevelMoved(SPLIT, 'den', 'above');
    expect(stack(withLevelAtHeightOf(apart, 'den', 'cellar'))).toBe('0:den+cellar 1:main');
    expect(levelsBeside(SPLIT, 'den').map(({ id }) => id)).toEqual(['cellar']);
  });

  it('takes the choice of the level to test with it', () => {
    const bar = (plan: Plan, id: string) => levelBar(plan, plan.levels.find((each) => each.id === id) as Level);
    expect([bar(HOUSE, 'cellar') === '', bar(HOUSE, 'main') === '']).toEqual([true, false]);
    const turned = withLevelMoved(HOUSE, 'main', 'below');
    expect([bar(turned, 'cellar') === '', bar(turned, 'main') === '']).toEqual([false, true]);
  });
});

it('the level below is the next one down, from either half of a split house', () => {
  expect(levelBelow(HOUSE, 'attic')?.id).toBe('main');
  expect(levelBelow(HOUSE, 'cellar')).toBeNull();
  expect(levelBelow(SPLIT, 'den')).toBeNull();
  expect(levelBelow(SPLIT, 'main')?.id).toBe('cellar');
});

describe('the outline of another level', () => {
  const wall = (id: string, from: XY, to: XY): Wall => ({ id, from, to, thickness: 200, side: 'auto' });
  const walls = [
    wall('w1', [0, 0], [8000, 0]),
    wall('w2', [8000, 0], [8000, 6000]),
    wall('w3', [8000, 6000], [0, 6000]),
    wall('w4', [0, 6000], [0, 0]),
    wall('w5', [4000, 0], [4000, 6000]),
  ];
  const window: Opening = { id: 'o1', wall: 'w1', kind: 'window', offset: 500, width: 900, bottom: 900, top: 2000 };
  const house = planOf(named('cellar', 0, { walls, openings: [window] }), named('main', 1));
  const outline = outsideWallIds(buildLevel(house.levels[0] as Level));

  it('is its exterior walls, and no interior wall', () => {
    expect([...outline].sort()).toEqual(['w1', 'w2', 'w3', 'w4']);
  });

  it('comes with ids of its own, in the same place, and closes the same floor', () => {
    const copied = wallsCopied(house, 'cellar', 'main', outline, true);
    if (!copied.ok) throw new Error(copied.reason);
    const [, main] = copied.plan.levels as [Level, Level];
    expect(main.walls.map(({ id, from, to }) => [id, from, to])).toEqual(
      walls.slice(0, 4).map(({ from, to }, i) => [`w${i + 6}`, from, to]),
    );
    expect(main.openings).toEqual([{ ...window, id: 'o2', wall: 'w6', bottomAnswered: false, topAnswered: false }]);
    expect([copied.walls, copied.openings]).toEqual([4, 1]);
    // 8 by 6 m on the center-lines, minus half a wall on each side: 7.8 by 5.8 m.
    expect(buildLevel(main).rooms.map(({ floorArea }) => Math.round(floorArea))).toEqual([7800 * 5800]);
    expect(copied.plan.levels[0]).toBe(house.levels[0]);
  });

  it('leaves doors and windows where it is asked to', () => {
    const copied = wallsCopied(house, 'cellar', 'main', outline, false);
    expect(copied.ok && copied.plan.levels[1]?.openings).toEqual([]);
  });

  it('is not set a second time over itself', () => {
    const once = wallsCopied(house, 'cellar', 'main', outline, true);
    if (!once.ok) throw new Error(once.reason);
    expect(wallsCopied(once.plan, 'cellar', 'main', outline, true)).toEqual({
      ok: true,
      plan: once.plan,
      walls: 0,
      openings: 0,
    });
  });
});

describe('whatever is done with levels', () => {
  const step = fc.record({
    how: fc.constantFrom('add', 'up', 'down', 'beside', 'remove', 'copy', 'count'),
    pick: fc.nat(),
    other: fc.nat(),
  });
  type Step = typeof step extends fc.Arbitrary<infer T> ? T : never;

  function edited(plan: Plan, { how, pick, other }: Step): Plan {
    const id = plan.levels[pick % plan.levels.length]?.id ?? '';
    const otherId = plan.levels[other % plan.levels.length]?.id ?? '';
    if (how === 'add')
      return done(withLevelBeside(plan, emptyLevel(nextId(plan, 'L')), other % 2 ? 'above' : 'below', id));
    if (how === 'up') return withLevelMoved(plan, id, 'above');
    if (how === 'down') return withLevelMoved(plan, id, 'below');
    if (how === 'beside') return withLevelAtHeightOf(plan, id, otherId);
    if (how === 'remove') return plan.levels.length > 1 ? withOrdersFromZero(withoutLevel(plan, id)) : plan;
    if (how === 'count') return withOrdersFromZero(plan);
    const source = plan.levels.find((each) => each.id === otherId);
    const copied = wallsCopied(plan, otherId, id, new Set(source?.walls.map((wall) => wall.id)), true);
    return copied.ok ? copied.plan : plan;
  }

  it('the plan stays one that the reader reads back, its ids unlike each other, its orders from 0 up without a gap', () => {
    const counts = { several: 0 };
    fc.assert(
      fc.property(planFile, fc.array(step, { minLength: 1, maxLength: 8 }), (file, steps) => {
        const read = parsePlan(JSON.stringify(file));
        let plan = read.ok ? read.plan : emptyPlan();
        fc.pre(plan.levels.length > 0);
        for (const each of steps) plan = edited(frozen(plan), each);
        plan = withOrdersFromZero(plan);
        if (plan.levels.length > 1) counts.several += 1;
        const again = parsePlan(writePlan(plan));
        expect(again.ok ? [] : again.problems.map(({ message }) => message)).toEqual([]);
        const ids = plan.levels.flatMap((level) => [
          level.id,
          ...[...level.walls, ...level.openings, ...level.rooms, ...level.fixtures].map(({ id }) => id),
          ...[...level.objects, ...level.detectors].map(({ id }) => id),
        ]);
        expect(new Set(ids).size).toBe(ids.length);
        const orders = [...new Set(plan.levels.map(({ order }) => order))].sort((a, b) => a - b);
        expect(orders).toEqual(orders.map((_, index) => index));
      }),
      { numRuns: STACKS },
    );
    expect(counts.several).toBeGreaterThan(STACKS / 6);
  });

  it('to move a level up and down again leaves the stack as it was, where it stood alone', () => {
    fc.assert(
      fc.property(
        fc.uniqueArray(fc.integer({ min: 0, max: 30 }), { minLength: 2, maxLength: 6 }),
        fc.nat(),
        (orders, pick) => {
          const plan = withOrdersFromZero(planOf(...orders.map((order, i) => named(`L${i}`, order))));
          const { id, order } = plan.levels[pick % plan.levels.length] as Level;
          fc.pre(order < orders.length - 1);
          expect(stack(withLevelMoved(withLevelMoved(plan, id, 'above'), id, 'below'))).toBe(stack(plan));
        },
      ),
    );
  });
});
