import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { checkDetector } from '../../../geometry/check/check-detector.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { LevelModel } from '../../../geometry/level/types.ts';
import type { Level, Plan, PlanObject, XY } from '../../../geometry/plan/model.ts';
import { shapeBody, signedBodyDistance } from '../../../geometry/plane/body.ts';
import { levelRegion } from '../../../geometry/region/level-region.ts';
import type { Probe } from '../../../geometry/region/types.ts';
import { PROFILES } from '../../../geometry/rules/profiles.ts';
import { bestSpots, type Spot } from '../../../geometry/search/best-spots.ts';
import { drawn, loop, planOf, rectangle, wall } from '../../helpers/drawn.ts';
import { evenly } from '../../helpers/evenly.ts';
import { howMany } from '../../helpers/how-many.ts';
import { leastMargin } from '../../helpers/least-margin.ts';
import { Dice } from '../../helpers/random-level/dice.ts';
import { randomPlan } from '../../helpers/random-level.ts';

const PROBE: Probe = { base: 762, radius: 50, tall: 25 };
/** Wall 12 in, moving air 36 in, inside wall and object 4 in, tolerance of less than a sixteenth of an inch. */
const [WALL, AIR, OBJECT, DOUBT] = [304.8, 914.4, 101.6, 1.6];

/** Returns a den with these dimensions from face to face, its corner at the origin; walls 200 thick. */
function den(width: number, depth: number, rest: Partial<Level> = {}): Level {
  const walls = loop('a', rectangle(-100, -100, width + 200, depth + 200));
  return drawn(walls, { rooms: [{ id: 'r', name: '', use: 'den', at: [5, 5] }], ceiling: 3000, ...rest });
}

function spotsOn(level: Level, options: Parameters<typeof bestSpots>[3] = {}, probe = PROBE): Spot[] {
  return bestSpots(planOf(level), buildLevel(level), probe, options);
}

function box(id: string, center: XY, width: number, depth: number, bottom: number, top: number): PlanObject {
  return { id, name: '', shape: { box: { center, width, depth, turn: 0 } }, bottom, top };
}

const register = (center: XY): Level['fixtures'][number] => ({
  id: 'f',
  kind: 'supply-register',
  name: '',
  shape: { circle: { center, radius: 100 } },
  bottom: 0,
  top: 0,
  stream: null,
});

