import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../geometry/check/check-detector.ts';
import { buildLevel } from '../../geometry/level/build-level.ts';
import type { Level, Plan, Shape } from '../../geometry/plan/model.ts';
import { levelRegion } from '../../geometry/region/level-region.ts';
import type { LevelRegion } from '../../geometry/region/types.ts';
import { howMany } from '../helpers/how-many.ts';
import { Dice } from '../helpers/random-level/dice.ts';
import { randomPlan } from '../helpers/random-level.ts';

const PLANS = howMany(12, 60);
const EDITS = 8;

/*
 * The engine reuses results for the parts that an edit does not change. Whatever it reuses, an edited plan must give the same results as if
 * it had been read from a file: a copy that shares no object with any earlier plan.
 */
describe('an edited plan', () => {
  it('has the same rooms, regions, zones and reports as a fresh copy of it, after any edits', () => {
    for (let seed = 1; seed <= PLANS; seed++) {
      const dice = new Dice(seed);
      let plan = randomPlan(seed);
      for (let i = 0; i <= EDITS; i++) {
        expect(resultsOf(plan), `seed ${seed}, after ${i} edits`).toEqual(resultsOf(structuredClone(plan)));
        plan = edited(plan, dice);
      }
    }
  });
});

function resultsOf(plan: Plan): unknown {
  const [level] = plan.levels;
  const [probe] = level?.detectors ?? [];
  if (!level || !probe) throw new Error('a plan without a level or a detector');
  const model = buildLevel(level);
  const regions = [0, plan.tapeTolerance].map((spare) => levelRegion(plan, model, probe, { spare }));
  return {
    rooms: model.rooms.map(({ key, floorRings, floorArea, labels }) => ({ key, floorRings, floorArea, labels })),
    regions: regions.map(plainRegion),
    reports: level.detectors.map((detector) => checkDetector(plan, model, detector)),
    notices: model.notices,
  };
}

/** Returns a region without the parts that are computed lazily for drawing, which every comparison would otherwise compute. */
function plainRegion({ rooms, zones }: LevelRegion): unknown {
  return {
    rooms: rooms.map(({ room, rings, area, barred }) => ({ key: room.key, rings, area, barred })),
    zones: zones.map(({ rule, subject, distance }) => ({ rule, subject, distance })),
  };
}

/** Returns the plan with one item moved, changed or removed; everything else keeps its identity. */
function edited(plan: Plan, dice: Dice): Plan {
  if (dice.chance(0.1)) {
    const overrides = [{ rule: 'heat', distance: dice.pick([500, 2000]), note: 'as agreed' }];
    return { ...plan, protocol: { ...plan.protocol, overrides } };
  }
  if (dice.chance(0.05)) return { ...plan, tapeTolerance: dice.pick([10, 25.4]) };
  const [level, ...others] = plan.levels;
  return level ? { ...plan, levels: [editedLevel(level, dice), ...others] } : plan;
}

function editedLevel(level: Level, dice: Dice): Level {
  const by = [dice.between(-800, 800), dice.between(-800, 800)] as const;
  const changed = <T>(list: readonly T[], change: (one: T) => T): T[] => {
    const k = dice.int(0, list.length - 1);
    return list.map((one, i) => (i === k ? change(one) : one));
  };
  const without = <T>(list: readonly T[]): T[] => {
    const k = dice.int(0, list.length - 1);
    return list.filter((_, i) => i !== k);
  };
  const cases: (() => Partial<Level>)[] = [
    () => ({ fixtures: changed(level.fixtures, (one) => ({ ...one, shape: movedShape(one.shape, by) })) }),
    () => ({
      fixtures: changed(level.fixtures, (one) => ({ ...one, kind: dice.pick(['sump-pit', 'furnace', 'ceiling-fan']) })),
    }),
    () => ({ fixtures: without(level.fixtures) }),
    () => ({ objects: changed(level.objects, (one) => ({ ...one, shape: movedShape(one.shape, by) })) }),
    () => ({ objects: changed(level.objects, (one) => ({ ...one, top: dice.pick([one.bottom, 3000]) })) }),
    () => ({ objects: without(level.objects) }),
    () => ({ walls: changed(level.walls, (one) => ({ ...one, to: [one.to[0] + by[0] / 9, one.to[1] + by[1] / 9] })) }),
    () => ({ walls: changed(level.walls, (one) => ({ ...one, thickness: dice.pick([60, 150, 300]) })) }),
    () => ({ walls: changed(level.walls, (one) => ({ ...one, side: dice.pick(['auto', 'inside', 'outside']) })) }),
    () => ({
      openings: changed(level.openings, (one) => ({ ...one, kind: dice.pick(['door', 'window', 'passage']) })),
    }),
    () => ({ openings: without(level.openings) }),
    () => ({ rooms: changed(level.rooms, (one) => ({ ...one, at: [one.at[0] + by[0], one.at[1] + by[1]] })) }),
    () => ({ rooms: changed(level.rooms, (one) => ({ ...one, use: dice.pick(['den', 'kitchen']) })) }),
    () => ({ detectors: changed(level.detectors, (one) => ({ ...one, at: [one.at[0] + by[0], one.at[1] + by[1]] })) }),
    () => ({ detectors: changed(level.detectors, (one) => ({ ...one, base: dice.pick([600, 762, 1200]) })) }),
    () => ({ ceiling: dice.pick([2286, 2500]) }),
  ];
  return { ...level, ...dice.pick(cases)() };
}

function movedShape(shape: Shape, [dx, dy]: readonly [number, number]): Shape {
  if ('polygon' in shape) return { polygon: { points: shape.polygon.points.map(([x, y]) => [x + dx, y + dy]) } };
  if ('circle' in shape) {
    const { center, radius } = shape.circle;
    return { circle: { center: [center[0] + dx, center[1] + dy], radius } };
  }
  return { box: { ...shape.box, center: [shape.box.center[0] + dx, shape.box.center[1] + dy] } };
}
