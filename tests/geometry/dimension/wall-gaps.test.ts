import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  asForm,
  circleReach,
  footprintReach,
  footprintSize,
  withFootprintSize,
} from '../../../geometry/dimension/footprint.ts';
import { endsAtSlant, gapLines, moveToGap, wallGaps } from '../../../geometry/dimension/wall-gaps.ts';
import { buildLevel } from '../../../geometry/level/build-level.ts';
import type { Wall, XY } from '../../../geometry/plan/model.ts';
import { emptyLevel } from '../../../geometry/planfile/empty.ts';
import { evenly } from '../../helpers/evenly.ts';

const wall = (id: string, from: XY, to: XY): Wall => ({ id, from, to, thickness: 200, side: 'auto' });
/** Walls of 200 around a floor of 3800 by 2800, its corner at (100, 100). */
const walls = [
  wall('top', [0, 0], [4000, 0]),
  wall('right', [4000, 0], [4000, 3000]),
  wall('bottom', [4000, 3000], [0, 3000]),
  wall('left', [0, 3000], [0, 0]),
];
const model = buildLevel({ ...emptyLevel('L1'), walls });

describe('endsAtSlant', () => {
  // The right wall leans 500 mm over 3000; the others are square to the page.
  const leaning = buildLevel({
    ...emptyLevel('L1'),
    walls: [
      wall('top', [0, 0], [4000, 0]),
      wall('right', [4000, 0], [4500, 3000]),
      wall('bottom', [4500, 3000], [0, 3000]),
      wall('left', [0, 3000], [0, 0]),
    ],
  });
  it.each([
    ['left', false],
    ['right', true],
    ['up', false],
    ['down', false],
  ] as const)('to the %s wall is %s', (side, slanted) => {
    expect(endsAtSlant(leaning, [2000, 1000], { side })).toBe(slanted);
  });

  it('is false beside a corner, and where no wall stands', () => {
    const stub = buildLevel({ ...emptyLevel('L1'), walls: [...walls, wall('stub', [2000, 0], [2000, 1000])] });
    expect(endsAtSlant(stub, [1000, 1000], { side: 'right' })).toBe(false);
    expect(endsAtSlant(model, [9000, 1000], { side: 'right' })).toBe(false);
  });
});

describe('wallGaps', () => {
  it('measures from the edge of the thing to the four wall faces', () => {
    expect(wallGaps(model, [1000, 1000], circleReach(50))).toEqual({ left: 850, right: 2850, up: 850, down: 1850 });
  });

  it('has no gap where no wall stands', () => {
    const { left, right } = wallGaps(model, [9000, 1000], circleReach(50));
    expect(right).toBeNull();
    expect(left).toBe(9000 - 4100 - 50);
  });

  it('of a thing in a partition is to the faces of the room that it is in: down, up and its size add up to the room', () => {
    // A partition of 114.3 at y = 1500 divides the floor of 100 … 2900; a grille of 254 × 101.6 is in its lower face.
    const partition: Wall = { id: 'p', from: [0, 1500], to: [4000, 1500], thickness: 114.3, side: 'auto' };
    const parted = buildLevel({ ...emptyLevel('L1'), walls: [...walls, partition] });
    const reach = { left: 127, right: 127, up: 50.8, down: 50.8 };
    // Its middle is 10 mm above the lower face (1557.15): 60.8 mm of it are in the wall.
    const { up, down } = wallGaps(parted, [1000, 1547.15], reach);
    expect(up).toBeCloseTo(-60.8, 9);
    expect(down).toBeCloseTo(2900 - 1547.15 - 50.8, 9);
    expect((up ?? 0) + (down ?? 0) + 101.6).toBeCloseTo(2900 - 1557.15, 9);
    // With its edge at the face, the gap is 0, and not −0.
    expect(wallGaps(parted, [1000, 1557.15 + 50.8], reach).up).toBe(0);
  });

  /** Expects equal sums, within 1e-6 mm: a face that near counts as touched, with a gap of 0. */
  const expectSame = (sum: number, wanted: number) => expect(Math.abs(sum - wanted)).toBeLessThan(1.001e-6);

  it('adds up to the room wherever the thing is', () => {
    const partition: Wall = { id: 'p', from: [2000, 0], to: [2000, 3000], thickness: 114.3, side: 'auto' };
    const parted = buildLevel({ ...emptyLevel('L1'), walls: [...walls, partition] });
    const place = fc.tuple(evenly(20, 3980), evenly(101, 2899), evenly(1, 900));
    fc.assert(
      fc.property(place, ([x, y, radius]) => {
        const { left, right, up, down } = wallGaps(parted, [x, y], circleReach(radius));
        const across = x < 2000 ? 2000 - 57.15 - 100 : 3900 - 2057.15;
        // In an outside wall beside a corner, no floor is level with it.
        if (left !== null && right !== null) expectSame(left + right + 2 * radius, across);
        if (up !== null && down !== null) expectSame(up + down + 2 * radius, 2800);
        if (x > 100 && x < 3900 && y > 100 && y < 2900) expect([left, right, up, down]).not.toContain(null);
      }),
    );
  });

  it.each(['left', 'right', 'up', 'down'] as const)('moveToGap %s makes the gap what was asked for', (side) => {
    const from: XY = [1500, 1200];
    const gap = wallGaps(model, from, circleReach(50))[side] ?? Number.NaN;
    const [dx, dy] = moveToGap(side, gap, 600);
    expect(wallGaps(model, [from[0] + dx, from[1] + dy], circleReach(50))[side]).toBeCloseTo(600, 9);
  });
});

describe('gapLines', () => {
  it('run from the edge of the thing to the nearer face on either axis', () => {
    expect(gapLines(model, [1000, 2500], circleReach(50))).toEqual([
      [
        [950, 2500],
        [100, 2500],
      ],
      [
        [1000, 2550],
        [1000, 2900],
      ],
    ]);
  });

  it('are none to a wall that the thing stands against or in, and none where no wall is', () => {
    expect(gapLines(model, [150, 1000], circleReach(50)).map(([[x]]) => x)).toEqual([150]);
    expect(gapLines(model, [120, 1000], circleReach(50)).map(([[x]]) => x)).toEqual([120]);
    expect(gapLines(buildLevel(emptyLevel('L1')), [0, 0], circleReach(50))).toEqual([]);
  });
});

describe('a footprint', () => {
  const box = { box: { center: [1000, 1000] as XY, width: 600, depth: 400, turn: 90 } };
  const disc = { circle: { center: [0, 0] as XY, radius: 250 } };

  it('reaches as far on the page as it is turned', () => {
    const { left, right, up, down } = footprintReach(box);
    expect([left, right, up, down].map((mm) => Math.round(mm * 1e6) / 1e6)).toEqual([200, 200, 300, 300]);
  });

  it('takes the numbers of its form and leaves the others', () => {
    expect(footprintSize(disc)).toEqual({ across: 500, width: null, depth: null, turn: null });
    expect(withFootprintSize(disc, { across: 300 })).toEqual({ circle: { center: [0, 0], radius: 150 } });
    expect(withFootprintSize(disc, { width: 300 })).toEqual(disc);
    expect(withFootprintSize(box, { depth: 500 })).toEqual({ box: { ...box.box, depth: 500 } });
  });

  it('changes form about the same middle', () => {
    expect(asForm(disc, 'square')).toEqual({ box: { center: [0, 0], width: 500, depth: 500, turn: 0 } });
    expect(asForm(box, 'round')).toEqual({ circle: { center: [1000, 1000], radius: 200 } });
    expect(asForm(box, 'square')).toBe(box);
  });
});
