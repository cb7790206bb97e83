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
    // 500 off the middle, in the direction 3-4-5; 200 + 1219.2 + 50.8 − 0.1 = 1469.9 is asked.
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
    // The partition's face is at 3050; inside walls keep 4 in.
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

/** https://en.wikipedia.org/wiki/Even–odd_rule: of areas that meet, one holds a point of the line between them. */
describe('arcRingsContain(rings, p), on the outline itself', () => {
  const ringOf = (corners: readonly XY[]) =>
    corners.map((from, i): Edge => ({ kind: 'line', from, to: corners[(i + 1) % corners.length] as XY }));

  it('does not depend on which way the outline runs', () => {
    const dice = new Dice(11);
    for (let i = 0; i < 300; i++) {
      const unit = dice.pick([0.125, 1]);
      const corners = [0, 1, 2].map((): XY => [dice.int(0, 4) * unit, dice.int(0, 4) * unit]);
      const [a, b] = corners as [XY, XY];
      // Halves of small whole numbers and of eighths are exact.
      const on: XY = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2];
      const turned = [...corners].reverse();
      expect(arcRingsContain([ringOf(corners)], on)).toBe(arcRingsContain([ringOf(turned)], on));
    }
  });

  it('of the two areas beside a line holds one', () => {
    const dice = new Dice(12);
    const square = (x: number, y: number): XY[] => [
      [x, y],
      [x + 8, y],
      [x + 8, y + 8],
      [x, y + 8],
    ];
    for (let i = 0; i < 300; i++) {
      const [one, two]: [XY, XY] = [
        [dice.int(1, 7), 0],
        [dice.int(1, 7), 8],
      ];
      const left = ringOf([[0, 0], one, two, [0, 8]]);
      const right = ringOf([one, [8, 0], [8, 8], two]);
      const on: XY = [(one[0] + two[0]) / 2, 4];
      expect([left, right].filter((ring) => arcRingsContain([ring], on))).toHaveLength(1);
    }
    // Left and upper sides are inside.
    expect(
      [
        [0, 4],
        [8, 4],
        [4, 0],
        [4, 8],
      ].map((p) => arcRingsContain([ringOf(square(0, 0))], p as unknown as XY)),
    ).toEqual([true, false, true, false]);
  });
});

describe('arcRingsContain(rings, p)', () => {
  const turn = (start: number, sweep: number): Edge => ({ kind: 'arc', center: [0, 0], radius: 10, start, sweep });
  /** A ring between circles of 10 and 4. */
  const annulus = [
    [turn(0, Math.PI), turn(Math.PI, Math.PI)],
    [
      { kind: 'arc', center: [0, 0], radius: 4, start: 0, sweep: -Math.PI } as const,
      { kind: 'arc', center: [0, 0], radius: 4, start: -Math.PI, sweep: -Math.PI } as const,
    ],
  ];
  /** The half of the disc below the x axis (y down): an arc and its chord. */
  const half = [[turn(0, Math.PI), { kind: 'line', from: [-10, 0], to: [10, 0] } as const]];

  it.each<{ p: XY; inAnnulus: boolean; inHalf: boolean }>([
    { p: [0, 0.001], inAnnulus: false, inHalf: true },
    { p: [0, 7], inAnnulus: true, inHalf: true },
    { p: [0, -7], inAnnulus: true, inHalf: false },
    { p: [-7, 0.001], inAnnulus: true, inHalf: true },
    { p: [7, -0.001], inAnnulus: true, inHalf: false },
    { p: [7.08, 7.08], inAnnulus: false, inHalf: false },
    { p: [7.06, 7.06], inAnnulus: true, inHalf: true },
    { p: [-20, 3], inAnnulus: false, inHalf: false },
    { p: [2.8, 2.8], inAnnulus: false, inHalf: true },
  ])('$p', ({ p, inAnnulus, inHalf }) => {
    expect(arcRingsContain(annulus, p)).toBe(inAnnulus);
    expect(arcRingsContain(half, p)).toBe(inHalf);
  });

  it.each([
    ['left to right', Math.PI],
    ['right to left', 0],
    ['downward', -Math.PI / 2],
    ['upward', Math.PI / 2],
  ])('holds a point exactly on the chord of an arc that runs %s, bulging to either side', (_, start) => {
    // Half a disc of 0.25 mm at a place where its ends are exact, and a square on the other side of the chord.
    const [x, y, r] = [4096, 4096, 0.25];
    const [along, out] = [
      [-Math.round(Math.cos(start)) * 2 * r, -Math.round(Math.sin(start)) * 2 * r],
      [Math.round(Math.sin(start)), -Math.round(Math.cos(start))],
    ] as [XY, XY];
    const a: XY = [x - along[0] / 2, y - along[1] / 2];
    const b: XY = [x + along[0] / 2, y + along[1] / 2];
    for (const sweep of [Math.PI, -Math.PI]) {
      // Clockwise on screen the arc bulges left of its way, and the square lies right of it.
      const side = sweep > 0 ? 2 * r : -2 * r;
      const [c, d]: [XY, XY] = [
        [b[0] + out[0] * side, b[1] + out[1] * side],
        [a[0] + out[0] * side, a[1] + out[1] * side],
      ];
      const ring: Edge[] = [
        { kind: 'arc', center: [x, y], radius: r, start, sweep },
        { kind: 'line', from: b, to: c },
        { kind: 'line', from: c, to: d },
        { kind: 'line', from: d, to: a },
      ];
      const at = (share: number, far: number): XY => [
        x + along[0] * share + out[0] * far * Math.sign(side),
        y + along[1] * share + out[1] * far * Math.sign(side),
      ];
      for (const share of [-0.25, 0, 0.3]) {
        expect(arcRingsContain([ring], at(share, 0))).toBe(true);
        expect(arcRingsContain([ring], at(share, 0.2))).toBe(true);
        expect(arcRingsContain([ring], at(share, -0.2))).toBe(true);
        expect(arcRingsContain([ring], at(share, 0.6))).toBe(false);
        expect(arcRingsContain([ring], at(share, -0.3))).toBe(false);
      }
    }
  });

  it('is not misled where the line of sight runs exactly through a corner or along the top of an arc', () => {
    const dice = new Dice(20);
    for (let round = 0; round < 300; round++) {
      const center: XY = [dice.between(-5000, 5000), dice.pick([0, 1000, dice.between(-5000, 5000)])];
      const radius = dice.pick([965.2, 1270, dice.between(1, 3000)]);
      const count = dice.pick([2, 3, 4, 4, 7]);
      const from = dice.pick([-Math.PI, 0, dice.between(-3, 3)]);
      const sweep = (dice.pick([1, -1]) * 2 * Math.PI) / count;
      const ring = Array.from(
        { length: count },
        (_, k): Edge => ({ kind: 'arc', center, radius, start: from + k * sweep, sweep }),
      );
      const heights = ring.flatMap((edge) => edgeEnds(edge).map(([, y]) => y));
      for (const y of [...heights, center[1] - radius, center[1] + radius, center[1]]) {
        for (const off of [-1.5, -1.01, -0.5, 0.3, 0.99, 1.2]) {
          const p: XY = [center[0] + off * radius, y];
          const out = Math.hypot(p[0] - center[0], p[1] - center[1]) - radius;
          if (Math.abs(out) > 1e-6) expect(arcRingsContain([ring], p), `${p}`).toBe(out < 0);
        }
      }
    }
  });
});
