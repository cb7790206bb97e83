import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { XY } from '../../../geometry/plan/model.ts';
import { fitted, pannedBy, toPlan, toScreen, type Viewport, zoomedAt } from '../../../src/state/viewport.ts';

const viewport = fc
  .record({
    scale: fc.double({ min: 0.01, max: 5, noNaN: true }),
    x: fc.integer({ min: -2000, max: 2000 }),
    y: fc.integer({ min: -2000, max: 2000 }),
  })
  .map((view): Viewport => view);
const point = fc
  .tuple(fc.integer({ min: -20_000, max: 20_000 }), fc.integer({ min: -20_000, max: 20_000 }))
  .map((p): XY => p);

describe('the viewport', () => {
  it('turns a point into a pixel and back', () => {
    fc.assert(
      fc.property(viewport, point, (view, at) => {
        const [x, y] = toPlan(view, toScreen(view, at));
        expect(x).toBeCloseTo(at[0], 4);
        expect(y).toBeCloseTo(at[1], 4);
      }),
    );
  });

  it('zooms with the point under the pointer staying there, however far', () => {
    fc.assert(
      fc.property(viewport, point, fc.double({ min: 0.001, max: 1000, noNaN: true }), (view, at, factor) => {
        const pivot = toScreen(view, at);
        const after = toScreen(zoomedAt(view, pivot, factor), at);
        expect(after[0]).toBeCloseTo(pivot[0], 2);
        expect(after[1]).toBeCloseTo(pivot[1], 2);
      }),
    );
  });

  it('fits a level into the stage with its margin', () => {
    const view = fitted({ minX: 0, minY: 0, maxX: 10_000, maxY: 5000 }, { width: 1100, height: 900 }, 50);
    expect(toScreen(view, [0, 2500])).toEqual([50, 450]);
    expect(toScreen(view, [10_000, 2500])).toEqual([1050, 450]);
  });

  it('pans by pixels', () => {
    expect(pannedBy({ scale: 0.1, x: 5, y: 6 }, 10, -20)).toEqual({ scale: 0.1, x: 15, y: -14 });
  });
});