describe('bestSpots(plan, model, probe)', () => {
  it('in a square hall is the middle, half its side less the rim and 12 in from the exterior wall', () => {
    const [spot] = spotsOn(den(8000, 8000));
    expect(spot?.margin).toBeGreaterThan(4000 - 50 - WALL - DOUBT);
    expect(spot?.margin).toBeLessThanOrEqual(4000 - 50 - WALL);
    expect(Math.hypot((spot?.at[0] ?? 0) - 4000, (spot?.at[1] ?? 0) - 4000)).toBeLessThan(DOUBT * Math.SQRT2);
    expect(spot?.room.label?.id).toBe('r');
    expect(spot?.limitedBy?.rule).toBe('outside-wall');
    expect(spot).toMatchObject({ base: 762, on: null });
  });

  it('in a long hall lies on its middle line, wherever along it', () => {
    const [spot] = spotsOn(den(20000, 3000));
    expect(spot?.margin).toBeCloseTo(1500 - 50 - WALL, 3);
    expect(spot?.at[1]).toBeCloseTo(1500, 3);
  });

  it('gives way to a register by a corner: as far from it as from the far walls', () => {
    // On the diagonal, at s from both far walls and (8000 − s)·√2 − 100 from the rim of the register at the corner.
    const s = (8000 * Math.SQRT2 - 100 - AIR + WALL) / (1 + Math.SQRT2);
    const expected = Math.min(s, 4000) - 50 - WALL;
    const [spot] = spotsOn(den(8000, 8000, { fixtures: [register([0, 0])] }));
    expect(spot?.margin).toBeGreaterThan(expected - DOUBT);
    expect(spot?.margin).toBeLessThanOrEqual(expected + 1e-6);
  });

  it('under a low shelf over the whole hall has the shelf to thank for, wherever it is', () => {
    // 150 above the detector's top, and 4 in are required.
    const [spot] = spotsOn(den(8000, 8000, { objects: [box('s', [4000, 4000], 8000, 8000, 762 + 25 + 150, 1200)] }));
    expect(spot?.margin).toBeCloseTo(150 - OBJECT, 9);
    expect(spot?.limitedBy).toEqual({ rule: 'object', subject: 's', stream: false });
  });

  it('is the better of two rooms, each within an allowed use', () => {
    const walls = [...loop('a', rectangle(-100, -100, 10200, 4200)), wall('m', [7000, -100], [7000, 4100])];
    const rooms = (left: 'den' | 'kitchen') => [
      { id: 'left', name: '', use: left, at: [1000, 1000] as XY },
      { id: 'right', name: '', use: 'den' as const, at: [8000, 1000] as XY },
    ];
    // The wider room is limited by the outside walls, 4,000 apart; the other by its width of 2,900.
    const [wide] = spotsOn(drawn(walls, { rooms: rooms('den'), ceiling: 3000 }));
    expect(wide?.room.label?.id).toBe('left');
    expect(wide?.margin).toBeCloseTo(2000 - 50 - WALL, 3);
    const [other] = spotsOn(drawn(walls, { rooms: rooms('kitchen'), ceiling: 3000 }));
    expect(other?.room.label?.id).toBe('right');
    // From x = 7,100 to 10,000: the inside wall requires 4 in, the outside wall 12; the best is the middle of the rest.
    expect(other?.margin).toBeCloseTo((2900 - OBJECT - WALL) / 2 - 50, 3);
  });

  it('keeps spots apart, the most to spare first, and says what limits each', () => {
    const spots = spotsOn(den(8000, 8000), { count: 4, apart: 2000 });
    expect(spots).toHaveLength(4);
    for (const [i, a] of spots.entries()) {
      for (const b of spots.slice(i + 1)) {
        expect(Math.hypot(a.at[0] - b.at[0], a.at[1] - b.at[1])).toBeGreaterThanOrEqual(2000);
        expect(a.margin).toBeGreaterThanOrEqual(b.margin);
      }
    }
    // Two meters from the middle, the best is along the diagonal: √2 m nearer to the wall.
    expect(spots[1]?.margin).toBeGreaterThan(4000 - 2000 * Math.SQRT1_2 - 50 - WALL - 2 * DOUBT);
  });

  it.each([
    { why: 'the height band bars the height', level: den(8000, 8000), probe: { ...PROBE, base: 500 } },
    { why: 'the ceiling does', level: den(8000, 8000, { ceiling: 1000 }), probe: PROBE },
    { why: 'the room has no label', level: den(8000, 8000, { rooms: [] }), probe: PROBE },
    {
      why: 'the room is a bathroom',
      level: den(8000, 8000, { rooms: [{ id: 'r', name: '', use: 'bathroom', at: [5, 5] }] }),
      probe: PROBE,
    },
    { why: 'the room is too narrow', level: den(8000, 2 * (50 + WALL) - 0.3), probe: PROBE },
    { why: 'nothing is drawn', level: drawn([]), probe: PROBE },
  ])('is empty where $why', ({ level, probe }) => {
    expect(spotsOn(level, {}, probe)).toEqual([]);
  });

  it.each([
    { name: 'a strip that only the 0.1 mm allows', depth: 2 * (50 + WALL) - 0.19, spot: true },
    { name: 'a strip a thousandth of a mm wide', depth: 2 * (50 + WALL - 0.1) + 0.001, spot: true },
    { name: 'a strip that is just shut', depth: 2 * (50 + WALL - 0.1) - 0.001, spot: false },
  ])('$name: $spot', ({ depth, spot }) => {
    for (const width of [depth, 12000]) expect(spotsOn(den(width, depth)).length > 0).toBe(spot);
  });

  it('keeps the rim out of interior walls where the profile asks for no distance from them', () => {
    const walls = [...loop('a', rectangle(-100, -100, 10200, 10200)), wall('m', [5000, -100], [5000, 10100])];
    const rooms = [{ id: 'r', name: '', use: 'den' as const, at: [1000, 1000] as XY }];
    const level = drawn(walls, { rooms, ceiling: 3000 });
    const plan = planOf(level, { protocol: { profile: 'pennsylvania-240-310', overrides: [] } });
    const [spot] = bestSpots(plan, buildLevel(level), PROBE);
    // Limited by the outside walls alone, 4,900 and 10,000 apart: it may be close to the inside wall at x = 4,900.
    expect(spot?.margin).toBeGreaterThan(4850 - 50 - WALL - DOUBT);
    expect(spot?.at[0]).toBeLessThanOrEqual(4850 + 0.1);
  });
});

