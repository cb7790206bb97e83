import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { isCovered } from '../../../geometry/level/covered.ts';
import { solidZones } from '../../../geometry/level/floors.ts';
import type { XY } from '../../../geometry/plan/model.ts';
import { bodyDistance } from '../../../geometry/plane/body.ts';
import { rectangle } from '../../helpers/drawn.ts';

type Box = readonly [x0: number, y0: number, x1: number, y1: number];
const bodies = (boxes: readonly Box[]) =>
  solidZones(boxes.map(([x0, y0, x1, y1]) => rectangle(x0, y0, x1 - x0, y1 - y0)));
const WEDGE: XY[] = [
  [0, 0],
  [100, 0],
  [100, 20],
];

describe('isCovered(ring, first, others)', () => {
  it.each<[string, Box[], boolean]>([
    ['one body', [[-1, -1, 101, 21]], true],
    [
      'two, one after the other',
      [
        [-1, -1, 60, 21],
        [50, -1, 101, 21],
      ],
      true,
    ],
    [
      'two that only touch',
      [
        [-1, -1, 50, 21],
        [50, -1, 101, 21],
      ],
      true,
    ],
    [
      'three, the middle one short',
      [
        [-1, -1, 40, 21],
        [30, -1, 70, 10],
        [60, -1, 101, 21],
      ],
      false, // the slope passes y = 10 at x = 50, above the middle one
    ],
    [
      'two that leave a millimeter between them',
      [
        [-1, -1, 50, 21],
        [51, -1, 101, 21],
      ],
      false,
    ],
    ['none', [], false],
  ])('a wedge and %s', (_, boxes, answer) => {
    expect(isCovered(WEDGE, [], bodies(boxes))).toBe(answer);
    expect(isCovered(WEDGE, bodies(boxes.slice(0, 1)), bodies(boxes.slice(1)))).toBe(answer);
  });

  it('is never true where a point of the ring lies in no body', () => {
    const box = fc
      .tuple(fc.integer({ min: -20, max: 100 }), fc.integer({ min: -20, max: 30 }), fc.nat(90), fc.nat(40))
      .map(([x, y, w, h]): Box => [x, y, x + w + 1, y + h + 1]);
    fc.assert(
      fc.property(fc.array(box, { minLength: 1, maxLength: 8 }), (boxes) => {
        const all = bodies(boxes);
        if (!isCovered(WEDGE, [], all)) return;
        for (let x = 0.5; x < 100; x += 3) {
          for (let y = 0.05; y < x / 5; y += 0.9) {
            expect(
              all.some(({ body }) => bodyDistance(body, x, y) === 0),
              `${x}, ${y}`,
            ).toBe(true);
          }
        }
      }),
      { numRuns: 500 },
    );
  });
});
