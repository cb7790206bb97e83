import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { XY } from '../../../geometry/plan/model.ts';
import { ringFlaw } from '../../../geometry/plane/simple-ring.ts';

/** The third corner of the slanted triangle below is off the line by less than a rounded cross product can resolve. */
const TINY = 2 ** -44;

describe('ringFlaw(ring)', () => {
  it.each<[string, readonly XY[], unknown]>([
    [
      'a triangle',
      [
        [0, 0],
        [10, 0],
        [0, 10],
      ],
      null,
    ],
    [
      'an L',
      [
        [0, 0],
        [20, 0],
        [20, 10],
        [10, 10],
        [10, 20],
        [0, 20],
      ],
      null,
    ],
    [
      'a corner that is straight',
      [
        [0, 0],
        [5, 0],
        [10, 0],
        [0, 10],
      ],
      null,
    ],
    [
      'a sliver that only exact arithmetic sees',
      [
        [0.5, 0.5],
        [12, 12],
        [24, 24 + TINY],
      ],
      null,
    ],
    [
      'a bow tie',
      [
        [0, 0],
        [10, 10],
        [10, 0],
        [0, 10],
      ],
      { kind: 'edges-meet', edges: [0, 2] },
    ],
    [
      'a repeated corner',
      [
        [0, 0],
        [10, 0],
        [10, 0],
        [0, 10],
      ],
      { kind: 'same-corner', corners: [1, 2] },
    ],
    [
      'a first corner repeated at the end',
      [
        [0, 0],
        [10, 0],
        [0, 10],
        [0, 0],
      ],
      { kind: 'same-corner', corners: [3, 0] },
    ],
    [
      'a spike',
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [10, 5],
        [0, 5],
      ],
      { kind: 'edges-meet', edges: [1, 2] },
    ],
    [
      'three corners in a line',
      [
        [0, 0],
        [10, 0],
        [5, 0],
      ],
      { kind: 'edges-meet', edges: [0, 1] },
    ],
    [
      'a corner on another edge',
      [
        [0, 0],
        [10, 0],
        [10, 10],
        [5, 0],
        [0, 10],
      ],
      { kind: 'edges-meet', edges: [0, 2] },
    ],
    [
      'two rings that share a corner',
      [
        [0, 0],
        [5, 5],
        [0, 10],
        [10, 10],
        [5, 5],
        [10, 0],
      ],
      { kind: 'edges-meet', edges: [0, 3] },
    ],
    [
      'an edge that runs along another',
      [
        [0, 0],
        [10, 0],
        [10, 5],
        [12, 5],
        [12, 0],
        [4, 0],
        [4, -5],
        [0, -5],
      ],
      { kind: 'edges-meet', edges: [0, 4] },
    ],
  ])('%s', (_, ring, flaw) => {
    expect(ringFlaw(ring)).toEqual(flaw);
  });

  it('gives the same verdict whichever corner comes first, and whichever way the ring runs', () => {
    const corner = fc.tuple(fc.integer({ min: 0, max: 4 }), fc.integer({ min: 0, max: 4 })) as fc.Arbitrary<XY>;
    fc.assert(
      fc.property(fc.array(corner, { minLength: 3, maxLength: 6 }), fc.nat(5), (ring, by) => {
        const simple = ringFlaw(ring) === null;
        const turned = [...ring.slice(by % ring.length), ...ring.slice(0, by % ring.length)];
        expect(ringFlaw(turned) === null).toBe(simple);
        expect(ringFlaw([...ring].reverse()) === null).toBe(simple);
      }),
      { numRuns: 2000 },
    );
  });

  it('does not depend on the scale, from a billionth to a billion', () => {
    const corner = fc.tuple(fc.integer({ min: 0, max: 5 }), fc.integer({ min: 0, max: 5 })) as fc.Arbitrary<XY>;
    fc.assert(
      fc.property(
        fc.array(corner, { minLength: 3, maxLength: 5 }),
        fc.integer({ min: -30, max: 30 }),
        (ring, power) => {
          const scaled = ring.map(([x, y]): XY => [x * 2 ** power, y * 2 ** power]);
          expect(ringFlaw(scaled)).toEqual(ringFlaw(ring));
        },
      ),
    );
  });
});
