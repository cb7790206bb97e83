import { describe, expect, it } from 'vitest';
import type { XY } from '../../../geometry/plan/model.ts';
import { edgeFrom } from '../../../geometry/sun/light-edges.ts';
import { cornersIn, eventsOf, stripsAt } from '../../../geometry/sun/strips.ts';

const FAR = 10_000;
const straight = { k0: -0.001, k1: 0.001, left: [-100, 0] as XY, right: [100, 0] as XY, near: -1 };

describe('the corners in a beam', () => {
  it('are each there once, its own two first', () => {
    const shared: XY = [20, 500];
    const edges = [edgeFrom([-20, 500], shared, [], 0), edgeFrom(shared, [30, 900], [], 0)];
    expect(cornersIn(straight, edges, FAR)).toEqual([straight.left, straight.right, [-20, 500], shared, [30, 900]]);
  });

  it.each<[XY, XY]>([
    [
      [0, 1000.003],
      [0.001, 0],
    ],
    [
      [0.002, 3],
      [0, 2003.006],
    ],
    [
      [0, 10],
      [0, 10.000_000_001],
    ],
  ])('are all there, whatever their figures: %j and %j', (a, b) => {
    expect(cornersIn(straight, [edgeFrom(a, b, [], 0)], FAR)).toEqual([straight.left, straight.right, a, b]);
  });

  it('are there where an edge reaches as far as light is followed', () => {
    const corners = cornersIn(straight, [edgeFrom([0, 0], [40, 20_000], [], 0)], FAR);
    expect(corners.slice(2)).toEqual([
      [0, 0],
      [20, FAR],
    ]);
  });

  it('are not there beside the beam, behind it or beyond it', () => {
    const edges = [edgeFrom([-400, 500], [400, 500], [], 0), edgeFrom([0, -50], [0, FAR + 1], [], 0)];
    expect(cornersIn(straight, edges, FAR)).toEqual([straight.left, straight.right, [0, FAR]]);
  });
});

describe('the directions in which two corners are behind each other', () => {
  it('divide a beam, between its own two', () => {
    const corners: XY[] = [
      [0, 0],
      [10, 100],
    ];
    expect(eventsOf(corners, -1, 1)).toEqual([-1, 0.1, 1]);
    expect(eventsOf(corners, 0.2, 1)).toEqual([0.2, 1]);
  });
});

describe('what light meets', () => {
  const from = edgeFrom([-100, -1], [100, -1], [], 0);

  it('is the nearest edge that stops it, from left to right', () => {
    const edges = [edgeFrom([-100, 900], [100, 900], [], 0), edgeFrom([-20, 500], [30, 500], [], 0)];
    const corners = cornersIn(straight, edges, FAR);
    const met = stripsAt(0, corners, edges, from, FAR, () => true);
    expect(met.map(({ i, j, edge }) => [corners[i]?.[0], corners[j]?.[0], edge])).toEqual([
      [-100, -20, 0],
      [-20, 30, 1],
      [30, 100, 0],
    ]);
  });

  it('is nothing where nothing stops it', () => {
    const edges = [edgeFrom([-20, 500], [30, 500], [], 0)];
    const corners = cornersIn(straight, edges, FAR);
    expect(stripsAt(0, corners, edges, from, FAR, () => false)).toEqual([{ i: 0, j: 1, edge: -1 }]);
  });
});
