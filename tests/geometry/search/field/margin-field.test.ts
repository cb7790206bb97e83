import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureSubject } from '../../../../geometry/check/measure.ts';
import { subjectsOf } from '../../../../geometry/check/subjects.ts';
import { buildLevel } from '../../../../geometry/level/build-level.ts';
import { levelExtent } from '../../../../geometry/level/level-extent.ts';
import type { Level, Plan, XY } from '../../../../geometry/plan/model.ts';
import { shapeMiddle } from '../../../../geometry/plane/body.ts';
import type { Extent } from '../../../../geometry/plane/extent.ts';
import { emptyLevel } from '../../../../geometry/planfile/empty.ts';
import type { Probe } from '../../../../geometry/region/types.ts';
import { type EffectiveRule, effectiveRules, PROFILES } from '../../../../geometry/rules/profiles.ts';
import { SINGLE_POINT } from '../../../../geometry/search/field/assess.ts';
import { type MarginField, marginField } from '../../../../geometry/search/field/margin-field.ts';
import type { Square } from '../../../../geometry/search/field/squares.ts';
import { evenly } from '../../../helpers/evenly.ts';
import { fixtureAt, hall, planUnder } from '../../../helpers/hall.ts';
import { howMany } from '../../../helpers/how-many.ts';
import { depthInside, isOnRaisedTop, leastMargin, leastReported } from '../../../helpers/least-margin.ts';
import { Dice } from '../../../helpers/random-level/dice.ts';
import { randomPlan } from '../../../helpers/random-level.ts';

const PROBE: Probe = { base: 900, radius: 50, tall: 25 };
/** The hall without a window: walls alone. */
const BARE = hall({ openings: [] });

function marginAt(level: Level, at: XY, profile = 'home-short-term', probe = PROBE): number {
  return marginField(planUnder(profile, [level]), buildLevel(level), probe).margin(...at);
}

const table = (change: Partial<Level['objects'][number]>): Level => ({
  ...BARE,
  objects: [
    {
      id: 't',
      name: '',
      shape: { box: { center: [0, 0], width: 1000, depth: 1000, turn: 0 } },
      bottom: 0,
      top: 950,
      ...change,
    },
  ],
});

/** A screen without depth along the x axis about the origin. */
function screenOf(width: number): Level['objects'][number] {
  return { id: '', name: '', shape: { box: { center: [0, 0], width, depth: 0, turn: 0 } }, bottom: 0, top: 2000 };
}

