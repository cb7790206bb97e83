import { describe, expect, it } from 'vitest';
import type { Wall, XY } from '../../../geometry/plan/model.ts';
import { centerLines } from '../../../geometry/recheck/center-lines.ts';
import { direction, nearestOnSegment, ringDistance, segmentDistance } from '../../../geometry/recheck/plane.ts';
import { streamDistance } from '../../../geometry/recheck/shapes.ts';
import { sunPlace } from '../../../geometry/recheck/sun-place.ts';
import { wallLayout } from '../../../geometry/recheck/wall-layout.ts';
import { boxWalls, levelOf, wall } from '../../helpers/level-of.ts';

describe('sunPlace(instant, latitude, longitude)', () => {
  it('has the declination of the worked example of Meeus, Astronomical Algorithms (1998), 25.a', () => {
    // At the pole the altitude is the declination, raised by the refraction of formula 16.4 at −1°, the lowest altitude that it is used for.
    const lift = 1.02 / 60 / Math.tan(((-1 + 10.3 / (-1 + 5.11)) * Math.PI) / 180);
    expect(Math.abs(sunPlace(Date.UTC(1992, 9, 13), 90, 0).altitude - lift - -7.78507)).toBeLessThan(1e-5);
  });
});

describe('distances', () => {
  it('to a segment without length are those to its point', () => {
    expect(nearestOnSegment([3, 4], [0, 0], [0, 0])).toEqual([0, 0]);
    expect(segmentDistance([3, 4], [0, 0], [0, 0])).toBe(5);
  });

  it('have a direction of length 1, also over a distance of 1; without one it is +x', () => {
    expect(direction([2, 3], [2, 4])).toEqual([0, 1]);
    expect(direction([2, 3], [2, 8])).toEqual([0, 1]);
    expect(direction([2, 3], [2, 3])).toEqual([1, 0]);
  });

  it('to an area are 0 in it, and beside its box those to its sides', () => {
    const ring: XY[] = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ];
    expect(ringDistance([5, 5], ring)).toBe(0);
    for (const [p, expected] of [
      [[-3, 5], 3],
      [[13, 5], 3],
      [[5, -3], 3],
      [[5, 13], 3],
      [[13, 14], 5],
    ] as [XY, number][])
      expect(ringDistance(p, ring)).toBe(expected);
  });
});

describe('streamDistance(shape, stream, p)', () => {
  const shape = { circle: { center: [0, 0], radius: 100 } } as const;
  const distance = (spread: number, p: XY) => streamDistance(shape, { direction: 0, spread, reach: 1000 }, p);

  it('all around is a disc without edges', () => {
    // In the opposite direction, where the two edges of a sector would meet.
    expect(distance(360, [-500, 0])).toBeCloseTo(-500, 9);
    expect(distance(360, [-1300, 0])).toBeCloseTo(300, 9);
  });

  it('of a sector is to its edges beside it, to its arc before it, and negative within', () => {
    expect(distance(90, [300, 0])).toBeCloseTo(-300 * Math.SQRT1_2, 9);
    expect(distance(90, [900, 0])).toBeCloseTo(-100, 9);
    expect(distance(90, [1200, 0])).toBeCloseTo(200, 9);
    expect(distance(90, [0, 300])).toBeCloseTo(300 * Math.SQRT1_2, 9);
    expect(distance(90, [-400, 0])).toBeCloseTo(400, 9);
    // Beyond the tip of an edge, along it.
    expect(distance(90, [1100 * Math.SQRT1_2, 1100 * Math.SQRT1_2 + 1e-9])).toBeCloseTo(100, 6);
  });
});

describe('centerLines(walls)', () => {
  const long = wall('long', [-5000, 0], [5000, 0]);
  const piecesOf = (from: XY, to: XY) => centerLines([long, wall('w', from, to)] as Wall[]).length - 2;

  it.each<[string, number, number]>([
    ['on it', 0, 0],
    ['half an inch short of it', 12.7, 1],
    ['more', 12.8, 0],
    ['a little over it', -10, 0],
    ['farther over it, as far as a crossing', -20, 0],
  ])('join the end of a wall that is meant to meet another: %s', (_, y, expected) => {
    expect(piecesOf([0, 3000], [0, y])).toBe(expected);
    expect(piecesOf([0, y], [0, 3000])).toBe(expected);
  });
});

describe('centerLines(walls), of what is no real drawing', () => {
  it('leaves out a wall without a direction', () => {
    const lines = centerLines([wall('w', [0, 0], [5000, 0]), wall('dot', [0, 500], [0.05, 500])]);
    expect(lines.map((line) => line.wall.id)).toEqual(['w']);
  });

  it('does not try where an end all but meets more than 24 walls', () => {
    const rows = (count: number) =>
      Array.from({ length: count }, (_, i) => wall(`r${i}`, [-5000, 0.4 * i], [5000, 0.4 * i]));
    const end = wall('w', [0, -3000], [0, -1]);
    expect(() => centerLines([...rows(25), end])).toThrow('more than 24 walls');
    expect(centerLines([...rows(24), end]).length).toBeGreaterThan(25);
  });
});

it('48 walls may meet at one place, and no more', () => {
  const spokes = (count: number) =>
    Array.from({ length: count }, (_, i) => {
      const turn = (2 * Math.PI * i) / count;
      return wall(`s${i}`, [5000, 4000], [5000 + 3000 * Math.cos(turn), 4000 + 3000 * Math.sin(turn)]);
    });
  const level = (count: number) => levelOf({ walls: [...boxWalls(0, 0, 10_000, 8000, 200), ...spokes(count)] });
  expect(() => wallLayout(level(48))).not.toThrow();
  expect(() => wallLayout(level(49))).toThrow('more than 48 walls meet at one place');
});

