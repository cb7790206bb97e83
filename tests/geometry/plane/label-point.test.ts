import { centerOfMass, polygon } from '@turf/turf';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { XY } from '../../../geometry/plan/model.ts';
import { ringLabelPoint } from '../../../geometry/plane/label-point.ts';
import { ringsContain } from '../../../geometry/plane/ring.ts';

const box = (x: number, y: number, width: number, depth: number): readonly XY[] => [
  [x, y],
  [x + width, y],
  [x + width, y + depth],
  [x, y + depth],
];

describe('ringLabelPoint(rings)', () => {
  it.each<{ name: string; rings: readonly (readonly XY[])[]; at: XY }>([
    { name: 'a rectangle, its middle', rings: [box(1000, 2000, 4000, 3000)], at: [3000, 3500] },
    { name: 'the same the other way round', rings: [[...box(1000, 2000, 4000, 3000)].reverse()], at: [3000, 3500] },
    {
      name: 'a triangle, a third of its corners',
      rings: [
        [
          [0, 0],
          [3000, 0],
          [0, 6000],
        ],
      ],
      at: [1000, 2000],
    },
    // 100 m² at (5, 5) minus 4 m² at (9, 5): x = (500 - 36) / 96 m, y unchanged.
    {
      name: 'a hole near one side',
      rings: [box(0, 0, 10_000, 10_000), box(8000, 4000, 2000, 2000)],
      at: [464_000 / 96, 5000],
    },
  ])('$name', ({ rings, at }) => {
    const [x, y] = ringLabelPoint(rings);
    expect(x).toBeCloseTo(at[0], 6);
    expect(y).toBeCloseTo(at[1], 6);
  });

  it('where the center lies outside, or in the hole, a point with room around it', () => {
    const ell: readonly XY[] = [
      [0, 0],
      [9000, 0],
      [9000, 1000],
      [1000, 1000],
      [1000, 9000],
      [0, 9000],
    ];
    const frame = [box(0, 0, 6000, 6000), box(1000, 1000, 4000, 4000)];
    for (const rings of [[ell], frame]) expect(ringsContain(rings, ringLabelPoint(rings))).toBe(true);
  });

  it('is the center that turf gives, for any triangle far from the origin', () => {
    const corner = fc.tuple(fc.integer({ min: 0, max: 20_000 }), fc.integer({ min: 0, max: 20_000 }));
    fc.assert(
      fc.property(corner, corner, corner, fc.integer({ min: -1_000_000, max: 1_000_000 }), (a, b, c, off) => {
        const ring = [a, b, c].map(([x, y]): XY => [x + off, y - off]);
        const area = Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])) / 2;
        fc.pre(area > 1e6);
        const asked = centerOfMass(polygon([[...ring, ring[0] as XY].map(([x, y]) => [x, y])])).geometry.coordinates;
        const [x, y] = ringLabelPoint([ring]);
        expect(Math.hypot(x - (asked[0] ?? 0), y - (asked[1] ?? 0))).toBeLessThan(0.01);
      }),
    );
  });
});