describe('marginField(plan, model, probe).margin(x, y)', () => {
  // Faces at ±10,000; rim 50; inches × 25.4: wall 304.8, opening 914.4, air 914.4, sump 2,133.6, object 101.6.
  it.each([
    { name: 'middle of a bare hall', level: BARE, at: [0, 0], mm: 10000 - 50 - 304.8 },
    { name: 'a meter from the west wall', level: BARE, at: [-9000, 0], mm: 1000 - 50 - 304.8 },
    { name: 'below the window', level: hall(), at: [0, -9000], mm: 1000 - 50 - 914.4 },
    { name: 'in the wall', level: BARE, at: [-10100, 0], mm: -304.8 },
    { name: 'far outside', level: BARE, at: [-30200, 0], mm: 20000 - 50 - 304.8 },
    {
      name: 'a sump pit: from its edge at x = 0',
      level: { ...BARE, fixtures: [fixtureAt('sump-pit')] },
      at: [3000, 5000],
      mm: 3000 - 50 - 2133.6,
    },
    {
      name: 'a meter deep in a round stream of 2,000',
      level: {
        ...BARE,
        fixtures: [fixtureAt('ceiling-fan', { stream: { direction: 0, spread: 360, reach: 2000 } })],
      },
      at: [900, 5000],
      mm: -(2000 - 1000) - 50,
    },
    {
      name: 'beside a stream of 90° along +x from (-100, 5000): 1,500 ahead and 2,000 aside',
      level: {
        ...BARE,
        fixtures: [fixtureAt('supply-register', { stream: { direction: 0, spread: 90, reach: 3000 } })],
      },
      at: [1400, 7000],
      mm: 500 * Math.SQRT1_2 - 50,
    },
    {
      name: 'as far within its other side',
      level: {
        ...BARE,
        fixtures: [fixtureAt('supply-register', { stream: { direction: 0, spread: 90, reach: 3000 } })],
      },
      at: [1900, 3500],
      mm: -500 * Math.SQRT1_2 - 50,
    },
    {
      name: 'on its side, but for a millionth of a mm',
      level: {
        ...BARE,
        fixtures: [fixtureAt('supply-register', { stream: { direction: 0, spread: 90, reach: 3000 } })],
      },
      at: [1900, 7000.000001],
      mm: 0.000001 * Math.SQRT1_2 - 50,
    },
    { name: 'beside a table taller than the base', level: table({}), at: [1000, 0], mm: 500 - 50 - 101.6 },
    { name: 'within it', level: table({}), at: [100, 100], mm: -101.6 },
    {
      name: 'in line with a screen that has no depth, beyond its end',
      level: { ...BARE, objects: [{ ...screenOf(1000), id: 's' }] },
      at: [700, 0],
      mm: 200 - 50 - 101.6,
    },
    { name: 'on a table that ends at the base', level: table({ top: 900 }), at: [0, 0], mm: 10000 - 50 - 304.8 },
    {
      name: 'under a shelf 60 above the detector',
      level: table({ bottom: 985, top: 1000 }),
      at: [0, 0],
      mm: 60 - 101.6,
    },
    {
      name: 'aside and under it: a right triangle of 80 and 60',
      level: table({ bottom: 985, top: 1000 }),
      at: [500 + 50 + 80, 0],
      mm: 100 - 101.6,
    },
  ] as { name: string; level: Level; at: XY; mm: number }[])('$name: $mm', ({ level, at, mm }) => {
    expect(marginAt(level, at)).toBeCloseTo(mm, 9);
    expect(leastMargin(planUnder('home-short-term', [level]), buildLevel(level), PROBE, at)).toBeCloseTo(mm, 9);
  });

  it('is infinite where a profile finds nothing to measure: an empty level', () => {
    const empty = { ...BARE, walls: [], rooms: [] };
    expect(marginAt(empty, [0, 0])).toBe(Number.POSITIVE_INFINITY);
  });

  it('is the same field for the same plan, model and probe', () => {
    const plan = planUnder('home-short-term', [BARE]);
    const field = marginField(plan, buildLevel(BARE), PROBE);
    expect(marginField(plan, buildLevel(BARE), { ...PROBE })).toBe(field);
    expect(marginField(plan, buildLevel(BARE), { ...PROBE, base: 901 })).not.toBe(field);
  });
});

/** A level by chance under a profile by chance, a probe, and points on it: anywhere, on corners and edges, in things. */
const scene = fc.record({ seed: fc.integer({ min: 1, max: 1e6 }), chance: fc.integer({ min: 0, max: 1e6 }) });

interface Scene {
  readonly plan: Plan;
  readonly level: Level;
  readonly probe: Probe;
  readonly points: readonly XY[];
  readonly dice: Dice;
}

function sceneOf({ seed, chance }: { seed: number; chance: number }): Scene {
  const dice = new Dice(chance);
  const made = randomPlan(seed);
  const profile = dice.chance(0.5) ? null : dice.pick(PROFILES).id;
  const plan = profile === null ? made : { ...made, protocol: { profile, overrides: [] } };
  const level = plan.levels[0] as Level;
  const radius = dice.pick([50.8, 30, 0.05, dice.between(10, 200)]);
  const probe = { base: dice.pick([762, 508, 0, dice.between(0, 2000)]), radius, tall: dice.pick([25.4, 150]) };
  const anchors = [
    ...level.walls.flatMap(({ from, to }) => [from, to]),
    ...level.fixtures.map(({ shape }) => shapeMiddle(shape)),
    ...level.objects.map(({ shape }) => shapeMiddle(shape)),
  ];
  const points = Array.from({ length: 30 }, (): XY => {
    const [a, b] = [dice.pick(anchors), dice.pick(anchors)];
    const t = dice.pick([0, 1, dice.next(), dice.next()]);
    const off = dice.pick([0, 0, dice.between(-200, 200), dice.between(-3000, 3000)]);
    return [a[0] + (b[0] - a[0]) * t + off, a[1] + (b[1] - a[1]) * t + dice.pick([0, off, -off])];
  });
  return { plan, level, probe, points: [...points, ...streamSides(level, dice)], dice };
}

