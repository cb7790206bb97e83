import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { distance } from '../../../geometry/plane/point.ts';
import { discsApart as apart, type Disc } from '../../../src/drawing/discs-apart.ts';

const SIZES = { single: 11, pair: 8, gap: 4 } as const;
const discsApart = (places: readonly Disc[]) => apart(places, SIZES);
const disc = (x: number, y: number, radius = 1): Disc => ({ at: [x, y], radius });
const gap = ([a, b]: readonly Disc[]) =>
  a && b ? distance(a.at, b.at) - a.radius - b.radius : Number.POSITIVE_INFINITY;

describe('discsApart', () => {
  it('leaves alone what is far apart, in the least size', () => {
    expect(discsApart([disc(0, 0), disc(100, 0)])).toEqual([disc(0, 0, 11), disc(100, 0, 11)]);
  });

  it('makes two smaller before it sets them apart', () => {
    expect(discsApart([disc(0, 0), disc(22, 0)])).toEqual([disc(0, 0, 9), disc(22, 0, 9)]);
    expect(discsApart([disc(0, 0), disc(6, 0)])).toEqual([disc(-7, 0, 8), disc(13, 0, 8)]);
  });

  it('sets two at one place beside one another', () => {
    expect(discsApart([disc(5, 5), disc(5, 5)])).toEqual([disc(-5, 5, 8), disc(15, 5, 8)]);
  });

  it('keeps two that are drawn in their own size where they are: they do lie on one another', () => {
    const collided = [disc(0, 0, 20), disc(10, 0, 20)];
    expect(discsApart(collided)).toEqual(collided);
  });

  it('keeps any two apart, on the same sides of one another, neither farther off than it must be', () => {
    const coordinate = fc.integer({ min: -40, max: 40 });
    const place = fc.tuple(coordinate, coordinate);
    fc.assert(
      fc.property(place, place, fc.integer({ min: 1, max: 7 }), (a, b, radius) => {
        const own = [disc(...a, radius), disc(...b, radius)];
        const [one, other] = discsApart(own);
        if (!one || !other) throw new Error('two discs');
        expect(gap([one, other])).toBeGreaterThan(3.9);
        const [dx, dy] = [b[0] - a[0], b[1] - a[1]];
        expect((other.at[0] - one.at[0]) * dx + (other.at[1] - one.at[1]) * dy).toBeGreaterThanOrEqual(0);
        for (const [index, { at }] of [one, other].entries())
          expect(distance(at, own[index]?.at ?? at)).toBeLessThan(11);
      }),
    );
  });

  it('keeps five in a heap apart', () => {
    const heap = discsApart([disc(0, 0), disc(3, 0), disc(0, 4), disc(5, 5), disc(2, 2)]);
    for (const [i, one] of heap.entries())
      for (const other of heap.slice(i + 1)) expect(gap([one, other])).toBeGreaterThan(3);
  });
});
