import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { roomAt } from '../../../geometry/check/room.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Shape, Wall, XY } from '../../../geometry/plan/model.ts';
import { type Body, ringBody, shapeBody, signedBodyDistance } from '../../../geometry/plane/body.ts';
import { roundCoordinate } from '../../../geometry/plane/point.ts';
import { translateShape } from '../../../geometry/plane/rigid-motion.ts';
import { emptyLevel } from '../../../geometry/planfile/empty.ts';
import { type Outline, outlineOf } from '../../../geometry/snap/face-gap.ts';
import { facesAbout, type RoomFaces } from '../../../geometry/snap/room-faces.ts';
import { snapMove } from '../../../geometry/snap/snap-move.ts';
import {
  onGrid,
  RIGHT_ANGLES,
  type SnapOptions,
  type SnapTargets,
  snapPoint,
} from '../../../geometry/snap/snap-point.ts';
import { evenly } from '../../helpers/evenly.ts';

const NOTHING: SnapTargets = { ends: [], centerLines: [], faces: [] };
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
        centerLines: [
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
      at: [1080, 70] as XY, // 106 mm away, and aligned with it on neither axis
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
        centerLines: [
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
        centerLines: [
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
        const there = snapPoint(at, { ...NOTHING, centerLines: [[a, b]] }, options({ reach: 4000 }));
        const back = snapPoint(at, { ...NOTHING, centerLines: [[b, a]] }, options({ reach: 4000 }));
        expect(there.at[0]).toBeCloseTo(back.at[0], 3);
        expect(there.at[1]).toBeCloseTo(back.at[1], 3);
      }),
    );
  });
});

describe('the grid', () => {
  it('gives coordinates as a tape has them, without the dust of arithmetic', () => {
    expect(onGrid([915, 76], 25.4)).toEqual([914.4, 76.2]); // 36 in, 3 in
    expect(roundCoordinate(25.4 * 35.99999999999)).toBe(914.4);
    expect(Object.is(roundCoordinate(-0.00001), 0)).toBe(true);
  });
});

describe('snapMove', () => {
  const square: Outline = {
    points: [
      [0, 0],
      [500, 0],
      [500, 500],
      [0, 500],
    ],
    radius: 0,
  };
  /** A room below and to the left of two faces. */
  const room: RoomFaces = {
    lines: [
      [
        [-1000, -300],
        [4000, -300],
      ],
      [
        [4000, -300],
        [4000, 3000],
      ],
    ],
    from: [1000, 500],
  };
  const moved = (by: XY, grid: number | null, faces: RoomFaces | null = room) =>
    snapMove([square], [0, 0], by, faces, { reach: 60, grid });

  it('draws a thing up to a wall face', () => {
    expect(moved([700, -260], null).by).toEqual([700, -300]);
  });

  it('sets it into a corner', () => {
    const { by, guides } = moved([3470, -260], null);
    expect(by).toEqual([3500, -300]);
    expect(guides).toHaveLength(2);
  });

  it('slides along the face by whole steps', () => {
    expect(moved([712, -260], 50).by).toEqual([700, -300]);
  });

  it('away from walls moves the first corner onto the grid', () => {
    const { by } = snapMove([{ points: [[10, 20]], radius: 0 }], [10, 20], [101, 101], null, { reach: 60, grid: 50 });
    expect(by).toEqual([90, 80]);
  });

  it('turns no face into a step of nothing when there is no grid', () => {
    expect(moved([123.4, 567.8], null, null).by).toEqual([123.4, 567.8]);
  });

  it('never leaves it in the wall, however far past the face the hand has gone', () => {
    expect(moved([700, -500], null).by).toEqual([700, -300]);
    expect(moved([3800, -500], null).by).toEqual([3500, -300]);
  });

  it('sets a round thing with its rim at the face, slanted or not', () => {
    const round: Outline = { points: [[0, 0]], radius: 250 };
    const slanted: RoomFaces = {
      lines: [
        [
          [0, 0],
          [4000, 3000],
        ],
      ],
      from: [0, 2000],
    };
    // It is (2000 * 4 - 1400 * 3) / 5 in front of the line: the unit vector into the room is (-0.6, 0.8).
    const { by } = snapMove([round], null, [2000, 1700], slanted, { reach: 60, grid: null });
    expect(-0.6 * by[0] + 0.8 * by[1]).toBeCloseTo(250, 9);
  });
});

describe('a thing set down or dragged beside a partition', () => {
  const line = (id: string, from: XY, to: XY, thickness = 200): Wall => ({ id, from, to, thickness, side: 'auto' });
  // Outside walls of 200 around 8000 × 5000, a partition of 114.3 (4 1/2 in) at x = 4000, a stub from it into the right room.
  const model = buildLevel({
    ...emptyLevel('L1'),
    walls: [
      line('top', [0, 0], [8000, 0]),
      line('right', [8000, 0], [8000, 5000]),
      line('bottom', [8000, 5000], [0, 5000]),
      line('left', [0, 5000], [0, 0]),
      line('partition', [4000, 0], [4000, 5000], 114.3),
      line('spur', [4000, 2500], [5500, 2500], 114.3),
    ],
  });
  const sofa = (center: XY, turn = 0): Shape => ({ box: { center, width: 2000, depth: 900, turn } });

  it('lands on the face on the side of the hand', () => {
    // The pointer is 150 mm left of the partition, then 150 mm right of it.
    const set = (x: number) => {
      const at: XY = [x, 1200];
      return (
        snapMove([outlineOf(sofa(at, 90))], null, [0, 0], facesAbout(model, at), { reach: 60, grid: null }).by[0] + x
      );
    };
    expect(set(3792.85)).toBeCloseTo(4000 - 57.15 - 450, 9);
    expect(set(4207.15)).toBeCloseTo(4000 + 57.15 + 450, 9);
  });

  it('is never left standing in a wall where it fits', () => {
    const place = evenly(150, 4850);
    fc.assert(
      fc.property(
        place,
        place,
        fc.boolean(),
        fc.integer({ min: 0, max: 23 }),
        fc.constantFrom(2, 60),
        (across, down, right, step, reach) => {
          const at: XY = [right ? 4100 + across * 0.78 : across * 0.78, down];
          fc.pre(roomAt(model, at) !== null);
          const shape: Shape = { box: { center: at, width: 700, depth: 400, turn: step * 15 } };
          const { by } = snapMove([outlineOf(shape)], null, [0, 0], facesAbout(model, at), { reach, grid: 25.4 });
          const landed = shapeBody(translateShape(shape, by));
          for (const { body } of model.pieces) expect(overlapDepth(body, landed)).toBeLessThan(0.01);
        },
      ),
      { numRuns: 1000 },
    );
  });

  /** Returns how deep corners of either are in the other, mm. */
  function overlapDepth(ring: readonly XY[], thing: Body): number {
    const wall = ringBody(ring);
    const corners = thing.kind === 'ring' ? thing.ring : [];
    const depths = [
      ...corners.map(([x, y]) => -signedBodyDistance(wall, x, y)),
      ...ring.map(([x, y]) => -signedBodyDistance(thing, x, y)),
    ];
    return Math.max(0, ...depths);
  }
});