/** Points on and by the sides of every stream. */
function streamSides({ fixtures }: Level, dice: Dice): XY[] {
  return fixtures.flatMap(({ shape, stream }) => {
    if (!stream) return [];
    const [x, y] = shapeMiddle(shape);
    const side = ((stream.direction + dice.pick([-0.5, 0.5]) * stream.spread) * Math.PI) / 180;
    const [out, off] = [dice.between(0, 1.2) * stream.reach, dice.pick([0, 1e-9, -1e-6, 1e-3, -20])];
    return [[x + out * Math.cos(side) - off * Math.sin(side), y + out * Math.sin(side) + off * Math.cos(side)]];
  });
}

describe('marginField on a top that rises above the underside', () => {
  const shape = { box: { center: [0, 5000], width: 600, depth: 400, turn: 0 } } as const;
  const desk = { id: 't', name: 'Desk', shape, bottom: 0, top: PROBE.base + 0.2 };
  const level = hall({ objects: [desk] });
  const plan = planUnder('home-short-term', [level]);

  it('has the desk in the way unless it is named as what carries', () => {
    const model = buildLevel(level);
    // 4 in are kept from the desk; without it the nearest is the south wall: 10,000 - 5,000 - the radius, less 12 in.
    expect(marginField(plan, model, PROBE).margin(0, 5000)).toBeCloseTo(-101.6, 9);
    expect(marginField(plan, model, PROBE, ['t']).margin(0, 5000)).toBeCloseTo(5000 - PROBE.radius - 304.8, 9);
  });
});

describe('marginField(…).on(carriers, extent)', () => {
  it('has what is nearest beyond the edge of what is drawn', () => {
    // Found by the property below: w12 is nearest, and was not among the pieces that can be nearest on the edge squares.
    const one = { seed: 53713, chance: 457185 };
    const { plan, level, probe } = sceneOf(one);
    const model = buildLevel(level);
    const [x, y] = [8623.42896340955, -2475.6250744336285];
    expect(y).toBeLessThan((levelExtent(level) as Extent).minY);
    const local = marginField(plan, model, probe).on(['t0'], { minX: x, minY: y, maxX: x, maxY: y });
    expectSame(local.margin(x, y), marginField(plan, model, probe, ['t0']).margin(x, y));
  });

  it('is within the extent the field with these carriers', () => {
    fc.assert(
      fc.property(scene, fc.nat(20), evenly(1, 2000), (one, pick, reach) => {
        const { plan, level, probe, points } = sceneOf(one);
        const model = buildLevel(level);
        const { objects } = level;
        const carriers = objects.length > 0 ? [(objects[pick % objects.length] as (typeof objects)[number]).id] : [];
        const whole = marginField(plan, model, probe, carriers);
        const open = marginField(plan, model, probe);
        for (const [x, y] of points) {
          const local = open.on(carriers, {
            minX: x - reach,
            minY: y - reach / 2,
            maxX: x + reach,
            maxY: y + reach / 2,
          });
          for (const [s, t] of [
            [0, 0],
            [-1, -1],
            [1, -1],
            [0.7, 1],
            [-0.3, 0.4],
          ] as const) {
            const at: XY = [x + s * reach, y + (t * reach) / 2];
            expectSame(local.margin(...at), whole.margin(...at));
            expect(local.limitedBy(...at)).toEqual(whole.limitedBy(...at));
          }
        }
      }),
      { numRuns: howMany(15, 40) },
    );
  });
});

