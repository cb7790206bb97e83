import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { XY } from '../../../geometry/plan/model.ts';
import { distance } from '../../../geometry/plane/point.ts';
import {
  closedByLastWall,
  closingError,
  isRectangular,
  nearMiss,
  spreadByLength,
  spreadSquare,
} from '../../../geometry/snap/closing.ts';

/** 4 m by 3 m, the last wall taped 40 mm short and the third 30 mm long. */
const misses: readonly XY[] = [
  [0, 0],
  [4000, 0],
  [4000, 3000],
  [-30, 3000],
  [-30, 40],
];

describe('closingError(corners)', () => {
  it('is the way from where the run ends to its start, and a share of its length', () => {
    // 3-4-5 triangle: 30 across, 40 down. Total length 4000 + 3000 + 4030 + 2960.
    expect(closingError(misses)).toEqual({ gap: 50, across: 30, down: -40, around: 13_990, share: 50 / 13_990 });
  });

  it('is nothing below three walls', () => {
    expect(closingError(misses.slice(0, 3))).toBeNull();
    expect(closingError([])).toBeNull();
  });

  it.each([
    { name: 'met within a millimeter', end: [0, 0.5] as XY, missed: false },
    { name: 'missed by 2 in', end: [50, 0] as XY, missed: true },
    { name: 'ended 3 ft away: a run that goes on', end: [0, 914] as XY, missed: false },
  ])('$name', ({ end, missed }) => {
    expect(nearMiss([...misses.slice(0, 4), end]) !== null).toBe(missed);
  });

  it('a small run that ends 1 ft away was not meant to meet: 1 ft of its 7 ft', () => {
    expect(
      nearMiss([
        [0, 0],
        [700, 0],
        [700, 700],
        [0, 700],
        [0, 305],
      ]),
    ).toBeNull();
  });
});

describe('spreading a closing error', () => {
  it('at right angles: 30 mm over the walls across, 40 mm over those down, by their lengths', () => {
    const spread = spreadSquare(misses) ?? [];
    const across = 30 / 8030;
    const down = 40 / 5960;
    const expected: readonly XY[] = [
      [0, 0],
      [4000 + 4000 * across, 0],
      [4000 + 4000 * across, 3000 - 3000 * down],
      [0, 3000 - 3000 * down],
    ];
    expect(spread).toHaveLength(4);
    spread.forEach((corner, i) => {
      expect(distance(corner, expected[i] as XY)).toBeLessThan(0.001);
    });
  });

  it('by length: each corner moves by the part of the walls before it', () => {
    const spread = spreadByLength(misses);
    // The second corner is after 4000 of 13990 mm: 30 * 0.2859 across, -40 * 0.2859 down.
    expect(spread[1]?.[0]).toBeCloseTo(4008.578, 3);
    expect(spread[1]?.[1]).toBeCloseTo(-11.437, 3);
  });

  it('as it is: the last wall alone takes it', () => {
    expect(closedByLastWall(misses)).toEqual(misses.slice(0, 4));
  });

  it('an aslant run has no right angles to keep', () => {
    const aslant: readonly XY[] = [
      [0, 0],
      [3000, 0],
      [1500, 2500],
      [20, 20],
    ];
    expect(isRectangular(aslant)).toBe(false);
    expect(spreadSquare(aslant)).toBeNull();
  });

  const run = fc
    .tuple(
      fc.array(fc.integer({ min: 300, max: 6000 }), { minLength: 4, maxLength: 4 }),
      fc.tuple(fc.integer({ min: -200, max: 200 }), fc.integer({ min: -200, max: 200 })),
      fc.integer({ min: 0, max: 359 }),
    )
    .map(([[w = 0, h = 0, cutW = 0, cutH = 0], [ex, ey], turn]) => {
      // An L-shaped room whose last two walls miss by ex, ey, rotated as a whole.
      const [W, H] = [w + cutW, h + cutH];
      const corners: XY[] = [
        [0, 0],
        [W, 0],
        [W, h],
        [w, h],
        [w, H],
        [ex, H],
        [ex, ey],
      ];
      const [c, s] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
      return corners.map(([x, y]): XY => [x * c - y * s || 0, x * s + y * c || 0]);
    });

  it('keeps right angles, whichever way the house stands', () => {
    fc.assert(
      fc.property(run, (corners) => {
        const spread = spreadSquare(corners);
        expect(spread).not.toBeNull();
        const ring = [...(spread ?? []), spread?.[0] as XY];
        expect(isRectangular(ring)).toBe(true);
      }),
    );
  });

  it('no wall changes by more than the gap, the start stays, and a run without a gap stays', () => {
    fc.assert(
      fc.property(run, (corners) => {
        const gap = closingError(corners)?.gap ?? 0;
        for (const spread of [spreadByLength(corners), spreadSquare(corners) ?? []]) {
          expect(spread[0]).toEqual(corners[0]);
          expect(spread).toHaveLength(corners.length - 1);
          spread.forEach((corner, i) => {
            expect(distance(corner, corners[i] as XY)).toBeLessThanOrEqual(gap + 0.001);
          });
        }
        const whole = [...corners.slice(0, -1), corners[0] as XY];
        for (const [i, corner] of spreadByLength(whole).entries()) {
          expect(distance(corner, whole[i] as XY)).toBeLessThan(0.001);
        }
      }),
    );
  });
});
