import { describe, expect, it } from 'vitest';
import type { Shape, Stream, XY } from '../../../geometry/plan/model.ts';
import {
  bodyDistance,
  nearestOnBody,
  ringBody,
  shapeBody,
  shapeMiddle,
  signedBodyDistance,
  streamBody,
} from '../../../geometry/plane/body.ts';

const circle = (center: XY, radius: number): Shape => ({ circle: { center, radius } });
const box = (center: XY, width: number, depth: number, turn = 0): Shape => ({ box: { center, width, depth, turn } });
const polygon = (...points: XY[]): Shape => ({ polygon: { points } });

/** An L: 4 × 4 without its top right quarter. */
const L = polygon([0, 0], [2, 0], [2, 2], [4, 2], [4, 4], [0, 4]);

describe('the distance from a point to a shape', () => {
  it.each<{ name: string; shape: Shape; at: XY; mm: number; source: string }>([
    { name: 'circle, outside', shape: circle([1, 1], 2), at: [4, 5], mm: 3, source: '3-4-5: 5 − 2' },
    { name: 'circle, inside', shape: circle([1, 1], 2), at: [2, 2], mm: 0, source: 'zero inside' },
    { name: 'circle without size', shape: circle([0, 0], 0), at: [3, 4], mm: 5, source: '3-4-5' },
    { name: 'box, beside an edge', shape: box([0, 0], 4, 2), at: [1, 6], mm: 5, source: 'edge at y = 1' },
    { name: 'box, off a corner', shape: box([0, 0], 4, 2), at: [5, 5], mm: 5, source: '3-4-5 from (2, 1)' },
    { name: 'box, inside', shape: box([0, 0], 4, 2), at: [1.9, 0.9], mm: 0, source: 'zero inside' },
    { name: 'box, on the edge', shape: box([0, 0], 4, 2), at: [0, 1], mm: 0, source: 'zero on the edge' },
    {
      name: 'box turned by 45°',
      shape: box([0, 0], 2, 2, 45),
      at: [5, 0],
      mm: 5 - Math.SQRT2,
      source: 'its corner is at √2',
    },
    { name: 'box turned by 90°', shape: box([0, 0], 4, 2, 90), at: [4, 0], mm: 3, source: 'edge at x = 1' },
    {
      name: 'box turned by −30°',
      shape: box([0, 0], 10, 2, -30),
      at: [0, -7],
      mm: 7 * Math.cos(Math.PI / 6) - 1,
      source: 'height of (0, −7) over its axis is 7 cos 30°',
    },
    { name: 'box that is a line', shape: box([0, 0], 6, 0, 90), at: [4, 6], mm: 5, source: '3-4-5 from (0, 3)' },
    { name: 'box that is a point', shape: box([1, 1], 0, 0, 10), at: [4, 5], mm: 5, source: '3-4-5' },
    { name: 'L, in the corner that is left out', shape: L, at: [3, 1], mm: 1, source: 'to either arm' },
    { name: 'L, inside', shape: L, at: [1, 3], mm: 0, source: 'zero inside' },
    {
      name: 'L, drawn the other way round',
      shape: polygon([0, 4], [4, 4], [4, 2], [2, 2], [2, 0], [0, 0]),
      at: [3.5, 0],
      mm: 1.5,
      source: 'to the arm below is 2, to the arm beside 1.5',
    },
    {
      name: 'polygon with a corner on a straight edge',
      shape: polygon([0, 0], [2, 0], [4, 0], [4, 4]),
      at: [2, -3],
      mm: 3,
      source: 'edge at y = 0',
    },
  ])('$name: $mm ($source)', ({ shape, at, mm }) => {
    expect(bodyDistance(shapeBody(shape), ...at)).toBeCloseTo(mm, 12);
  });

  it.each<{ name: string; shape: Shape; at: XY; mm: number }>([
    { name: 'circle', shape: circle([0, 0], 5), at: [3, 0], mm: -2 },
    { name: 'box', shape: box([0, 0], 10, 4), at: [3, 0.5], mm: -1.5 },
    { name: 'L, near its inner corner', shape: L, at: [1, 3], mm: -1 },
    { name: 'L, outside', shape: L, at: [3, 1], mm: 1 },
  ])('with its sign: $name, $mm', ({ shape, at, mm }) => {
    expect(signedBodyDistance(shapeBody(shape), ...at)).toBeCloseTo(mm, 12);
  });

  it.each<{ name: string; shape: Shape; at: XY; nearest: XY }>([
    { name: 'circle', shape: circle([1, 1], 5), at: [7, 9], nearest: [4, 5] },
    { name: 'box edge', shape: box([0, 0], 4, 2), at: [1, 6], nearest: [1, 1] },
    { name: 'box corner', shape: box([0, 0], 4, 2), at: [5, 5], nearest: [2, 1] },
    { name: 'point itself when inside', shape: box([0, 0], 4, 2), at: [1, 0.5], nearest: [1, 0.5] },
  ])('has its foot on the $name', ({ shape, at, nearest }) => {
    const [x, y] = nearestOnBody(shapeBody(shape), at);
    expect(x).toBeCloseTo(nearest[0], 12);
    expect(y).toBeCloseTo(nearest[1], 12);
  });
});