describe('marginField, on levels by chance under every profile', () => {
  it('is the least that checkDetector reports', () => {
    fc.assert(
      fc.property(scene, (one) => {
        const { plan, level, probe, points } = sceneOf(one);
        const model = buildLevel(level);
        const field = marginField(plan, model, probe);
        for (const at of points) {
          if (isOnRaisedTop(plan, model, probe, at)) continue;
          const margin = field.margin(...at);
          expectSame(margin, leastMargin(plan, model, probe, at));
          const reported = leastReported(plan, model, probe, at);
          // Of margins within a millionth of a mm the checker names the one of the first id.
          if (margin !== reported) expect(Math.abs(margin - reported)).toBeLessThan(1.001e-6);
        }
      }),
      { numRuns: howMany(30, 80) },
    );
  });

  it('names what checkDetector finds to leave the least', () => {
    fc.assert(
      fc.property(scene, (one) => {
        const { plan, level, probe, points } = sceneOf(one);
        const model = buildLevel(level);
        const field = marginField(plan, model, probe);
        for (const at of points) {
          if (isOnRaisedTop(plan, model, probe, at)) continue;
          const limit = field.limitedBy(...at);
          const least = leastMargin(plan, model, probe, at);
          expect(limit === null).toBe(least === Number.POSITIVE_INFINITY);
          if (!limit) continue;
          const rule = effectiveRules(plan.protocol).find(({ id }) => id === limit.rule) as EffectiveRule;
          const margins = subjectsOf(rule, model)
            .filter(({ id, keepOut }) => id === limit.subject && keepOut === limit.stream)
            .map((subject) => {
              const inside = depthInside(rule, subject, probe, at);
              if (inside !== null) return inside;
              const measured = measureSubject(rule, subject, probe, ...at) ?? Infinity;
              return measured - (limit.stream ? 0 : (rule.least ?? 0));
            });
          expect(Math.abs(Math.min(...margins) - least)).toBeLessThan(2e-6);
        }
      }),
      { numRuns: howMany(15, 40) },
    );
  });

  it('changes by at most the way moved', () => {
    fc.assert(
      fc.property(scene, (one) => {
        const { plan, level, probe, points, dice } = sceneOf(one);
        const field = marginField(plan, buildLevel(level), probe);
        for (const [x, y] of points) {
          const way = dice.pick([0.01, 1, 50, 700]);
          const angle = dice.between(0, 2 * Math.PI);
          const there = field.margin(x + way * Math.cos(angle), y + way * Math.sin(angle));
          const here = field.margin(x, y);
          if (here !== there) expect(Math.abs(here - there)).toBeLessThanOrEqual(way + 1e-9);
        }
      }),
      { numRuns: howMany(25, 60) },
    );
  });

  it('bounds what can be had in each square of its grid, from the largest down to a hair', () => {
    fc.assert(
      fc.property(scene, (one) => {
        const { plan, level, probe, dice } = sceneOf(one);
        const field = marginField(plan, buildLevel(level), probe);
        const extent = levelExtent(level) as Extent;
        for (let k = 0; k < 20; k++) {
          let square = dice.pick(field.squares(extent));
          const middle = field.margin(square.x, square.y);
          const enough = dice.between(-1000, 1000);
          const most = field.upperBound(square, Number.NEGATIVE_INFINITY);
          expect(most).toBeGreaterThanOrEqual(middle - 1e-9);
          // Looked into only above `enough`: still a bound, and the same one where that is more.
          if (most > enough) expect(field.upperBound(square, enough)).toBe(most);
          else expect(field.upperBound(square, enough)).toBeGreaterThanOrEqual(most);
          expectSame(field.middle(square), middle);
          expect(field.upperBound(square, enough)).toBeGreaterThanOrEqual(middle - 1e-9);
          for (let depth = dice.int(0, 12); depth > 0; depth--) square = dice.pick(field.quarters(square));
          if (square.level >= 0) expectSame(field.middle(square), field.margin(square.x, square.y));
          else expectBounds(field, square, dice);
        }
      }),
      { numRuns: howMany(25, 60) },
    );
  });
});

/**
 * Two posts or two walls on either side of the origin, nearly as far from it, the second turned from opposite by up to 60°. Near
 * them lines bend most; a level place half way between them is where a bound is tight.
 */
const facing = fc.record({
  turn: evenly(0, 2 * Math.PI),
  drift: fc.oneof(fc.constant(0), evenly(-Math.PI / 3, Math.PI / 3)),
  near: evenly(600, 1500),
  farther: evenly(-50, 50),
  chance: fc.integer({ min: 0, max: 1e6 }),
});