describe('joints, by the second computation', () => {
  const gapTo = (walls: readonly Wall[], p: XY) =>
    Math.min(...wallLayout(levelOf({ walls: [...walls] })).bodies.map(({ ring }) => ringDistance(p, ring)));

  it('of two walls on one line that were drawn in opposite directions are those of the thicker one', () => {
    // It ends at x = 5000, where another wall runs down: the corner at (5050, -200) is filled up to its face at y = -200.
    const walls = [
      wall('thin', [0, 0], [5000, 0], 100),
      wall('thick', [5000, 0], [0, 0], 400),
      wall('down', [5000, 0], [5000, 4000], 100),
    ];
    expect(gapTo(walls, [5040, -190])).toBe(0);
    expect(gapTo(walls, [5040, -210])).toBeCloseTo(10, 9);
    expect(gapTo(walls, [5060, -190])).toBeCloseTo(10, 9);
  });

  it('at a slight bend end at the face of the thin wall, where the end of the thick one stands beside it', () => {
    // From the origin one wall runs left and the other right, 20 degrees down. The gap is above: it is filled up to y = -50.
    const turn = Math.PI / 9;
    const far: XY = [5000 * Math.cos(turn), 5000 * Math.sin(turn)];
    const walls = [wall('thin', [0, 0], [-5000, 0], 100), wall('thick', [0, 0], far, 600)];
    // The upper face of the thin wall meets the end of the thick one at x = 50 · tan(20°).
    const middle = (50 * Math.tan(turn)) / 2;
    expect(gapTo(walls, [middle, -49.9])).toBe(0);
    expect(gapTo(walls, [middle, -50.5])).toBeCloseTo(0.5, 9);
  });
});

describe('a cavity behind a wall, by the second computation', () => {
  const outer = boxWalls(0, 0, 20_000, 10_000, 200);
  const turned = ([x, y]: XY, turn: number): XY => [
    x * Math.cos(turn) - y * Math.sin(turn),
    x * Math.sin(turn) + y * Math.cos(turn),
  ];
  /** Returns whether walls named `s…` count as outside: then the space behind them is no room. */
  const isOutside = (walls: readonly Wall[], labels: readonly XY[] = [], turn = 0) => {
    const level = levelOf({
      walls: walls.map((one) => ({ ...one, from: turned(one.from, turn), to: turned(one.to, turn) })),
      rooms: [[10_000, 9000] as XY, ...labels].map((at, i) => ({
        id: `r${i}`,
        name: '',
        use: 'den',
        at: turned(at, turn),
      })),
    });
    return wallLayout(level)
      .bodies.filter(({ wall: id }) => id.startsWith('s'))
      .some(({ outside }) => outside);
  };
  /** A stud wall of 100 mm before the wall at the top, with a clear gap. */
  const studs = (gap: number) => wall('s', [0, 150 + gap], [20_000, 150 + gap]);

  it.each([
    [20, true],
    [305, true],
    [305.3, false],
    [600, false],
  ])('a gap of %d mm behind studs is none of the rooms: %s', (gap, expected) => {
    for (const turn of [0, 0.4]) expect(isOutside([...outer, studs(gap)], [], turn)).toBe(expected);
    // A label means that a person considers it a room.
    expect(isOutside([...outer, studs(gap)], [[10_000, 100 + gap / 2]])).toBe(false);
  });

  it('all but filled with walls, is still a room where half a meter of floor is left', () => {
    const filled = [
      ...boxWalls(0, 0, 20_000, 20_000, 200),
      wall('s', [0, 10_000], [20_000, 10_000], 200),
      // Left and right of the floor that is left, and below it: none of their sides has the middle at that floor.
      wall('a', [4500, 0], [4500, 9950], 9000),
      wall('b', [14_750, 0], [14_750, 9950], 10_500),
    ];
    const below = (end: number) => wall('c', [8100, 10_000], [8100, end], 3000);
    for (const turn of [0, 0.4]) {
      expect(isOutside([...filled, below(600)], [[10_000, 15_000]], turn)).toBe(false);
      expect(isOutside([...filled, below(50)], [[10_000, 15_000]], turn)).toBe(true);
    }
  });

  it('of a long gap with a pocket at its end the pocket is a room, wherever the end is', () => {
    for (const end of [19_200, 19_300, 19_400]) {
      const walls = [
        ...outer,
        wall('s1', [0, 250], [end, 250]),
        wall('s2', [end, 250], [end, 1200]),
        wall('s3', [end, 1200], [20_000, 1200]),
      ];
      for (const turn of [0, 0.4, 2]) expect(isOutside(walls, [], turn)).toBe(false);
    }
    const shallow = [
      ...outer,
      wall('s1', [0, 250], [19_500, 250]),
      wall('s2', [19_500, 250], [19_500, 1200]),
      wall('s3', [19_500, 1200], [20_000, 1200]),
    ];
    expect(isOutside(shallow, [], 0)).toBe(false);
    const narrow = shallow.map((one) => ({
      ...one,
      from: one.from[0] === 19_500 ? ([19_600, one.from[1]] as const) : one.from,
      to: one.to[0] === 19_500 ? ([19_600, one.to[1]] as const) : one.to,
    }));
    expect(isOutside(narrow, [], 0)).toBe(true);
  });
});
