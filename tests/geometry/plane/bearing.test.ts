import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { XY } from '../../../geometry/plan/model.ts';
import { atBearing, bearing, direction, fullTurn } from '../../../geometry/plane/bearing.ts';

describe('bearing', () => {
  it.each<[string, XY, number]>([
    ['up the page', [0, -5], 0],
    ['to the right', [5, 0], 90],
    ['down', [0, 5], 180],
    ['to the left', [-5, 0], 270],
    ['up and to the left', [-3, -3], 315],
    ['the same point', [0, 0], 0],
  ])('%s', (_, to, degrees) => {
    expect(bearing([0, 0], to)).toBeCloseTo(degrees, 9);
  });

  it('is undone by atBearing', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 359 }), fc.integer({ min: 1, max: 5000 }), (degrees, distance) => {
        const turn = Math.abs(bearing([7, 9], atBearing([7, 9], degrees, distance)) - degrees);
        expect(Math.min(turn, 360 - turn)).toBeLessThan(1e-6);
      }),
    );
  });
});

describe('direction', () => {
  it.each<[string, XY, number]>([
    ['to the right', [5, 0], 0],
    ['down and to the right', [3, 3], 45],
    ['down the page', [0, 5], 90],
    ['to the left', [-5, 0], 180],
    ['up the page', [0, -5], 270],
    ['the same point', [0, 0], 0],
    ['less than rounding above the right', [1e9, -1e-9], 0],
    ['negative zero down', [5, -0], 0],
  ])('%s: exactly', (_, to, degrees) => {
    expect(direction([0, 0], to)).toBe(degrees);
  });

  it('is a quarter turn short of the bearing', () => {
    fc.assert(
      fc.property(fc.integer({ min: -5000, max: 5000 }), fc.integer({ min: -5000, max: 5000 }), (x, y) => {
        fc.pre(x !== 0 || y !== 0);
        const turn = fullTurn(bearing([7, 9], [x + 7, y + 9]) - direction([7, 9], [x + 7, y + 9]));
        expect(turn).toBeCloseTo(90, 9);
      }),
    );
  });
});

it('fullTurn brings any angle to 0 to 360', () => {
  expect([-90, 0, 360, 725, -360].map(fullTurn)).toEqual([270, 0, 0, 5, 0]);
});
