import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import type { Check } from '../../../geometry/check/types.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Detector, Level, Plan, PlanObject, XY } from '../../../geometry/plan/model.ts';
import type { Probe } from '../../../geometry/region/types.ts';
import { bestGroups, bestPairs, type SpotPair } from '../../../geometry/search/best-pairs.ts';
import { companionSpot, companionSpots } from '../../../geometry/search/companion.ts';
import { marginField } from '../../../geometry/search/field/margin-field.ts';
import type { SpotGroup } from '../../../geometry/search/group.ts';
import { companionGap } from '../../../geometry/search/group-shapes.ts';
import { drawn, loop, planOf, rectangle } from '../../helpers/drawn.ts';
import { howMany } from '../../helpers/how-many.ts';
import { leastMargin } from '../../helpers/least-margin.ts';
import { Dice } from '../../helpers/random-level/dice.ts';
import { randomPlan } from '../../helpers/random-level.ts';

const PROBE: Probe = { base: 762, radius: 50, tall: 25 };
/** Wall 12 in; gap 4 to 5 in, which every published list with a gap allows; tolerance of less than a sixteenth of an inch. */
const [WALL, LEAST, MOST, DOUBT] = [304.8, 101.6, 127, 1.6];
/** From axis to axis with 5 in between the rims: in every list's gap, and with the greatest margin there in the home list (4 to 8 in). */
const STEP = 100 + MOST;

function den(width: number, depth: number, rest: Partial<Level> = {}): Level {
  const walls = loop('a', rectangle(-100, -100, width + 200, depth + 200));
  return drawn(walls, { rooms: [{ id: 'r', name: '', use: 'den', at: [5, 5] }], ceiling: 3000, ...rest });
}

function apart([ax, ay]: XY, [bx, by]: XY): number {
  return Math.hypot(ax - bx, ay - by);
}

/** Returns the distance between the axes of a pair. */
function apartIn(pair: SpotPair | undefined): number {
  return pair ? apart(...pair.at) : Number.NaN;
}

/** Returns every check of the members, placed together as a pair, except the level. */
function checksOf(plan: Plan, level: Level, probe: Probe, at: readonly XY[]): Check[] {
  const detectors = at.map((axis, k): Detector => ({ ...probe, id: `p${k}`, label: '', at: axis, pair: 'P' }));
  const model = buildLevel({ ...level, detectors });
  return detectors.flatMap((one) => checkDetector(plan, model, one).checks).filter(({ rule }) => rule !== 'level');
}

function blockedIn(checks: readonly Check[]): string[] {
  return checks.filter(({ verdict, notRun }) => verdict === 'blocked' && !notRun).map(({ rule }) => rule);
}

/** Overrides that loosen the object rule, with a note, because the distance between the two of a pair is not tested here. */
const LOOSE_OBJECTS = {
  profile: 'home-short-term',
  overrides: [{ rule: 'object', distance: 70, note: 'a post' }],
};

