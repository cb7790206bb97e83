import { describe, expect, it } from 'vitest';
import type { XY } from '../../../../geometry/plan/model.ts';
import { pinched, type Wheel, wheeled } from '../../../../src/editor/input/viewport-gestures.ts';
import { toPlan, toScreen } from '../../../../src/state/viewport.ts';

const viewport = { scale: 0.1, x: 200, y: 100 };
const wheel = (part: Partial<Wheel>): Wheel => ({
  deltaX: 0,
  deltaY: 100,
  deltaMode: 0,
  ctrlKey: false,
  shiftKey: false,
  ...part,
});
const at: XY = [300, 250];

describe('the wheel', () => {
  it.each([
    { name: 'a notch of a mouse', part: { wheelDeltaY: -120 } },
    { name: 'a notch where the older measure is missing', part: {} },
    { name: 'a notch counted in lines', part: { deltaMode: 1, deltaY: 3 } },
    { name: 'a pinch on a touchpad', part: { ctrlKey: true, deltaY: 2.5, wheelDeltaY: -3 } },
  ])('zooms out about the pointer: $name', ({ part }) => {
    const after = wheeled(viewport, wheel(part), at);
    expect(after.scale).toBeLessThan(viewport.scale);
    const [x, y] = toScreen(after, toPlan(viewport, at));
    expect(x).toBeCloseTo(at[0], 9);
    expect(y).toBeCloseTo(at[1], 9);
  });

  it('zooms by a quarter a notch, there and back', () => {
    const nearer = wheeled(viewport, wheel({ deltaY: -100 }), at);
    expect(nearer.scale).toBeCloseTo(viewport.scale * 1.25, 12);
    expect(wheeled(nearer, wheel({}), at).scale).toBeCloseTo(viewport.scale, 12);
  });

  it.each([
    { name: 'two fingers on a touchpad', part: { deltaX: 3, deltaY: 7, wheelDeltaY: -21 }, by: [-3, -7] },
    { name: 'two fingers straight down', part: { deltaY: 7, wheelDeltaY: -21 }, by: [0, -7] },
    {
      name: 'Shift and a mouse wheel',
      part: { deltaX: 100, deltaY: 0, shiftKey: true, wheelDeltaY: 0 },
      by: [-100, -0],
    },
  ])('pans: $name', ({ part, by: [dx = 0, dy = 0] }) => {
    const after = wheeled(viewport, wheel(part), at);
    expect(after).toEqual({ scale: viewport.scale, x: viewport.x + dx, y: viewport.y + dy });
  });
});

describe('two fingers', () => {
  it('that move apart zoom in so that the point between them and their spread follow', () => {
    const other: XY = [100, 100];
    const [before, now]: [XY, XY] = [
      [200, 100],
      [300, 100],
    ];
    const after = pinched(viewport, before, now, other);
    expect(after.scale).toBeCloseTo(viewport.scale * 2, 12);
    for (const [from, to] of [
      [before, now],
      [other, other],
    ] as const) {
      const [x, y] = toScreen(after, toPlan(viewport, from));
      expect(x).toBeCloseTo(to[0], 9);
      expect(y).toBeCloseTo(to[1], 9);
    }
  });

  it('that lie on one point do not divide by nothing', () => {
    const after = pinched(viewport, [100, 100], [140, 100], [100, 100]);
    expect(Number.isFinite(after.scale)).toBe(true);
  });
});