describe('bestSpots(…, { onFurniture: true })', () => {
  const table = box('table', [1500, 4000], 1200, 600, 0, 762);

  it('comes first with the table that can carry a detector, at the height of its top, then with the middle', () => {
    const level = den(8000, 8000, { objects: [table] });
    const spots = spotsOn(level, { count: 2, apart: 1500, onFurniture: true }, { ...PROBE, base: 900 });
    expect(spots.map(({ on, base }) => ({ on, base }))).toEqual([
      { on: 'table', base: 762 },
      { on: null, base: 900 },
    ]);
    // As far from the west wall as the rim may be, 2 in off the edge: the table ends at x = 2,100.
    expect(spots[0]?.margin).toBeGreaterThan(2050 - 50.8 - 50 - WALL - DOUBT);
    expect(spots[0]?.margin).toBeLessThanOrEqual(2050.1 - 50.8 - 50 - WALL);
    expect(spots[1]?.margin).toBeGreaterThan(4000 - 50 - WALL - DOUBT);
  });

  it.each([
    { why: 'too high for the band', object: box('t', [1500, 4000], 1200, 600, 0, 1900) },
    { why: 'too low', object: box('t', [1500, 4000], 1200, 600, 0, 400) },
    { why: 'narrower than the detector', object: box('t', [1500, 4000], 1200, 99, 0, 762) },
    { why: 'within 12 in of the wall', object: box('t', [150, 4000], 250, 600, 0, 762) },
    { why: 'outdoors', object: box('t', [-3000, 4000], 1200, 600, 0, 762) },
  ])('passes over an object that is $why', ({ object }) => {
    const spots = spotsOn(den(8000, 8000, { objects: [object] }), { count: 1, onFurniture: true });
    expect(spots.map(({ on }) => on)).toEqual([null]);
  });

  it('finds a stool that is hardly broader than the detector, wherever it stands and however it is turned', () => {
    const place = fc.tuple(evenly(1000, 7000), evenly(1000, 7000));
    fc.assert(
      fc.property(place, fc.integer({ min: 0, max: 89 }), (center, turn) => {
        const shape = { box: { center, width: 100.01, depth: 100.01, turn } };
        const stool = { id: 'stool', name: '', shape, bottom: 0, top: 600 };
        const [spot] = spotsOn(den(8000, 8000, { objects: [stool] }), { onFurniture: true });
        expect(spot?.on).toBe('stool');
      }),
      { numRuns: howMany(25, 60) },
    );
  });

  it('keeps the foot 2 in off the edge of a table, as far off as there is room on a stool', () => {
    const stool = box('stool', [6000, 6000], 140, 140, 0, 762);
    const spots = spotsOn(den(8000, 8000, { objects: [table, stool] }), { count: 4, onFurniture: true });
    for (const { at, on } of spots.filter((one) => one.on !== null)) {
      const [center, half, off] = on === 'table' ? [[1500, 4000], [600, 300], 50.8] : [[6000, 6000], [70, 70], 18];
      for (const k of [0, 1] as const) {
        const inside = (half[k] as number) - Math.abs(at[k] - (center[k] as number)) - 50;
        expect(inside, `${on}`).toBeGreaterThanOrEqual(off - 0.2);
      }
    }
  });

  it('does not set a detector on a table where a taller thing stands on it', () => {
    const lamp = box('lamp', [1500, 4000], 690, 600, 762, 1900);
    const spots = spotsOn(den(8000, 8000, { objects: [table, lamp] }), { count: 3, apart: 100, onFurniture: true });
    const carried = spots.filter(({ on }) => on === 'table');
    expect(carried.length).toBeGreaterThan(0);
    // The lamp's foot ends at 1,155 and 1,845; 4 in plus the radius are required.
    for (const { at } of carried) expect(Math.abs(at[0] - 1500)).toBeGreaterThanOrEqual(345 + 50 + OBJECT - 0.1);
  });
});