describe('bestPairs(plan, model, probe)', () => {
  it('in a long hall both stand on its middle line, 5 in from rim to rim', () => {
    const [pair] = bestPairs(planOf(den(20000, 3000)), buildLevel(den(20000, 3000)), PROBE);
    expect(apartIn(pair)).toBeCloseTo(STEP, 6);
    expect(pair?.margin).toBeGreaterThan(1500 - 50 - WALL - DOUBT);
    expect(pair?.margin).toBeLessThanOrEqual(1500 - 50 - WALL + 1e-9);
    expect(pair?.limitedBy?.rule).toBe('outside-wall');
  });

  it('in a square hall lies across the middle on a diagonal', () => {
    const level = den(8000, 8000);
    const [pair] = bestPairs(planOf(level), buildLevel(level), PROBE);
    // Each member is half a step from the middle, at 45° to the walls.
    const best = 4000 - (STEP / 2) * Math.SQRT1_2 - 50 - WALL;
    expect(pair?.margin).toBeGreaterThan(best - DOUBT);
    expect(pair?.margin).toBeLessThanOrEqual(best + 1e-9);
  });

  it.each(['home-short-term', 'pennsylvania-240-310', 'illinois-422-130'])(
    'keeps what all lists allow under %s: 4 to 5 in, 422.130(c)(2)',
    (profile) => {
      const level = den(8000, 8000);
      const plan = planOf(level, { protocol: { profile, overrides: [] } });
      // 5 in has the greatest margin in 4 to 8 in; in 4 to 5 in, the Illinois list, the middle has.
      const best = profile === 'illinois-422-130' ? 114.3 : 127;
      expect(companionGap(plan)).toEqual({ least: 101.6, most: 127, best });
      const [pair] = bestPairs(plan, buildLevel(level), PROBE);
      expect(apartIn(pair)).toBeCloseTo(100 + best, 6);
    },
  );

  it.each([
    { name: 'a strip in which only one way round fits', width: 3000, depth: 2 * (50 + WALL), gap: MOST },
    {
      name: 'a place only long enough for the least gap',
      width: 2 * (50 + WALL) + 100 + LEAST + 1,
      depth: 750,
      gap: LEAST,
    },
  ])('$name', ({ width, depth, gap }) => {
    const level = den(width, depth);
    const [pair] = bestPairs(planOf(level), buildLevel(level), PROBE);
    expect(apartIn(pair)).toBeCloseTo(100 + gap, 6);
    expect(blockedIn(checksOf(planOf(level), level, PROBE, pair?.at ?? []))).toEqual([]);
  });

  it('goes to the gap of the profile itself where nothing nearer fits', () => {
    // A post is in the middle of a strip: on either side of it one axis fits, 6 in from rim to rim.
    const level = den(2 * (50 + WALL) + 252.4, 2 * (50 + WALL));
    const pipe: PlanObject = {
      id: 'post',
      name: 'Post',
      shape: { box: { center: [50 + WALL + 126.2, 50 + WALL], width: 1, depth: 750, turn: 0 } },
      bottom: 0,
      top: 3000,
    };
    const plan = planOf({ ...level, objects: [pipe] }, { protocol: LOOSE_OBJECTS });
    const [pair] = bestPairs(plan, buildLevel({ ...level, objects: [pipe] }), PROBE);
    // 70 to the post on either side and its width are 141: more than 5 in. The middle of 4 to 8 in fits.
    expect(apartIn(pair)).toBeCloseTo(100 + 152.4, 6);
  });

  it('at any gap has the greatest margin that there is: as near as allowed in an open hall, as far apart as a post asks', () => {
    const hall = den(8000, 8000);
    const [pair] = bestPairs(planOf(hall), buildLevel(hall), PROBE, { anyGap: true });
    const best = 4000 - ((100 + LEAST) / 2) * Math.SQRT1_2 - 50 - WALL;
    expect(pair?.margin).toBeGreaterThan(best - DOUBT);
    expect(pair?.margin).toBeLessThanOrEqual(best + 1e-9);
    expect(pair?.bound).toBeGreaterThanOrEqual(best - 1e-9);
    // On either side of a post: the farther apart they are, the greater their margin to the post.
    const strip = den(3000, 2 * (50 + WALL) + 2);
    const [width, depth] = [40, 2 * (50 + WALL)];
    const post = { box: { center: [1500, 50 + WALL] as XY, width, depth, turn: 0 } };
    const split = { ...strip, objects: [{ id: 'post', name: 'Post', shape: post, bottom: 0, top: 3000 }] };
    const plan = planOf(split, {
      protocol: { profile: 'home-short-term', overrides: [{ rule: 'object', distance: 50, note: 'a post' }] },
    });
    const [about] = bestPairs(plan, buildLevel(split), PROBE, { anyGap: true });
    expect(blockedIn(checksOf(plan, split, PROBE, about?.at ?? []))).toEqual([]);
  });

  it('is empty where one fits and two do not', () => {
    const level = den(2 * (50 + WALL) + 100, 2 * (50 + WALL) + 100);
    expect(bestPairs(planOf(level), buildLevel(level), PROBE)).toEqual([]);
  });
});

describe('bestGroups(plan, model, probe, members)', () => {
  const level = den(8000, 8000);
  const group = (members: number, profile = 'home-short-term'): SpotGroup => {
    const plan = planOf(level, { protocol: { profile, overrides: [] } });
    return bestGroups(plan, buildLevel(level), PROBE, members)[0] as SpotGroup;
  };

  it.each([
    { members: 3, profile: 'home-short-term', why: 'a triangle' },
    { members: 4, profile: 'home-short-term', why: 'a square, its diagonal within 8 in' },
    { members: 3, profile: 'illinois-422-130', why: 'a triangle in a narrow gap' },
  ])('$members stand so that each keeps the gap to every other: $why', ({ members, profile }) => {
    const { at, mutual } = group(members, profile);
    const plan = planOf(level, { protocol: { profile, overrides: [] } });
    const [least, most] = members === 4 ? [101.6, 203.2] : [LEAST, MOST];
    expect(at).toHaveLength(members);
    expect(mutual).toBe(true);
    for (const [i, a] of at.entries()) {
      for (const b of at.slice(i + 1)) {
        expect(apart(a, b) - 100).toBeGreaterThanOrEqual(least - 1e-6);
        expect(apart(a, b) - 100).toBeLessThanOrEqual(most + 1e-6);
      }
    }
    expect(blockedIn(checksOf(plan, level, PROBE, at))).toEqual([]);
  });

  it.each([
    { members: 5, profile: 'home-short-term' },
    { members: 4, profile: 'illinois-422-130' },
  ])('$members under $profile stand in a row, neighbors at the best of the gap', ({ members, profile }) => {
    const { at, mutual } = group(members, profile);
    expect(mutual).toBe(false);
    const step = profile === 'illinois-422-130' ? 100 + 114.3 : STEP;
    for (let k = 1; k < members; k++) expect(apart(at[k - 1] as XY, at[k] as XY)).toBeCloseTo(step, 6);
    expect(apart(at[0] as XY, at[members - 1] as XY)).toBeCloseTo(step * (members - 1), 6);
  });
});