describe('bounds between two things on opposite sides', () => {
  const post = (id: string, center: XY): Level['fixtures'][number] => {
    return {
      id,
      kind: 'floor-drain',
      name: '',
      shape: { circle: { center, radius: 0 } },
      bottom: 0,
      top: 0,
      stream: null,
    };
  };
  const screen = (id: string, [x, y]: XY): Level['objects'][number] => {
    const turn = (Math.atan2(y, x) * 180) / Math.PI + 90;
    return { id, name: '', shape: { box: { center: [x, y], width: 9000, depth: 0, turn } }, bottom: 0, top: 2000 };
  };

  it.each([
    { what: 'posts', things: (at: readonly XY[]) => ({ fixtures: at.map((one, k) => post(`f${k}`, one)) }) },
    { what: 'walls', things: (at: readonly XY[]) => ({ objects: at.map((one, k) => screen(`t${k}`, one)) }) },
  ])('$what: no point of a square has more', ({ things }) => {
    fc.assert(
      fc.property(facing, ({ turn, drift, near, farther, chance }) => {
        const back = turn + Math.PI + drift;
        const far = near + farther;
        const level = {
          ...emptyLevel('L'),
          ...things([
            [near * Math.cos(turn), near * Math.sin(turn)],
            [far * Math.cos(back), far * Math.sin(back)],
          ]),
        };
        const dice = new Dice(chance);
        const field = marginField(planUnder('home-short-term', [level]), buildLevel(level), PROBE);
        let square = field.squares({ minX: 0, minY: 0, maxX: 0, maxY: 0 })[0] as Square;
        for (let depth = dice.int(2, 6); depth > 0; depth--) square = nearestTo0(field.quarters(square));
        for (let k = 0; k < 20; k++) expectBounds(field, square, dice);
        const { x, y, half } = square;
        const seen = field.assess(square, x, y, half * Math.SQRT2, SINGLE_POINT, Number.NEGATIVE_INFINITY);
        for (const [sx, sy] of CORNERS) {
          expect(field.margin(x + sx * half, y + sy * half)).toBeLessThanOrEqual(seen.upper + 1e-9);
        }
      }),
      { numRuns: howMany(80, 200) },
    );
  });
});

function nearestTo0(squares: readonly Square[]): Square {
  return squares.reduce((a, b) => (Math.hypot(b.x, b.y) < Math.hypot(a.x, a.y) ? b : a));
}

const CORNERS = [
  [-1, -1],
  [1, -1],
  [1, 1],
  [-1, 1],
] as const;

function expectSame(a: number, b: number): void {
  if (a !== b) expect(Math.abs(a - b)).toBeLessThan(1e-9);
}

/** Points of the square have no more than its bound, nor have both of two points opposite of one another about one of them. */
function expectBounds(field: MarginField, square: Square, dice: Dice): void {
  const { x, y, half } = square;
  const extent = dice.pick([0, 0, 127]);
  const seen = field.assess(square, x, y, half * Math.SQRT2, { extent, width: 0 }, Number.NEGATIVE_INFINITY);
  expectSame(seen.margin, field.margin(x, y));
  for (let k = 0; k < 10; k++) {
    const [mx, my] = [x + dice.between(-half, half), y + dice.between(-half, half)];
    const spin = dice.between(0, 7);
    const [dx, dy] = [extent * Math.cos(spin), extent * Math.sin(spin)];
    const both = Math.min(field.margin(mx + dx, my + dy), field.margin(mx - dx, my - dy));
    expect(both).toBeLessThanOrEqual(seen.upper + 1e-9);
  }
  expectTriangle(field, square, dice);
  const { margin, upper } = field.around(x, y, half, Number.NEGATIVE_INFINITY);
  expectSame(margin, field.margin(x, y));
  const turn = dice.between(0, 7);
  expect(field.margin(x + half * Math.cos(turn), y + half * Math.sin(turn))).toBeLessThanOrEqual(upper + 1e-9);
}

/** The worst corner of a triangle about a point of the square has no more than the bound for such a one. */
function expectTriangle(field: MarginField, square: Square, dice: Dice): void {
  const { x, y, half } = square;
  const extent = 100;
  const spread = { extent, width: 1.5 * extent };
  const { upper } = field.assess(square, x, y, half * Math.SQRT2, spread, Number.NEGATIVE_INFINITY);
  const [mx, my] = [x + dice.between(-half, half), y + dice.between(-half, half)];
  const spin = dice.between(0, 7);
  const corners = [0, 1, 2].map((k) => {
    const angle = spin + (k * 2 * Math.PI) / 3;
    return field.margin(mx + extent * Math.cos(angle), my + extent * Math.sin(angle));
  });
  expect(Math.min(...corners)).toBeLessThanOrEqual(upper + 1e-9);
}
