import { describe, expect, it } from 'vitest';
import type { Edge } from '../../../geometry/arrangement/types.ts';
import { blockingChecks } from '../../../geometry/check/blocking-checks.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Detector, Level, Override, XY } from '../../../geometry/plan/model.ts';
import { levelRegion } from '../../../geometry/region/level-region.ts';
import { arcRingsContain, edgeEnds, nearestOnEdge, nearestSpot } from '../../../geometry/region/nearest.ts';
import { detectorAt, drawn, loop, planOf, rectangle, wall } from '../../helpers/drawn.ts';
import { howMany } from '../../helpers/how-many.ts';
import { Dice } from '../../helpers/random-level/dice.ts';
import { randomPlan } from '../../helpers/random-level.ts';

const PROBE: Detector = detectorAt([0, 0]);
/** Width of the zone of outside walls, mm: 12 in from the rim of 50.8, minus the limit tolerance. */
const OFF_WALL = 304.8 + 50.8 - 0.1;

function regionOf(rest: Partial<Level>, overrides: readonly Override[] = []) {
  const level = drawn(loop('h', rectangle(0, 0, 6000, 4000)), {
    rooms: [{ id: 'r1', name: '', use: 'den', at: [1000, 1000] }],
    ...rest,
  });
  const plan = planOf(level, { protocol: { profile: 'home-short-term', overrides } });
  return levelRegion(plan, buildLevel(level), PROBE);
}

describe('the nearest spot that is free', () => {
  it.each<{ name: string; at: XY; spot: XY; mm: number; degrees: number }>([
    { name: 'itself where it is free', at: [2000, 2000], spot: [2000, 2000], mm: 0, degrees: 0 },
    {
      name: 'straight off the wall above',
      at: [3000, 200],
      spot: [3000, 100 + OFF_WALL],
      mm: OFF_WALL - 100,
      degrees: 90,
    },
    {
      name: 'straight off the wall on the right',
      at: [5850, 2000],
      spot: [5900 - OFF_WALL, 2000],
      mm: OFF_WALL - 50,
      degrees: 180,
    },
    {
      name: 'off both walls in a corner',
      at: [100, 100],
      spot: [100 + OFF_WALL, 100 + OFF_WALL],
      mm: OFF_WALL * Math.SQRT2,
      degrees: 45,
    },
    { name: 'from outdoors', at: [3000, -900], spot: [3000, 100 + OFF_WALL], mm: 1000 + OFF_WALL, degrees: 90 },
  ])('is $name', ({ at, spot, mm, degrees }) => {
    const found = nearestSpot(regionOf({}), at);
    expect(found?.at[0]).toBeCloseTo(spot[0], 9);
    expect(found?.at[1]).toBeCloseTo(spot[1], 9);
    expect(found?.distance).toBeCloseTo(mm, 9);
    expect(found?.direction).toBeCloseTo(degrees, 9);
  });

  it('lies on the circle around a round thing', () => {
    const furnace = {
      id: 'f1',
      kind: 'furnace',
      name: '',
      shape: { circle: { center: [3000, 2000], radius: 200 } },
      bottom: 0,
      top: 0,
      stream: null,
    } as const;
    const found = nearestSpot(regionOf({ fixtures: [furnace] }), [3300, 2400]);
    // 500 off the middle, in the direction 3-4-5; 200 + 1219.2 + 50.8 − 0.1 = 1469.9 is required.
    expect(found?.at[0]).toBeCloseTo(3000 + 1469.9 * 0.6, 9);
    expect(found?.at[1]).toBeCloseTo(2000 + 1469.9 * 0.8, 9);
    expect(found?.distance).toBeCloseTo(969.9, 9);
  });

  it('may be in the next room, and is never in one that is barred', () => {
    const walls = [...loop('h', rectangle(0, 0, 6000, 4000)), wall('p', [3000, 0], [3000, 4000], { thickness: 100 })];
    const rooms = [
      { id: 'r1', name: '', use: 'kitchen', at: [1000, 1000] },
      { id: 'r2', name: '', use: 'den', at: [5000, 1000] },
    ] as const;
    const found = nearestSpot(regionOf({ walls, rooms }), [1500, 2000]);
    expect(found?.room.label?.id).toBe('r2');
    // The partition's face is at 3050; inside walls require 4 in.
    expect(found?.at[0]).toBeCloseTo(3050 + 101.6 + 50.8 - 0.1, 9);
    expect(found?.at[1]).toBeCloseTo(2000, 9);
  });

  it('of two rooms that are equally near is in the first', () => {
    const walls = [...loop('h', rectangle(-3000, 0, 6000, 4000)), wall('p', [0, 0], [0, 4000], { thickness: 100 })];
    const rooms = [
      { id: 'r1', name: '', use: 'den', at: [-1000, 1000] },
      { id: 'r2', name: '', use: 'den', at: [1000, 1000] },
    ] as const;
    const region = regionOf({ walls, rooms });
    const found = nearestSpot(region, [0, 2000]);
    expect(found?.distance).toBeCloseTo(50 + 101.6 + 50.8 - 0.1, 9);
    expect(found?.room).toBe(region.rooms[0]?.room);
  });

  it('is none where nothing is free', () => {
    const rooms = [{ id: 'r1', name: '', use: 'kitchen', at: [1000, 1000] }] as const;
    expect(nearestSpot(regionOf({ rooms }), [1000, 1000])).toBeNull();
    expect(nearestSpot(regionOf({ walls: [] }), [1000, 1000])).toBeNull();
  });

  it('is free, and no spot of the region is nearer, on random levels', () => {
    const dice = new Dice(7);
    let looked = 0;
    for (let seed = 1; seed <= howMany(25, 60); seed++) {
      const plan = randomPlan(seed);
      const [level] = plan.levels;
      const [probe] = level?.detectors ?? [];
      if (!level || !probe) throw new Error('a level without a detector');
      const model = buildLevel(level);
      const region = levelRegion(plan, model, probe);
      const free = sampled(
        region.rooms.flatMap(({ rings }) => (rings.length > 0 ? [rings] : [])),
        dice,
      );
      for (let i = 0; i < 5; i++) {
        const at: XY = [probe.at[0] + dice.between(-4000, 4000), probe.at[1] + dice.between(-4000, 4000)];
        const spot = nearestSpot(region, at);
        expect(spot === null).toBe(region.rooms.every(({ rings }) => rings.length === 0));
        if (!spot) continue;
        looked++;
        for (const [x, y] of free) {
          expect(Math.hypot(x - at[0], y - at[1])).toBeGreaterThanOrEqual(spot.distance - 1e-6);
        }
        const short = blockingChecks(plan, model, probe, spot.at).filter(
          ({ rule, margin }) => rule !== 'level' && (margin ?? -1) < -0.1 - 1e-6,
        );
        expect(short).toEqual([]);
      }
    }
    expect(looked).toBeGreaterThan(howMany(40, 100));
  });
});

