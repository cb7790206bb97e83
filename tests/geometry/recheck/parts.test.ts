import { describe, expect, it } from 'vitest';
import type { Wall, XY } from '../../../geometry/plan/model.ts';
import { centerLines } from '../../../geometry/recheck/center-lines.ts';
import { nearestOnSegment, ringDistance, segmentDistance } from '../../../geometry/recheck/plane.ts';
import { sunPlace } from '../../../geometry/recheck/sun-place.ts';
import { wall } from '../../helpers/level-of.ts';

describe('sunPlace(instant, latitude, longitude)', () => {
  it('has the declination of the worked example of Meeus, Astronomical Algorithms (1998), 25.a', () => {
    // At the pole the altitude is the declination, raised by the refraction of 16.4 for the lowest altitude it is taken at.
    const lift = 1.02 / 60 / Math.tan(((-1 + 10.3 / (-1 + 5.11)) * Math.PI) / 180);
    expect(Math.abs(sunPlace(Date.UTC(1992, 9, 13), 90, 0).altitude - lift - -7.78507)).toBeLessThan(1e-5);
  });
});

describe('distances', () => {
  it('to a segment without length are those to its point', () => {
    expect(nearestOnSegment([3, 4], [0, 0], [0, 0])).toEqual([0, 0]);
    expect(segmentDistance([3, 4], [0, 0], [0, 0])).toBe(5);
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
