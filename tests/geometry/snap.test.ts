import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { XY } from '../../geometry/plan/model.ts';
import { onGrid, RIGHT_ANGLES, type SnapOptions, type SnapTargets, snapPoint, tidy } from '../../geometry/snap.ts';
import { snapMove } from '../../geometry/snap-move.ts';

const NOTHING: SnapTargets = { ends: [], centreLines: [], faces: [] };
const options = (change: Partial<SnapOptions> = {}): SnapOptions => ({
  reach: 100,
  grid: null,
  from: null,
  directions: RIGHT_ANGLES,
  ...change,
});
const point = fc.tuple(fc.integer({ min: -9000, max: 9000 }), fc.integer({ min: -9000, max: 9000 })).map((p): XY => p);

describe('snapPoint', () => {
  it.each([
    {
      name: 'an end within reach wins over everything',
      at: [1060, 40] as XY,
      targets: {
        ...NOTHING,
        ends: [[1000, 0] as XY],
        centreLines: [
          [
            [0, 40],
            [2000, 40],
          ] as [XY, XY],
        ],
      },
      change: { from: [0, 50] as XY, grid: 25.4 },
      to: [1000, 0],
      hold: 'end',
    },
    {
      name: 'an end out of reach does not hold',
      at: [1080, 70] as XY, // 106 mm away, and level with it in neither way
      targets: { ...NOTHING, ends: [[1000, 0] as XY] },
      change: {},
      to: [1080, 70],
      hold: 'none',
    },
    {
      name: 'a wall drawn nearly level is level',
      at: [3000, 60] as XY,
      targets: NOTHING,
      change: { from: [0, 0] as XY },
      to: [3000, 0],
      hold: 'angle',
    },
    {
      name: 'and as long as whole inches',
      at: [3000, 60] as XY,
      targets: NOTHING,
      change: { from: [0, 0] as XY, grid: 25.4 },
      to: [2997.2, 0], // 118 in
      hold: 'angle',
    },
    {
      name: 'at 45 degrees both parts are equal',
      at: [1000, 1040] as XY,
      targets: NOTHING,
      change: { from: [0, 0] as XY },
      to: [1020, 1020],
      hold: 'angle',
    },
    {
      name: 'off every kept direction it stays where it is',
      at: [1000, 400] as XY, // 21.8 degrees
      targets: NOTHING,
      change: { from: [0, 0] as XY },
      to: [1000, 400],
      hold: 'none',
    },
    {
      name: 'a level wall ends on the wall that it comes near',
      at: [4950, 30] as XY,
      targets: {
        ...NOTHING,
        centreLines: [
          [
            [5000, -2000],
            [5000, 2000],
          ] as [XY, XY],
        ],
      },
      change: { from: [0, 0] as XY, grid: 25.4 },
      to: [5000, 0],
      hold: 'crossing',
    },
    {
      name: 'a level wall stops square across from another end',
      at: [4950, 30] as XY,
      targets: { ...NOTHING, ends: [[5000, 3000] as XY] },
      change: { from: [0, 0] as XY, grid: 25.4 },
      to: [5000, 0],
      hold: 'aligned',
    },
    {
      name: 'a first point goes onto a wall',
      at: [700, 80] as XY,
      targets: {
        ...NOTHING,
        centreLines: [
          [
            [0, 0],
            [2000, 0],
          ] as [XY, XY],
        ],
      },
      change: { grid: 25.4 },
      to: [700, 0],
      hold: 'wall',
    },
    {
      name: 'a first point goes to the grid',
      at: [30, 49] as XY,
      targets: NOTHING,
      change: { grid: 50 },
      to: [50, 50],
      hold: 'grid',
    },
  ])('$name', ({ at, targets, change, to, hold }) => {
    const snapped = snapPoint(at, targets, options(change));
    expect(snapped.at).toEqual(to);
    expect(snapped.hold).toBe(hold);
  });

  it('moves a free first point by no more than half a grid step each way', () => {
    fc.assert(
      fc.property(point, fc.integer({ min: 1, max: 300 }), (at, grid) => {
        const {
          at: [x, y],
        } = snapPoint(at, NOTHING, options({ grid }));
        expect(Math.abs(x - at[0])).toBeLessThanOrEqual(grid / 2 + 1e-3);
        expect(Math.abs(y - at[1])).toBeLessThanOrEqual(grid / 2 + 1e-3);
      }),
    );
  });

  it('does not depend on which way round the other walls were drawn', () => {
    fc.assert(
      fc.property(point, point, point, (at, a, b) => {
        fc.pre(a[0] !== b[0] || a[1] !== b[1]);
        const there = snapPoint(at, { ...NOTHING, centreLines: [[a, b]] }, options({ reach: 4000 }));
        const back = snapPoint(at, { ...NOTHING, centreLines: [[b, a]] }, options({ reach: 4000 }));
        expect(there.at[0]).toBeCloseTo(back.at[0], 3);
        expect(there.at[1]).toBeCloseTo(back.at[1], 3);
      }),
    );
  });
});

describe('the grid', () => {
  it('gives coordinates as a tape has them, without the dust of arithmetic', () => {
    expect(onGrid([915, 76], 25.4)).toEqual([914.4, 76.2]); // 36 in, 3 in
    expect(tidy(25.4 * 35.99999999999)).toBe(914.4);
    expect(Object.is(tidy(-0.00001), 0)).toBe(true);
  });
});

describe('snapMove', () => {
  const square: readonly XY[] = [
    [0, 0],
    [500, 0],
    [500, 500],
    [0, 500],
  ];
  const room: SnapTargets = {
    ...NOTHING,
    faces: [
      [
        [-1000, -300],
        [4000, -300],
      ],
      [
        [4000, -300],
        [4000, 3000],
      ],
    ],
  };

  it('draws a thing up to a wall face', () => {
    const { by } = snapMove(square, [700, -260], room, { reach: 60, grid: null });
    expect(by).toEqual([700, -300]);
  });

  it('sets it into a corner', () => {
    const { by, guides } = snapMove(square, [3470, -260], room, { reach: 60, grid: null });
    expect(by).toEqual([3500, -300]);
    expect(guides).toHaveLength(2);
  });

  it('slides along the face by whole steps', () => {
    const { by } = snapMove(square, [712, -260], room, { reach: 60, grid: 50 });
    expect(by).toEqual([700, -300]);
  });

  it('away from walls moves the first corner onto the grid', () => {
    const { by } = snapMove([[10, 20]], [101, 101], NOTHING, { reach: 60, grid: 50 });
    expect(by).toEqual([90, 80]);
  });

  it('turns no face into a step of nothing when there is no grid', () => {
    const { by } = snapMove(square, [123.4, 567.8], NOTHING, { reach: 60, grid: null });
    expect(by).toEqual([123.4, 567.8]);
  });
});
