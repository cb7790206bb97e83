import { afterEach, beforeAll, describe, expect, it } from 'vitest';
import { drawn, loop, planOf, rectangle, wall } from '../helpers/drawn.ts';
import { Dice } from '../helpers/random-level/dice.ts';
import { Clipper } from './clipper.ts';
import { Geos, type Points } from './geos.ts';
import { oracleLevel } from './geos-oracle.ts';
import { grownRings } from './region.ts';
import { oracleRows } from './rules.ts';

/* The oracle is checked against values computed by hand, so that engine and oracle cannot be wrong in the same way. */

let geos: Geos;
let clipper: Clipper;
beforeAll(async () => {
  geos = await Geos.open();
  clipper = await Clipper.open();
});
afterEach(() => geos.releaseAll());

const HOUSE = loop('h', rectangle(0, 0, 6000, 4000));

describe('zones of chords', () => {
  const RING: Points = [
    [0, 0],
    [900, 0],
    [1100, 500],
    [0, 700],
  ];
  const AREA = 0.5 * (900 * 500 - 1100 * 0 + (1100 * 700 - 0 * 500));
  const AROUND = 900 + Math.hypot(200, 500) + Math.hypot(1100, 200) + 700;

  it.each([
    ['a point', [[5, 5]] as Points, Math.PI * 914 ** 2],
    [
      'a line',
      [
        [0, 0],
        [300, 400],
      ] as Points,
      2 * 914 * 500 + Math.PI * 914 ** 2,
    ],
    ['a convex ring', RING, AREA + AROUND * 914 + Math.PI * 914 ** 2],
  ])('around %s enclose the true area from inside and outside, and hit it in the even form', (_, points, area) => {
    const of = (rounding: 'inside' | 'outside' | 'even') =>
      grownRings(points, 914, rounding, 64).reduce((sum, ring) => sum + geos.measure(geos.area([ring])), 0);
    expect(of('inside')).toBeLessThan(area);
    expect(of('outside')).toBeGreaterThan(area);
    expect(of('even')).toBeCloseTo(area, 3);
    expect(of('outside') - of('inside')).toBeLessThan(3e-4 * area);
  });

  it('are what GEOS itself makes of a body, be it convex or not', () => {
    const dice = new Dice(3);
    for (let i = 0; i < 50; i++) {
      const ring = Array.from({ length: 7 }, (_, k): [number, number] => {
        const [out, angle] = [dice.between(200, 900), (2 * Math.PI * k) / 7];
        return [out * Math.cos(angle), out * Math.sin(angle)];
      });
      // GEOS ignores dents of up to a hundredth of the distance, so the distance is small.
      const own = geos.measure(geos.buffer(geos.area([ring]), 60, 64));
      const frame: Points = rectangle(-2000, -2000, 4000, 4000);
      const left = clipper.areaLeft([frame], grownRings(ring, 60, 'inside', 64));
      expect(Math.abs(16e6 - left - own)).toBeLessThan(2e-3 * own);
    }
  });
});