/** Points of a grid over each room that are in its region. */
function sampled(rooms: readonly (readonly (readonly Edge[])[])[], dice: Dice): XY[] {
  return rooms.flatMap((rings) => {
    const ends = rings.flat().flatMap((edge) => edgeEnds(edge));
    const [xs, ys] = [ends.map(([x]) => x), ends.map(([, y]) => y)];
    return Array.from(
      { length: 300 },
      (): XY => [dice.between(Math.min(...xs), Math.max(...xs)), dice.between(Math.min(...ys), Math.max(...ys))],
    ).filter((p) => arcRingsContain(rings, p));
  });
}

describe('nearestOnEdge(edge, p)', () => {
  const arc: Edge = { kind: 'arc', center: [0, 0], radius: 5, start: 0, sweep: Math.PI / 2 };
  it.each<{ name: string; edge: Edge; p: XY; nearest: XY }>([
    { name: 'within the angle of an arc', edge: arc, p: [6, 8], nearest: [3, 4] },
    { name: 'from inside the circle', edge: arc, p: [0.3, 0.4], nearest: [3, 4] },
    { name: 'before its start', edge: arc, p: [6, -1], nearest: [5, 0] },
    { name: 'beyond its end', edge: arc, p: [-2, 6], nearest: [0, 5] },
    { name: 'of an arc that turns the other way', edge: { ...arc, sweep: -Math.PI / 2 }, p: [6, -8], nearest: [3, -4] },
    { name: 'beside a line', edge: { kind: 'line', from: [0, 0], to: [10, 0] }, p: [4, 3], nearest: [4, 0] },
    {
      name: 'beyond the end of a line',
      edge: { kind: 'line', from: [0, 0], to: [10, 0] },
      p: [13, 4],
      nearest: [10, 0],
    },
  ])('$name', ({ edge, p, nearest }) => {
    const [x, y] = nearestOnEdge(edge, p);
    expect(x).toBeCloseTo(nearest[0], 12);
    expect(y).toBeCloseTo(nearest[1], 12);
  });
});