/** A random level under the plan's own or a published profile. */
const scene = fc
  .record({ seed: fc.integer({ min: 1, max: 1e6 }), chance: fc.integer({ min: 0, max: 1e6 }) })
  .map(({ seed, chance }) => {
    const dice = new Dice(chance);
    const made = randomPlan(seed);
    const plan: Plan = dice.chance(0.6)
      ? made
      : { ...made, protocol: { profile: dice.pick(PROFILES).id, overrides: [] } };
    const probe = { base: dice.pick([762, 900]), radius: dice.pick([50.8, 30, 100]), tall: 25.4 };
    return { seed, plan, level: plan.levels[0] as Level, probe };
  });

function isBlocked(plan: Plan, model: LevelModel, probe: Probe, at: XY): boolean {
  const { checks } = checkDetector(plan, model, { ...probe, id: '(spot)', label: '', at, pair: null }, []);
  return checks.some(
    ({ rule, verdict, notRun }) => rule !== 'level' && !notRun && (verdict === 'blocked' || verdict === 'unknown'),
  );
}

describe('bestSpots, on levels by chance', () => {
  it('gives spots that no check blocks, with the margin that the checks find, and none where the region is empty', () => {
    fc.assert(
      fc.property(scene, ({ plan, level, probe }) => {
        const model = buildLevel(level);
        const spots = bestSpots(plan, model, probe, { count: 3 });
        for (const { at, margin, bound, room } of spots) {
          expect(isBlocked(plan, model, probe, at)).toBe(false);
          expect(Math.abs(margin - leastMargin(plan, model, probe, at))).toBeLessThan(1e-9);
          expect(bound).toBeGreaterThanOrEqual(margin);
          expect(bound).toBeLessThanOrEqual(margin + DOUBT + 1e-3);
          expect(levelRegion(plan, model, probe).rooms.find((one) => one.room === room)?.barred).toBe('');
        }
        const area = levelRegion(plan, model, probe).rooms.reduce((sum, one) => sum + one.area, 0);
        // Between 0 and 1 mm² either answer is right.
        if (area === 0 || area > 1) expect(spots.length > 0).toBe(area > 0);
      }),
      { numRuns: howMany(25, 60) },
    );
  });

  it('finds no better place by trying many', () => {
    fc.assert(
      fc.property(scene, fc.integer({ min: 0, max: 1e6 }), ({ plan, level, probe }, chance) => {
        const model = buildLevel(level);
        const [best] = bestSpots(plan, model, probe);
        const dice = new Dice(chance);
        for (let k = 0; k < 60; k++) {
          const { from, to } = dice.pick(level.walls);
          const at: XY = [from[0] + dice.between(-4000, 4000), to[1] + dice.between(-4000, 4000)];
          if (isBlocked(plan, model, probe, at)) continue;
          expect(best?.bound).toBeGreaterThanOrEqual(leastMargin(plan, model, probe, at) - 1e-9);
        }
      }),
      { numRuns: howMany(20, 50) },
    );
  });

  it('says the same twice, from a level built anew', () => {
    fc.assert(
      fc.property(scene, ({ plan, level, probe }) => {
        const ask = (one: Level) =>
          bestSpots(plan, buildLevel(one), probe, { count: 4 }).map(({ room: { key }, ...spot }) => ({ ...spot, key }));
        expect(ask({ ...level })).toEqual(ask(structuredClone(level)));
      }),
      { numRuns: howMany(10, 30) },
    );
  });

  it('sets detectors on furniture with the whole rim on it and no check against it at that height', () => {
    fc.assert(
      fc.property(scene, ({ plan, level, probe }) => {
        const model = buildLevel(level);
        for (const { at, base, on } of bestSpots(plan, model, probe, { count: 3, apart: 300, onFurniture: true })) {
          const carrier = level.objects.find(({ id }) => id === on);
          expect(base).toBe(carrier ? carrier.top : probe.base);
          if (!carrier) continue;
          expect(signedBodyDistance(shapeBody(carrier.shape), ...at)).toBeLessThanOrEqual(-probe.radius + 0.1);
          expect(isBlocked(plan, model, { ...probe, base }, at)).toBe(false);
        }
      }),
      { numRuns: howMany(15, 40) },
    );
  });
});