describe('walls of the oracle', () => {
  const floors = (walls: Parameters<typeof drawn>[0]) => {
    const level = drawn(walls);
    const { rooms } = oracleLevel(geos, planOf(level), level).walls;
    return rooms.map(({ floorArea }) => Math.round(floorArea)).sort((a, b) => b - a);
  };

  it.each([
    ['a room', HOUSE, [5800 * 3800]],
    ['two rooms', [...HOUSE, wall('p', [2000, 0], [2000, 4000], { thickness: 100 })], [3850 * 3800, 1850 * 3800]],
    ['a stub', [...HOUSE, wall('s', [2000, 0], [2000, 1500], { thickness: 100 })], [5800 * 3800 - 1400 * 100]],
    ['a nib within the wall', [...HOUSE, wall('s', [2000, 0], [2000, 50], { thickness: 100 })], [5800 * 3800]],
    [
      'two rooms, the wall between half an inch short at either end',
      [...HOUSE, wall('p', [2000, 10], [2000, 3990], { thickness: 100 })],
      [3850 * 3800, 1850 * 3800],
    ],
    [
      'a thin wall askew within a thick one',
      [...HOUSE, wall('p', [0, 0], [6000, 8], { thickness: 100 })],
      [5800 * 3800],
    ],
    ['a free wall', [...HOUSE, wall('f', [2000, 2000], [3000, 2000], { thickness: 100 })], [5800 * 3800 - 1e5]],
    [
      'a free loop',
      [...HOUSE, ...loop('c', rectangle(2000, 1000, 2000, 1500), { thickness: 100 })],
      [5800 * 3800 - 2100 * 1600, 1900 * 1400],
    ],
  ])('leave the floor of %s', (_, walls, areas) => {
    expect(floors(walls)).toEqual(areas);
  });

  it.each([
    // From the face of the wall at 100 to that of the studs at `at` − 45.
    ['305 mm wide: the studs are outside', 450, 'outside-wall'],
    ['306 mm wide: a room', 451, 'object'],
  ] as const)('leave between studs and a foundation a space %s', (_, at, rule) => {
    const detector = { id: 'd', label: '', at: [3000, 1500] as const, base: 762, radius: 50, tall: 25, pair: null };
    const level = drawn([...HOUSE, wall('s', [0, at], [6000, at], { thickness: 90 })], { detectors: [detector] });
    const rows = oracleRows(oracleLevel(geos, planOf(level), level), detector).filter(({ subject }) => subject === 's');
    expect(rows.map((row) => row.rule)).toEqual([rule]);
    expect(rows[0]?.measured).toBeCloseTo(1500 - at - 45 - 50, 9);
  });

  it.each([
    // The foundation's faces meet 150 from both center-lines of the inner corner, whatever wall starts there.
    ['nothing', []],
    ['a partition in line', [wall('p', [6000, 4000], [6000, 0], { thickness: 115 })]],
    ['one at 45 degrees', [wall('p', [6000, 4000], [10000, 0], { thickness: 115 })]],
    ['one as thick as the foundation', [wall('p', [6000, 4000], [6000, 0], { thickness: 300 })]],
  ])('keep the inner corner of a foundation with %s', (_, more) => {
    const corners = [
      [0, 0],
      [10000, 0],
      [10000, 4000],
      [6000, 4000],
      [6000, 8000],
      [0, 8000],
    ] as const;
    const at = [5850 - 240, 3850 - 180] as const;
    const detector = { id: 'd', label: '', at, base: 762, radius: 50, tall: 25, pair: null };
    const level = drawn([...loop('f', corners, { thickness: 300 }), ...more], { detectors: [detector] });
    const rows = oracleRows(oracleLevel(geos, planOf(level), level), detector);
    const outside = rows.filter((row) => row.rule === 'outside-wall').map(({ measured }) => measured ?? Number.NaN);
    expect(Math.min(...outside)).toBeCloseTo(300 - 50, 9);
  });

  it('are measured from their faces, by piece exterior or interior', () => {
    const detector = { id: 'd', label: '', at: [1500, 700] as const, base: 762, radius: 50, tall: 25, pair: null };
    const level = drawn([...HOUSE, wall('p', [2000, 0], [2000, 4000], { thickness: 100 })], { detectors: [detector] });
    const rows = oracleRows(oracleLevel(geos, planOf(level), level), detector);
    const measured = (rule: string, subject: string) => {
      return rows.find((row) => row.rule === rule && row.subject === subject)?.measured;
    };
    expect(measured('outside-wall', 'h1')).toBeCloseTo(700 - 100 - 50, 9);
    expect(measured('outside-wall', 'h4')).toBeCloseTo(1500 - 100 - 50, 9);
    expect(measured('object', 'p')).toBeCloseTo(500 - 50 - 50, 9);
    expect(measured('outside-wall', 'p')).toBeUndefined();
  });
});