describe('companionSpot(plan, model, detector)', () => {
  const first = (at: XY): Detector => ({ ...PROBE, id: 'd', label: '', at, pair: null });

  it('beside a detector in the middle of a square hall is a step away on a diagonal', () => {
    const level = den(8000, 8000);
    const spot = companionSpot(planOf(level), buildLevel(level), first([4000, 4000]));
    expect(apart(spot?.at as XY, [4000, 4000])).toBeCloseTo(STEP, 6);
    expect(spot?.margin).toBeGreaterThan(4000 - STEP * Math.SQRT1_2 - 50 - WALL - DOUBT);
    expect(spot?.margin).toBeLessThanOrEqual(4000 - STEP * Math.SQRT1_2 - 50 - WALL + 1e-9);
  });

  it('has no more to spare than the first detector, and says what limits that one', () => {
    const level = den(8000, 8000);
    const spot = companionSpot(planOf(level), buildLevel(level), first([400, 4000]));
    expect(spot?.margin).toBeCloseTo(400 - 50 - WALL, 9);
    expect(spot?.limitedBy).toMatchObject({ rule: 'outside-wall', subject: 'a4' });
  });

  it('comes nearer where the best of the gap does not fit', () => {
    // Axes from 354.8 to 354.8 + 210: rim to rim 110; 4 in are 101.6 and the best gap is 127.
    const level = den(2 * (50 + WALL) + 210, 2 * (50 + WALL));
    const at: XY = [50 + WALL, 50 + WALL];
    const spot = companionSpot(planOf(level), buildLevel(level), first(at));
    const gap = apart(spot?.at as XY, at) - 100;
    expect(gap).toBeGreaterThanOrEqual(LEAST);
    expect(gap).toBeLessThanOrEqual(110.2);
    expect(blockedIn(checksOf(planOf(level), level, PROBE, [at, spot?.at as XY]))).toEqual([]);
  });

  it.each([
    { why: 'nothing fits beside it', level: den(2 * (50 + WALL) + 150, 2 * (50 + WALL)), at: [355, 355] as XY },
    { why: 'it stands outdoors', level: den(8000, 8000), at: [-3000, 0] as XY },
    { why: 'its height is barred', level: den(8000, 8000, { ceiling: 1000 }), at: [4000, 4000] as XY },
  ])('is null where $why', ({ level, at }) => {
    expect(companionSpot(planOf(level), buildLevel(level), first(at))).toBeNull();
  });

  it('companionSpots: two more make a triangle with it, six more a row', () => {
    const level = den(8000, 8000);
    const [plan, model] = [planOf(level), buildLevel(level)];
    const two = companionSpots(plan, model, first([4000, 4000]), 2);
    expect(two?.mutual).toBe(true);
    expect(blockedIn(checksOf(plan, level, PROBE, [[4000, 4000], ...(two?.at ?? [])]))).toEqual([]);
    const six = companionSpots(plan, model, first([4000, 4000]), 6);
    expect(six?.at.map((axis) => Math.round(apart(axis, [4000, 4000]) / STEP))).toEqual([1, 2, 3, 4, 5, 6]);
    expect(six?.mutual).toBe(false);
  });
});

/** Returns whether both of a pair are in one room and pass every check that runs. */
function mayStand(plan: Plan, level: Level, at: readonly [XY, XY]): boolean {
  const [a, b] = at.map((axis) => roomOf(plan, level, axis));
  return a === b && checksOf(plan, level, PROBE, at).every(({ verdict, notRun }) => notRun || passes(verdict));
}

const scene = fc.record({ seed: fc.integer({ min: 1, max: 1e6 }), chance: fc.integer({ min: 0, max: 1e6 }) });

