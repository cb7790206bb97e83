import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { XY } from '../../../geometry/plan/model.ts';
import {
  fitted,
  keptOnStage,
  pannedBy,
  showing,
  toPlan,
  toScreen,
  type Viewport,
  zoomedAt,
} from '../../../src/state/viewport.ts';

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
    const view = fitted(
      { minX: 0, minY: 0, maxX: 10_000, maxY: 5000 },
      { width: 1100, height: 900 },
      { left: 50, top: 50, right: 50, bottom: 50 },
    );
    expect(toScreen(view, [0, 2500])).toEqual([50, 450]);
    expect(toScreen(view, [10_000, 2500])).toEqual([1050, 450]);
  });

  it('pans by pixels', () => {
    expect(pannedBy({ scale: 0.1, x: 5, y: 6 }, 10, -20)).toEqual({ scale: 0.1, x: 15, y: -14 });
  });
});

describe('a thing that is shown', () => {
  const stage = { width: 800, height: 600 };

  it('lies on the stage, wherever the sheet was, and stays where it is when it is shown again', () => {
    fc.assert(
      fc.property(viewport, point, fc.integer({ min: 0, max: 20_000 }), (view, [x, y], size) => {
        const extent = { minX: x, minY: y, maxX: x + size, maxY: y + size / 2 };
        const shown = showing(view, extent, stage);
        for (const corner of [[x, y] as const, [x + size, y + size / 2] as const]) {
          const [px, py] = toScreen(shown, corner);
          expect(px).toBeGreaterThanOrEqual(0);
          expect(px).toBeLessThanOrEqual(stage.width);
          expect(py).toBeGreaterThanOrEqual(0);
          expect(py).toBeLessThanOrEqual(stage.height);
        }
        expect(showing(shown, extent, stage)).toBe(shown);
      }),
    );
  });

  it('does not move the view where it is seen well already', () => {
    const view: Viewport = { scale: 0.08, x: 100, y: 100 };
    expect(showing(view, { minX: 3000, minY: 3000, maxX: 3100, maxY: 3100 }, stage)).toBe(view);
  });
});

describe('a viewport that keeps the plan on its stage', () => {
  const house = { minX: 0, minY: 0, maxX: 9000, maxY: 6000 };
  const stage = { width: 800, height: 600 };
  const strip = (from: number, to: number, size: number) => Math.min(to, size) - Math.max(from, 0);

  it('leaves a strip of it in view, however it was moved and at any scale', () => {
    fc.assert(
      fc.property(viewport, (moved) => {
        const kept = keptOnStage(moved, house, stage);
        const [left, top] = toScreen(kept, [house.minX, house.minY]);
        const [right, bottom] = toScreen(kept, [house.maxX, house.maxY]);
        expect(strip(left, right, stage.width)).toBeGreaterThanOrEqual(Math.min(64, right - left) - 1e-6);
        expect(strip(top, bottom, stage.height)).toBeGreaterThanOrEqual(Math.min(64, bottom - top) - 1e-6);
        expect(kept.scale).toBe(moved.scale);
      }),
    );
  });

  it('is the same object where enough is in view', () => {
    const inView = { scale: 0.1, x: -500, y: 100 };
    expect(keptOnStage(inView, house, stage)).toBe(inView);
  });
});