describe('the distance from a point to a stream', () => {
  const AT_ORIGIN = circle([0, 0], 0);
  const stream = (direction: number, spread: number, reach: number): Stream => ({ direction, spread, reach });

  it.each<{ name: string; of: Stream; at: XY; mm: number; source: string }>([
    { name: 'ahead of the arc', of: stream(0, 90, 10), at: [13, 0], mm: 3, source: '13 − 10' },
    {
      name: 'ahead, off the middle',
      of: stream(0, 90, 10),
      at: [12, 9],
      mm: 5,
      source: '12-9-15 lies within ±45°: 15 − 10',
    },
    {
      name: 'inside, below the arc',
      of: stream(0, 90, 10),
      at: [9, 0],
      mm: -1,
      source: 'the arc is nearer than the sides, 9 sin 45°',
    },
    {
      name: 'inside, near a side',
      of: stream(0, 180, 10),
      at: [1, 0],
      mm: -1,
      source: 'half a disc: its side runs through the middle',
    },
    {
      name: 'beside a side',
      of: stream(45, 90, 10),
      at: [4, -3],
      mm: 3,
      source: 'the side runs along +x; 3 up the page',
    },
    { name: 'beyond the end of a side', of: stream(45, 90, 10), at: [13, -4], mm: 5, source: '3-4-5 from (10, 0)' },
    { name: 'behind the apex', of: stream(0, 90, 10), at: [-4, 3], mm: 5, source: '3-4-5 from the apex' },
    {
      name: 'direction is clockwise on screen',
      of: stream(90, 20, 10),
      at: [0, 12],
      mm: 2,
      source: '90° points down the page',
    },
    { name: 'direction beyond a full turn', of: stream(450, 20, 10), at: [0, 12], mm: 2, source: '450° is 90°' },
    { name: 'no spread: a line', of: stream(0, 0, 10), at: [7, 2], mm: 2, source: 'beside the line' },
    { name: 'no reach: a point', of: stream(0, 300, 0), at: [3, 4], mm: 5, source: '3-4-5 from the apex' },
    { name: 'all round: a disc', of: stream(0, 360, 10), at: [0, -4], mm: -6, source: '4 − 10' },
    {
      name: 'three quarters, in the gap',
      of: stream(0, 270, 10),
      at: [-5, 0],
      mm: 5 * Math.SQRT1_2,
      source: 'to either side at 45°: 5 sin 45°',
    },
    {
      name: 'three quarters, inside and close to the apex',
      of: stream(0, 270, 10),
      at: [2, 0],
      mm: -2,
      source: 'the apex is its nearest edge',
    },
  ])('$name: $mm ($source)', ({ of, at, mm }) => {
    expect(signedBodyDistance(streamBody(of, AT_ORIGIN), ...at)).toBeCloseTo(mm, 12);
    expect(bodyDistance(streamBody(of, AT_ORIGIN), ...at)).toBeCloseTo(Math.max(0, mm), 12);
  });

  it('starts from the middle of the shape', () => {
    expect(shapeMiddle(circle([3, 4], 2))).toEqual([3, 4]);
    expect(shapeMiddle(box([3, 4], 2, 8, 30))).toEqual([3, 4]);
    // The middle of a polygon is halfway between its extreme coordinates: x 0 to 10, y 0 to 6.
    expect(shapeMiddle(polygon([0, 0], [10, 0], [0, 6]))).toEqual([5, 3]);
    expect(bodyDistance(streamBody(stream(0, 60, 10), box([100, 0], 4, 4)), 113, 0)).toBeCloseTo(3, 12);
  });
});

describe('a ring as a body', () => {
  it('measures the same whichever way it runs and wherever it starts', () => {
    const ring: XY[] = [
      [0, 0],
      [5, 0],
      [5, 3],
      [2, 1],
    ];
    const turns: XY[][] = [ring, [...ring].reverse(), [...ring.slice(2), ...ring.slice(0, 2)]];
    for (const at of [
      [7, 1],
      [2, 0.5],
      [1, 4],
      [3, 3],
    ] as const) {
      const [first, ...others] = turns.map((one) => bodyDistance(ringBody(one), at[0], at[1]));
      for (const other of others) expect(other).toBeCloseTo(first as number, 12);
    }
  });

  it('that has shrunk to a line or a point is measured as such', () => {
    expect(
      bodyDistance(
        ringBody([
          [0, 0],
          [4, 0],
          [4, 0],
          [0, 0],
        ]),
        2,
        3,
      ),
    ).toBe(3);
    expect(
      bodyDistance(
        ringBody([
          [1, 1],
          [1, 1],
          [1, 1],
        ]),
        4,
        5,
      ),
    ).toBe(5);
  });
});
