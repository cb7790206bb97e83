import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { measureSubject } from '../../../../geometry/check/measure.ts';
import { subjectsOf } from '../../../../geometry/check/subjects.ts';
import { buildLevel } from '../../../../geometry/level/build-level.ts';
import { levelExtent } from '../../../../geometry/level/level-extent.ts';
import type { Level, XY } from '../../../../geometry/plan/model.ts';
import type { Extent } from '../../../../geometry/plane/extent.ts';
import type { Probe } from '../../../../geometry/region/types.ts';
import { type EffectiveRule, effectiveRules } from '../../../../geometry/rules/profiles.ts';
import { marginField } from '../../../../geometry/search/field/margin-field.ts';
import { evenly } from '../../../helpers/evenly.ts';
import { fixtureAt, hall, planUnder } from '../../../helpers/hall.ts';
import { howMany } from '../../../helpers/how-many.ts';
import { depthInside, isOnRaisedTop, leastMargin, leastReported } from '../../../helpers/least-margin.ts';
import { expectSame, scene, sceneOf } from './margin-scene.ts';

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

describe('marginField on a top that rises above the underside', () => {
  const shape = { box: { center: [0, 5000], width: 600, depth: 400, turn: 0 } } as const;
  const desk = { id: 't', name: 'Desk', shape, bottom: 0, top: PROBE.base + 0.2 };
  const level = hall({ objects: [desk] });
  const plan = planUnder('home-short-term', [level]);

  it('has the desk in the way unless it is named as what carries', () => {
    const model = buildLevel(level);
    // The desk requires 4 in; without it the nearest is the south wall: 10,000 - 5,000 - the radius, minus 12 in.
    expect(marginField(plan, model, PROBE).margin(0, 5000)).toBeCloseTo(-101.6, 9);
    expect(marginField(plan, model, PROBE, ['t']).margin(0, 5000)).toBeCloseTo(5000 - PROBE.radius - 304.8, 9);
  });
});

describe('marginField(…).on(carriers, extent)', () => {
  it('has what is nearest beyond the edge of what is drawn', () => {
    // Found by the property below: w12 is the nearest, and was missing among the pieces that can be nearest on the edge squares.
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
          // Of margins within a millionth of a mm, the check reports the one with the first id.
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
});