describe('pairs and companions, on levels by chance', () => {
  it('both of a pair pass every check, in one room, and its margin is the lesser of theirs', () => {
    fc.assert(
      fc.property(scene, ({ seed }) => {
        const plan = randomPlan(seed);
        const level = plan.levels[0] as Level;
        const model = buildLevel(level);
        for (const { at, margin, bound } of bestPairs(plan, model, PROBE, { count: 2 })) {
          expect(blockedIn(checksOf(plan, level, PROBE, at))).toEqual([]);
          expect(margin).toBeCloseTo(Math.min(...at.map((axis) => leastMargin(plan, model, PROBE, axis))), 9);
          expect(bound - margin).toBeLessThanOrEqual(DOUBT + 1e-3);
        }
      }),
      { numRuns: howMany(10, 30) },
    );
  });

  it('no pair at the best of the gap that is tried at random has more', () => {
    fc.assert(
      fc.property(scene, ({ seed, chance }) => {
        const plan = randomPlan(seed);
        const level = plan.levels[0] as Level;
        const model = buildLevel(level);
        const dice = new Dice(chance);
        const [best] = bestPairs(plan, model, PROBE);
        const field = marginField(plan, model, PROBE);
        for (let k = 0; k < 40; k++) {
          const { from, to } = dice.pick(level.walls);
          const [x, y] = [from[0] + dice.between(-3000, 3000), to[1] + dice.between(-3000, 3000)];
          const turn = dice.between(0, Math.PI);
          const other: XY = [x + STEP * Math.cos(turn), y + STEP * Math.sin(turn)];
          const margin = Math.min(field.margin(x, y), field.margin(...other));
          if (margin > (best?.bound ?? -0.1)) expect(mayStand(plan, level, [[x, y], other])).toBe(false);
        }
      }),
      { numRuns: howMany(10, 30) },
    );
  });

  it('no pair at any gap that is tried at random has more than the best at any gap', () => {
    fc.assert(
      fc.property(scene, ({ seed, chance }) => {
        const plan = randomPlan(seed);
        const level = plan.levels[0] as Level;
        const model = buildLevel(level);
        const dice = new Dice(chance);
        const [best] = bestPairs(plan, model, PROBE, { anyGap: true });
        if (best) expect(blockedIn(checksOf(plan, level, PROBE, best.at))).toEqual([]);
        const [preferred] = bestPairs(plan, model, PROBE);
        expect(preferred?.margin ?? -1).toBeLessThanOrEqual(best?.bound ?? -0.1);
        const field = marginField(plan, model, PROBE);
        for (let k = 0; k < 60; k++) {
          // Half of them are near the best one, where a better one is most likely.
          const { from, to } = dice.pick(level.walls);
          const far = best && k % 2 ? 40 : 3000;
          const [cx, cy] = best && k % 2 ? best.at[0] : [from[0], to[1]];
          const [x, y] = [cx + dice.between(-far, far), cy + dice.between(-far, far)];
          const turn = dice.between(0, 2 * Math.PI);
          const step = 2 * PROBE.radius + dice.between(LEAST, MOST);
          const other: XY = [x + step * Math.cos(turn), y + step * Math.sin(turn)];
          const margin = Math.min(field.margin(x, y), field.margin(...other));
          if (margin > (best?.bound ?? -0.1)) expect(mayStand(plan, level, [[x, y], other])).toBe(false);
        }
      }),
      { numRuns: howMany(10, 100) },
    );
  });

  it('a companion passes every check beside its detector', () => {
    fc.assert(
      fc.property(scene, ({ seed }) => {
        const plan = randomPlan(seed);
        const level = plan.levels[0] as Level;
        const model = buildLevel(level);
        for (const detector of level.detectors) {
          const spot = companionSpot(plan, model, detector);
          if (!spot) continue;
          const own = { ...detector, id: 'own', pair: 'P' };
          const second = { ...detector, id: 'second', at: spot.at, pair: 'P' };
          const both = buildLevel({ ...level, detectors: [own, second] });
          const checks = checkDetector(plan, both, second).checks.filter(({ rule }) => rule !== 'level');
          expect(blockedIn(checks)).toEqual([]);
        }
      }),
      { numRuns: howMany(10, 30) },
    );
  });
});

function passes(verdict: Check['verdict']): boolean {
  return verdict === 'clear' || verdict === 'tight';
}

function roomOf(plan: Plan, level: Level, at: XY): string | null {
  return checkDetector(plan, buildLevel(level), { ...PROBE, id: '', label: '', at, pair: null }).room;
}
